import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { largeOperationRows } from '#core/demo/largeOperation.ts';
import { createDesk } from '#core/desk/desk.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';

// npm run -s bench -- desk [colonies] [seasons]
// The whole way of a large operation through the desk: brought in from a file, then asked what each screen asks.
const colonies = Number(process.argv[2] ?? 500);
const seasons = Number(process.argv[3] ?? 5);
if (!Number.isInteger(colonies) || !Number.isInteger(seasons) || colonies < 1 || seasons < 1) {
  console.error('Usage: npm run -s bench -- desk [colonies] [seasons], both whole numbers from 1.');
  process.exit(2);
}
const seed = 1;
/** Screens ask again and again; the middle of this many answers is what a person meets. */
const times = 7;

const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
const today = day('2026-04-15');
const desk = createDesk({ folder, program: 'Outyard (bench)', now: () => ({ day: today, stamp: `${today} 20:00` }), log: () => undefined });

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  // The desk's own answer to that operation; its type follows from the contract.
  return answer.value as OutputOf<Name>;
}

function say(what: string, milliseconds: number, more = ''): void {
  console.log(`${what.padEnd(34)}${milliseconds.toFixed(milliseconds < 100 ? 1 : 0).padStart(10)} ms  ${more}`);
}

async function timed<Value>(what: string, work: () => Promise<Value> | Value, more: (value: Value) => string = () => ''): Promise<Value> {
  const start = performance.now();
  const value = await work();
  say(what, performance.now() - start, more(value));
  return value;
}

async function asked<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<void> {
  const taken: number[] = [];
  for (let turn = 0; turn < times; turn += 1) {
    const start = performance.now();
    await ask(name, input);
    taken.push(performance.now() - start);
  }
  taken.sort((a, b) => a - b);
  say(name, taken[Math.floor(times / 2)] ?? 0, `slowest of ${times}: ${(taken.at(-1) ?? 0).toFixed(1)} ms`);
}

try {
  const text = await timed('make the rows', () => writeCsv(largeOperationRows({ seed, colonies, seasons })), (made) => `${(made.length / 1e6).toFixed(1)} MB`);
  const file = { name: 'large.csv', base64: Buffer.from(text).toString('base64') };
  const status = await ask('book.create', { name: 'Bench' });
  const looked = await timed('import.preview', () => ask('import.preview', { file }), (report) => `${report.read} rows, ${report.toSortOut.length} to sort out`);
  await timed('import.enter', () => ask('import.enter', { file, sha256: looked.sha256, position: looked.position }), (report) => `${report.entered} entered, ${report.living} living`);
  await timed('import.preview again', () => ask('import.preview', { file }), (report) => `${report.repeats} repeats`);

  const { rows, yards } = await ask('colonies.list', { which: 'living' });
  const [yard, row] = [yards[0], rows[0]];
  if (yard === undefined || row === undefined) throw new Error('the operation has no living colony');
  await asked('book.status', {});
  await asked('journal.recent', { limit: 20 });
  await asked('colonies.list', { which: 'living' });
  await asked('colonies.list', { which: 'all', asOf: day('2024-01-15') });
  await asked('colony.story', { id: row.id });
  await asked('round.sheet', { yard: yard.id, day: today });
  await asked('losses.review', { united: 'lost' });
  await asked('order.decide', {});
  await timed('stock.table, first', () => ask('stock.table', {}), (table) => `${table.items.length} items, ${table.deadOuts.length} dead-outs`);
  await asked('stock.table', {});

  const sheet = await ask('round.sheet', { yard: yard.id, day: today });
  const round = sheet.rows.map(({ label }) => ({ date: today, entry: 'inspection', yard: yard.code, colony: label, frames_bees: '8' }));
  await timed(`journal.enter, ${round.length} rows`, () => ask('journal.enter', { rows: round }));
  await timed('journal.undo', () => ask('journal.undo', {}));
  await timed('export.journal', () => ask('export.journal', {}), (made) => `${made.rows} rows`);
  await timed('book.check', () => ask('book.check', {}), (check) => (check.sound ? 'sound' : check.findings.join('; ')));
  const path = status.book?.path;
  if (path !== undefined) console.log(`\nThe book: ${(statSync(path).size / 1e6).toFixed(1)} MB. Memory at most: ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB.`);
} finally {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
}
