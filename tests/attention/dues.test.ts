import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
beforeEach(async () => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
  await at.ask('book.create', { name: 'Ossar Valley' });
  await at.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
  await at.ask('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
});
afterEach(async () => {
  await at.desk.close();
  scratch.remove();
});
const enter = (...rows: Cells[]) => at.ask('journal.enter', { rows });
const nuc = (colony: string, date = '2026-04-20'): Cells => ({ date, entry: 'install', yard: 'LB', colony, origin: 'nuc', queen_year: '2025' });
const due = async (id: number) => (await at.askHeld('colony.due', { id })).items;

test('a walk-away split is done by the look that told, on time, late or by another queen', async () => {
  const split = (label: string): Cells => ({ date: '2026-05-20', entry: 'split', colony: 'A', new_colony: label, queen: 'stays', new_queen: 'walk-away' });
  await enter(nuc('A'), split('onTime'), split('late'), split('early'), split('given'), split('dead'), { date: '2026-05-21', entry: 'split', colony: 'A', new_colony: 'taker', queen: 'moves', new_queen: 'walk-away' });
  // Eggs before day 21 are not yet the new queen's word.
  await enter({ date: '2026-05-26', entry: 'inspection', colony: 'onTime', eggs: 'yes' }, { date: '2026-06-11', entry: 'inspection', colony: 'onTime', eggs: 'no' });
  await enter({ date: '2026-06-20', entry: 'queen', colony: 'late', what: 'seen' }, { date: '2026-05-30', entry: 'inspection', colony: 'early', eggs: 'yes' });
  await enter({ date: '2026-06-05', entry: 'requeen', colony: 'given', queen_year: '2026' }, { date: '2026-06-06', entry: 'loss', colony: 'dead' });
  const walkAway = async (id: number) => (await due(id)).find(({ rule }) => rule === 'walkAwayLaying');
  expect(await walkAway(2)).toMatchObject({ status: 'done', done: { day: '2026-06-11', late: 0, sentence: 'Looked at: no eggs.' } });
  expect(await walkAway(3)).toMatchObject({ status: 'done', done: { day: '2026-06-20', late: 3 } });
  expect(await walkAway(4)).toMatchObject({ status: 'missed', done: null });
  expect(await walkAway(5)).toMatchObject({ status: 'overtaken', says: 'Another queen was there before.' });
  expect(await walkAway(6)).toMatchObject({ status: 'overtaken', says: 'The colony was lost before.' });
  // Where the old queen moved, the mother colony is the one that has to raise hers.
  expect(await walkAway(7)).toBeUndefined();
  expect(await walkAway(1)).toMatchObject({ earliest: '2026-06-11', latest: '2026-06-18' });
});

test('a treatment ends, is counted after, and the book says what it cannot tell', async () => {
  await enter(nuc('A'), nuc('B'), nuc('C'));
  await enter(
    { date: '2026-08-01', entry: 'treatment', yard: 'LB', active_ingredient: 'thymol', end_date: '2026-08-29' },
    { date: '2026-08-02', entry: 'treatment', yard: 'NS', active_ingredient: 'oxalic acid' },
    { date: '2026-09-10', entry: 'mites', colony: 'A', mites: '2', bees: '300' },
    { date: '2026-09-01', entry: 'treatment', colony: 'C', active_ingredient: 'formic acid' },
    { date: '2026-11-12', entry: 'treatment', colony: 'B', active_ingredient: 'oxalic acid' },
  );
  const [a, b, c] = [await due(1), await due(2), await due(3)];
  expect(a.map(({ rule, status }) => [rule, status])).toEqual([['miteRecount', 'done'], ['treatmentOff', 'not told']]);
  expect(a[1]?.says).toBe('The book has no entry for taking a treatment off; the first entry from its last day on is of 10 September 2026.');
  expect(a[0]).toMatchObject({ earliest: '2026-09-05', latest: '2026-09-26', done: { day: '2026-09-10' } });
  // None is asked for after the one in November.
  expect(b.filter(({ rule }) => rule === 'miteRecount').map(({ status, reason }) => [status, reason])).toEqual([['missed', 'Treated with thymol until 29 August 2026.']]);
  expect(c.find(({ reason }) => reason.includes('thymol') && reason.includes('with'))).toMatchObject({ status: 'overtaken', says: 'Treated again on 1 September 2026.' });
  await at.ask('rules.set', { key: 'attention.letGo', value: 200 });
  // Waiting longer, it is the next treatment that ends the waiting.
  expect((await due(2)).find(({ rule }) => rule === 'miteRecount')).toMatchObject({ status: 'overtaken', says: 'Treated again on 12 November 2026.' });
});

test('the yard says what is open, the same act once with its colonies, and its registration in time', async () => {
  await enter(nuc('A'), nuc('B'), nuc('C', '2026-11-01'));
  await enter({ date: '2026-11-18', entry: 'requeen', colony: 'A', queen_year: '2026' }, { date: '2026-11-18', entry: 'requeen', colony: 'B', queen_year: '2026' }, { date: '2026-11-20', entry: 'inspection', colony: 'C', queen_cells: 'swarm' });
  const yard = async (id: number) => (await at.askHeld('yard.due', { id })).items;
  expect((await yard(1)).map(({ what, colonies, status }) => [what, colonies.map(({ label }) => label).join(' '), status])).toEqual([
    ['Look again for swarm cells', 'C', 'due'],
    ['Look whether the new queen lays', 'A B', 'due'],
  ]);
  await at.ask('yard.details', { id: 1, access: null, notes: null, registration: 'R 12', renewal: '2027-03-01' });
  expect((await yard(1)).some(({ rule }) => rule === 'renewal')).toBe(false);
  await at.ask('yard.details', { id: 1, access: null, notes: null, registration: 'R 12', renewal: '2026-11-20' });
  expect((await yard(1))[0]).toMatchObject({ rule: 'renewal', status: 'overdue', reason: 'R 12 is to be renewed by 20 November 2026, as you wrote it down.' });
  expect(await yard(2)).toEqual([]);
  expect(await at.answer('yard.due', { id: 9 })).toMatchObject({ ok: false, code: 'unknown' });
  expect(await at.answer('colony.due', { id: 9 })).toMatchObject({ ok: false, code: 'unknown' });
});
