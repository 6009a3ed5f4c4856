import { expect, test } from 'vitest';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import { hasteOf } from '#core/desk/desk.ts';
import { demoDesk } from './freshDesk.ts';

const desk = demoDesk();

/** Reads that go through the whole operation, each in slices. */
const reads = [
  ['needs.list', { yard: null }], ['needs.count', {}], ['queens.candidates', {}], ['queens.breeders', {}], ['mites.results', {}], ['worked.seasons', {}], ['yields.table', { by: 'yard' }],
  ['losses.factors', { season: 2025, scope: 'all' }], ['losses.paper', { season: 2025, united: 'lost' }], ['lines.picture', {}], ['work.tasks', {}], ['stock.table', {}], ['yards.list', {}], ['find.all', { text: 'queen' }],
] as const satisfies readonly (readonly [OperationName, object])[];

/** What one of them answers; each is an operation with its own input. */
const ask = (name: OperationName, input: object) => desk.ask(name, input as InputOf<typeof name>);

/** A note of a yard moves the record on; what was worked out before serves no more. */
const note = (words: string) => desk.ask('journal.enter', { rows: [{ date: '2026-11-20', entry: 'note', yard: 'LB', note: words }] });

test.each(reads)('%s: a note entered meanwhile is in the answer whole or not at all', async (name, input) => {
  await note(`again before ${name}`);
  const asked = ask(name, input);
  await new Promise(setImmediate);
  const [answer] = await Promise.all([asked, note(`during ${name}`)]);
  const after = JSON.stringify(await ask(name, input));
  await desk.ask('journal.undo', {});
  const undone = JSON.stringify(await ask(name, input));
  expect([after, undone]).toContain(JSON.stringify(answer));
});

test('what is typed is kept before a long read is worked out, and that read answers what it answers alone', async () => {
  await note('so that nothing is worked out yet');
  const order: string[] = [];
  const long = desk.ask('needs.list', { yard: null }).then((answer) => (order.push('needs'), answer));
  const typed = desk.ask('draft.keep', { key: 'round', body: '7 frames' }).then(() => order.push('typed'));
  const [list] = await Promise.all([long, typed]);
  expect(order).toEqual(['typed', 'needs']);
  expect(await desk.ask('draft.fetch', { key: 'round' })).toMatchObject({ body: '7 frames' });
  expect(await desk.ask('needs.list', { yard: null })).toEqual(list);
});

test('a book that is closed under reads that rest: each answers as it does alone, or that there is no book', async () => {
  const alone: string[] = [];
  for (const [name, input] of reads) alone.push(JSON.stringify(await ask(name, input)));
  await note('so that all is worked out anew');
  await desk.ask('journal.undo', {});
  const during = reads.map(([name, input]) => desk.desk.call(name, input));
  for (let rounds = 0; rounds < 4; rounds += 1) await new Promise(setImmediate);
  await desk.ask('book.close', {});
  const answers = await Promise.all(during);
  expect(answers.flatMap((answer, at) => (answer.ok ? (JSON.stringify(answer.value) === alone[at] ? [] : [reads[at]?.[0]]) : answer.code === 'no-book' ? [] : [answer.sentence]))).toEqual([]);
  expect(answers.some(({ ok }) => !ok)).toBe(true);
  await desk.ask('book.demo', { which: 'ossar' });
  expect(JSON.stringify(await ask('needs.list', { yard: null }))).toBe(alone[0]);
});

test('what makes the tables anew has the book to itself, though it changes no record', () => {
  expect(hasteOf('book.check')).toBe('write');
});
