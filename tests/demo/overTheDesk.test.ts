import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { OperationName, InputOf, OutputOf } from '#shared/contract/contract.ts';
import type { LedgerRow } from '#shared/contract/losses.ts';
import { day } from '#shared/days.ts';
import type { Answer } from '#shared/faults.ts';
import { standingRows, type DemoOperation } from '#core/demo/demoOperation.ts';
import type { DemoTruth } from '#core/demo/demoTruth.ts';
import { largeOperation } from '#core/demo/largeOperation.ts';
import { ossarSeed } from '#core/demo/ossarPlan.ts';
import { simulateOssar } from '#core/demo/simulateOssar.ts';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';

let folder = '';
let desk: Desk;
const log: string[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'outyard-demo-'));
  log.length = 0;
  desk = createDesk({ folder, program: 'Outyard under test', now: () => ({ day: day('2026-11-25'), stamp: '2026-11-25 21:00' }), log: (line) => log.push(line) });
});

afterEach(async () => {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
});

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = (await desk.call(name, input)) as Answer<OutputOf<Name>>;
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}\n${log.join('\n')}`);
  return answer.value;
}

function journalFile(operation: DemoOperation): { bytes: Buffer; file: { name: string; base64: string } } {
  const bytes = Buffer.from(writeCsv(standingRows(operation)), 'utf8');
  return { bytes, file: { name: 'journal.csv', base64: bytes.toString('base64') } };
}

async function importAll(operation: DemoOperation): Promise<OutputOf<'import.enter'>> {
  const { bytes, file } = journalFile(operation);
  const preview = await ask('import.preview', { file });
  expect(preview.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
  return ask('import.enter', { file, sha256: preview.sha256, position: preview.position });
}

/** All seasons' lines from the review of losses, yards only, without the lines in which nothing stood or happened. */
async function ledger(): Promise<LedgerRow[]> {
  const lines: LedgerRow[] = [];
  const { seasons } = await ask('losses.review', { united: 'lost' });
  for (const { season } of seasons) {
    const review = await ask('losses.review', { season, united: 'lost' });
    expect(review.balances).toBe(true);
    lines.push(...review.ledger.filter((line) => line.yard !== 'all'));
  }
  const busy = lines.filter(({ season: _season, yard: _yard, ...counts }) => Object.values(counts).some((count) => count !== 0));
  return busy.sort((a, b) => a.season - b.season || (a.yard < b.yard ? -1 : 1));
}

async function expectTruth(truth: DemoTruth): Promise<void> {
  expect(await ledger()).toEqual(truth.ledger);
  const { rows } = await ask('colonies.list', { which: 'all' });
  const said = rows.map(({ label, origin, start, end, how }) => ({ label, origin, start, end, how }));
  const known = truth.colonies.map(({ label, origin, start, end, how }) => ({ label, origin, start, end, how }));
  const order = (a: { label: string; start: string }, b: { label: string; start: string }) => (a.label + a.start < b.label + b.start ? -1 : 1);
  expect(said.sort(order)).toEqual(known.sort(order));
  for (const colony of truth.colonies.filter((one) => one.end === null)) {
    const row = rows.find((one) => one.label === colony.label && one.start === colony.start);
    if (colony.honeyLb['2026'] === undefined) expect(row?.honeyLb ?? null, colony.label).toBeNull();
    else expect(row?.honeyLb, colony.label).toBeCloseTo(colony.honeyLb['2026'], 1);
  }
  expect(rows.filter((row) => row.end === null)).toHaveLength(truth.living);
}

describe('Ossar Valley over the desk', () => {
  test('goes in as a file with nothing to sort out, and the book then says what the simulator counted', async () => {
    const { operation, truth } = simulateOssar(ossarSeed);
    await ask('book.create', { name: 'From a file' });
    const report = await importAll(operation);
    expect(report.toSortOut).toEqual([]);
    expect(report.repeats).toBe(0);
    expect(report.entered).toBe(standingRows(operation).length);
    expect(report.living).toBe(truth.living);
    expect([...report.newYards].sort()).toEqual(operation.yards.map((yard) => yard.code).sort());
    await expectTruth(truth);
    const again = await ask('import.preview', { file: journalFile(operation).file });
    expect({ entered: again.entered, repeats: again.repeats, toSortOut: again.toSortOut }).toEqual({ entered: 0, repeats: report.entered, toSortOut: [] });
  });

  test('opens as the demo book, entered act by act with its strikes, says the same and is sound', async () => {
    const { operation, truth } = simulateOssar(ossarSeed);
    const status = await ask('book.demo', { which: 'ossar' });
    expect(status.today).toBe(operation.lastDay);
    expect(status.book?.living).toBe(truth.living);
    await expectTruth(truth);
    expect(await ask('book.check', {})).toMatchObject({ sound: true, findings: [], refoldEqual: true });
  });

  test('opens the tiny one too: five colonies, two lost in winter', async () => {
    await ask('book.demo', { which: 'tiny' });
    const review = await ask('losses.review', { season: 2025, united: 'lost' });
    expect(review.rates.find((rate) => rate.season === 2025 && rate.period === 'winter' && rate.group === 'all')).toMatchObject({ atRisk: 5, lost: 2 });
    expect(await ask('book.check', {})).toMatchObject({ sound: true, refoldEqual: true });
  });
});

test('a large operation goes in as a file with nothing to sort out', async () => {
  await ask('book.create', { name: 'Large' });
  const operation = largeOperation({ seed: 3, colonies: 150, seasons: 3 });
  const report = await importAll(operation);
  expect(report.toSortOut).toEqual([]);
  expect(report.entered).toBe(standingRows(operation).length);
});
