import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { largeOperationRows } from '#core/demo/largeOperation.ts';
import { createDesk } from '#core/desk/desk.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';

// npm run -s bench -- find [colonies] [seasons]
// What the Find box asks of a large operation: opening it for the first time, then words as they are typed.
const colonies = Number(process.argv[2] ?? 10_000);
const seasons = Number(process.argv[3] ?? 1);
if (!Number.isInteger(colonies) || !Number.isInteger(seasons) || colonies < 1 || seasons < 1) {
  console.error('Usage: npm run -s bench -- find [colonies] [seasons], both whole numbers from 1.');
  process.exit(2);
}
const times = 7;
const typed = ['lb', 'l', 'y01', '2025', 'queen 2025', 'cells', 'lot 2025-y0', 'feed', 'no such thing', 'requeened 2025'];

const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
const today = day('2026-04-15');
const desk = createDesk({ folder, program: 'Outyard (bench)', now: () => ({ day: today, stamp: `${today} 20:00` }), log: () => undefined });

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  // The desk's own answer to that operation; its type follows from the contract.
  return answer.value as OutputOf<Name>;
}

async function timed<Value>(work: () => Promise<Value>): Promise<{ value: Value; took: number }> {
  const start = performance.now();
  const value = await work();
  return { value, took: performance.now() - start };
}

const say = (what: string, took: number, more: string) => console.log(`${what.padEnd(26)}${took.toFixed(1).padStart(9)} ms  ${more}`);

try {
  const file = { name: 'large.csv', base64: Buffer.from(writeCsv(largeOperationRows({ seed: 1, colonies, seasons }))).toString('base64') };
  await ask('book.create', { name: 'Bench' });
  const looked = await ask('import.preview', { file });
  const done = await ask('import.enter', { file, sha256: looked.sha256, position: looked.position });
  const book = await ask('book.status', {});
  console.log(`${done.entered} entries, ${done.living} colonies alive, ${book.book?.yards.length ?? 0} yards`);
  const opened = await timed(() => ask('find.all', { text: '' }));
  say('the box opens first', opened.took, 'all entries are read once');
  for (const text of typed) {
    const taken: number[] = [];
    let answer = await ask('find.all', { text });
    for (let turn = 0; turn < times; turn += 1) {
      const { value, took } = await timed(() => ask('find.all', { text }));
      answer = value;
      taken.push(took);
    }
    taken.sort((a, b) => a - b);
    say(`“${text}”`, taken[Math.floor(times / 2)] ?? 0, `${answer.colonies.total} colonies, ${answer.yards.total} yards, ${answer.queens.total} queens, ${answer.lots.total} lots, ${answer.entries.total} entries`);
  }
  await ask('journal.enter', { rows: [{ date: '2026-04-14', entry: 'note', note: 'gate is broken' }] });
  const again = await timed(() => ask('find.all', { text: '' }));
  say('it opens after an entry', again.took, 'only what is new is read');
} finally {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
}
