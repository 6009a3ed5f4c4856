import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { largeOperation } from '#core/demo/largeOperation.ts';
import { enterOperation } from '#core/desk/buildDemo.ts';
import { createDesk } from '#core/desk/desk.ts';
import { Book } from '#core/desk/openBook.ts';
import { groupings } from '#shared/contract/lossSections.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';

// npm run -s bench -- losses [colonies] [seasons]
// What each section of the season-end review asks of a large operation: the first time, and then again.
const colonies = Number(process.argv[2] ?? 10_000);
const seasons = Number(process.argv[3] ?? 10);
if (!Number.isInteger(colonies) || !Number.isInteger(seasons) || colonies < 1 || seasons < 1) {
  console.error('Usage: npm run -s bench -- losses [colonies] [seasons], both whole numbers from 1.');
  process.exit(2);
}
const times = 5;
const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
const path = join(folder, 'bench.outyard');
const today = day('2026-04-15');

const say = (what: string, milliseconds: number, more = '') => console.log(`${what.padEnd(40)}${milliseconds.toFixed(1).padStart(9)} ms  ${more}`);

async function timed<Value>(work: () => Promise<Value>): Promise<{ value: Value; took: number }> {
  const start = performance.now();
  const value = await work();
  return { value, took: performance.now() - start };
}

const book = await Book.create(path, new Map([['name', 'Bench']]));
const made = await timed(() => enterOperation(book.store, largeOperation({ seed: 1, colonies, seasons })));
const { entries } = await book.store.counts();
await book.store.close();
say('the book is made', made.took, `${entries} entries`);

const desk = createDesk({ folder, program: 'Outyard (bench)', now: () => ({ day: today, stamp: `${today} 20:00` }), log: () => undefined });

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  // The desk's own answer to that operation; its type follows from the contract.
  return answer.value as OutputOf<Name>;
}

async function asked<Name extends OperationName>(what: string, name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const first = await timed(() => ask(name, input));
  const again: number[] = [];
  for (let turn = 0; turn < times; turn += 1) again.push((await timed(() => ask(name, input))).took);
  again.sort((a, b) => a - b);
  say(what, first.took, `again ${(again[Math.floor(times / 2)] ?? 0).toFixed(1)} ms, ${(JSON.stringify(first.value).length / 1000).toFixed(0)} kB`);
  return first.value;
}

try {
  await ask('book.open', { path });
  await asked('losses.frame (reads the book first)', 'losses.frame', {});
  const { season } = await ask('losses.frame', {});
  await asked('losses.ledger', 'losses.ledger', { season });
  await asked('losses.rates', 'losses.rates', { season, united: 'lost' });
  for (const by of groupings) await asked(`losses.survival, one winter, ${by}`, 'losses.survival', { season, axis: 'winter', by, united: 'alive' });
  for (const by of groupings) await asked(`losses.survival, all winters, ${by}`, 'losses.survival', { season: null, axis: 'winter', by, united: 'alive' });
  await asked('losses.survival, since the start, yard', 'losses.survival', { season, axis: 'start', by: 'yard', united: 'alive' });
  await asked('losses.pairs, all winters, mites', 'losses.pairs', { season: null, axis: 'winter', by: 'mites', united: 'alive' });
  await asked('losses.behind, lost in winter', 'losses.behind', { selector: { kind: 'ledger', season, yard: 'all', column: 'lostWinter' } });
  await asked('losses.review (all in one)', 'losses.review', { season, united: 'lost' });
} finally {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
}
