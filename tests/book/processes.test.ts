import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, readFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { closeDatabase, openDatabase } from '#core/book/openDatabase.ts';
import { sqliteStore } from '#core/book/sqliteStore.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { sha256, standingEntries } from '#tests/journal/trialBook.ts';
import { codeOf, scratchFolder, writeBook } from './trialFile.ts';

let folder = '';
let remove = () => {};
let path = '';
const children: ChildProcess[] = [];
beforeEach(async () => {
  ({ folder, remove } = scratchFolder());
  path = join(folder, 'home.outyard');
  await writeBook(path);
});
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
  remove();
});

const script = fileURLToPath(new URL('./enterForever.ts', import.meta.url));

function start(what: 'enter' | 'hold') {
  const child = spawn(process.execPath, [script, path, what], { stdio: ['ignore', 'pipe', 'inherit'] });
  children.push(child);
  const lines: string[] = [];
  const reader = createInterface({ input: child.stdout });
  reader.on('line', (line) => lines.push(line));
  const ended = Promise.all([once(child, 'exit'), once(reader, 'close')]);
  const first = once(reader, 'line').then(([line]) => String(line));
  return { child, lines, ended, first };
}

/** Opens the book and looks whether all of it is there and fits together. */
async function soundPosition(): Promise<number> {
  const store = sqliteStore(openDatabase(path), path);
  expect(await store.findings()).toEqual([]);
  const kept = await store.projectionText();
  expect(JSON.stringify(await store.states())).toBe(JSON.stringify(statesAsOf(await standingEntries(store))));
  await store.rebuild();
  expect(await store.projectionText()).toBe(kept);
  const position = await store.position();
  await store.close();
  return position;
}

test('a book that another process holds is locked, is not touched, and is free when that process is killed', async () => {
  const { child, first, ended } = start('hold');
  expect(await first).toMatch(/^open /);
  const before = sha256(readFileSync(path));
  expect(codeOf(() => openDatabase(path))).toBe('locked');
  expect(sha256(readFileSync(path))).toBe(before);
  const second = start('hold');
  expect(await second.first).toBe('refused locked');
  child.kill('SIGKILL');
  await ended;
  expect(codeOf(() => closeDatabase(openDatabase(path)))).toBeNull();
});

test('killed at any moment, nothing that was acknowledged is lost and the book is whole', async () => {
  let entered = 0;
  for (const [turn, wait] of fc.sample(fc.integer({ min: 0, max: 250 }), 15).entries()) {
    const { child, lines, first, ended } = start('enter');
    expect(await first).toMatch(/^open /);
    await new Promise((done) => setTimeout(done, wait));
    child.kill('SIGKILL');
    await ended;
    const done = lines.filter((line) => line.startsWith('done '));
    entered += done.length;
    const acknowledged = Number((done.at(-1) ?? lines[0] ?? '').split(' ')[1]);
    const found = await soundPosition();
    // One act more may have been kept and not yet told.
    expect([acknowledged, acknowledged + 1], `turn ${turn}`).toContain(found);
  }
  expect(entered).toBeGreaterThan(15);
});

test('a log cut at any length leaves an exact beginning of what was entered', async () => {
  const { child, lines, first, ended } = start('enter');
  await first;
  while (lines.length < 40) await new Promise((done) => setTimeout(done, 10));
  child.kill('SIGKILL');
  await ended;
  const [kept, log] = [join(folder, 'kept'), `${path}-wal`];
  expect(existsSync(log)).toBe(true);
  copyFileSync(path, kept);
  copyFileSync(log, `${kept}-wal`);
  const full = readFileSync(log).length;
  const whole = await soundPosition();
  const positions = new Set<number>();
  for (const cut of fc.sample(fc.integer({ min: 0, max: full }), 25)) {
    copyFileSync(kept, path);
    copyFileSync(`${kept}-wal`, log);
    truncateSync(log, cut);
    const found = await soundPosition();
    expect(found).toBeLessThanOrEqual(whole);
    positions.add(found);
  }
  expect(positions.size).toBeGreaterThan(3);
});

test('the same day and the same journal in every time zone', async () => {
  const text = 'date,entry,yard,colony,origin,note\n4/1/2025,install,OO,G1,nuc,a\n2025-03-09,note,,,,clock change\n2024-02-29,note,,,,leap\n2025-11-02,note,,,,clock change back\n31.12.2025,loss,,G1,,\n';
  const program = `
    const { addDays, daysBetween, day, dayInWords } = await import('#shared/days.ts');
    const { seasonOf, periodDays } = await import('#shared/seasons.ts');
    const { memoryStore } = await import('#core/book/memoryStore.ts');
    const { imported, exported } = await import('#tests/journal/trialBook.ts');
    const store = memoryStore();
    await imported(store, ${JSON.stringify(text)});
    const days = ['2024-02-28', '2024-02-29', '2025-03-08', '2025-03-09', '2025-03-31', '2025-04-01', '2025-09-30', '2025-11-01', '2025-12-31'].map(day);
    console.log(JSON.stringify([
      days.map((one) => [addDays(one, 1), addDays(one, -1), daysBetween(days[0], one), dayInWords(one), seasonOf(one)]), periodDays(2024, 'winter'),
      await exported(store), await store.projectionText(),
    ]));`;
  const results = await Promise.all(['UTC', 'Pacific/Pago_Pago', 'Pacific/Kiritimati', 'America/New_York'].map(async (zone) => {
    const child = spawn(process.execPath, ['--input-type=module', '-e', program], { cwd: fileURLToPath(new URL('../..', import.meta.url)), env: { ...process.env, TZ: zone }, stdio: ['ignore', 'pipe', 'inherit'] });
    children.push(child);
    const out: Buffer[] = [];
    child.stdout.on('data', (part: Buffer) => out.push(part));
    const [code] = (await once(child, 'close')) as [number];
    expect(code).toBe(0);
    return Buffer.concat(out).toString('utf8');
  }));
  expect(results[0]).toContain('2025-12-31,loss');
  for (const result of results) expect(result).toBe(results[0]);
});
