import { afterEach, beforeEach, expect, test } from 'vitest';
import { tellsOfSpottyBrood } from '#core/attention/needs/requeenReasons.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { Day } from '#shared/days.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let trial: ReturnType<typeof trialDesk>;
beforeEach(async () => {
  scratch = scratchFolder();
  trial = trialDesk(scratch.folder);
  await trial.ask('book.create', { name: 'Ossar Valley' });
  await trial.ask('yard.keep', { code: 'QY', name: 'Quarry', room: 30, minutes: 18 });
  await trial.ask('journal.enter', { rows: ['A', 'B', 'C', 'D'].map((colony) => row('2025-05-01', 'install', colony, { origin: 'nuc', queen_year: '2025' })) });
});
afterEach(async () => {
  await trial.desk.close();
  scratch.remove();
});

const row = (date: string, entry: NonNullable<Cells['entry']>, colony: string, more: Cells = {}): Cells => ({ date, entry, yard: 'QY', colony, ...more });
const enter = (...rows: Cells[]) => trial.ask('journal.enter', { rows });
const wash = (colony: string, date: string, mites: number) => row(date, 'mites', colony, { mites: String(mites), bees: '300' });
const brood = (colony: string, date: string, frames: number) => row(date, 'inspection', colony, { frames_bees: '12', frames_brood: String(frames), eggs: 'yes' });

/** The reasons of each colony, as its words and what it rests on. */
async function reasons(asOf: string): Promise<Record<string, string[]>> {
  const { yards } = await trial.ask('queens.candidates', { asOf: asOf as Day });
  return Object.fromEntries(yards.flatMap(({ colonies }) => colonies.map((one) => [one.label, one.reasons.map(({ because, detail }) => `${because} (${detail})`)])));
}

// 9 mites of a wash of 300 lie between 4.1 and 17.1, 6 between 2.2 and 13.1: exact Poisson limits, as every table of them has.
test('mites: twice the rest of the yard at two counts in a row, and each beyond chance; one count, or six mites, is not enough', async () => {
  await enter(...['2025-07-10', '2025-08-10'].flatMap((date) => ['B', 'C', 'D'].map((colony) => wash(colony, date, 3))));
  await enter(wash('A', '2025-07-11', 9));
  expect(await reasons('2025-08-20')).toEqual({});
  await enter(wash('A', '2025-08-10', 6));
  expect(await reasons('2025-08-20')).toEqual({});
  await enter(...['B', 'C', 'D'].map((colony) => wash(colony, '2025-09-01', 3)), wash('A', '2025-09-01', 12), ...['B', 'C', 'D'].map((colony) => wash(colony, '2025-09-20', 3)), wash('A', '2025-09-20', 9));
  expect(await reasons('2025-09-25')).toEqual({ A: ['More mites than its neighbours at two counts in a row. (12 in 300 bees, 4.0 in 100, against 1.0 of 3 others; 9 in 300 bees, 3.0 in 100, against 1.0 of 3 others)'] });
  // Where too few neighbours were counted nothing is said.
  await trial.ask('rules.set', { key: 'needs.requeen.others', value: 4 });
  expect(await reasons('2025-09-25')).toEqual({});
});

// A queen's own brood has replaced her predecessor's after two worker cycles of 21 days: arithmetic.
test('a new queen is not blamed for what was counted in her first 42 days', async () => {
  await enter(...['2025-07-10', '2025-08-10'].flatMap((date) => [wash('A', date, 9), ...['B', 'C', 'D'].map((colony) => wash(colony, date, 3))]));
  expect(Object.keys(await reasons('2025-08-20'))).toEqual(['A']);
  await enter(row('2025-08-15', 'requeen', 'A', { queen_year: '2025' }));
  expect(await reasons('2025-08-20')).toEqual({});
});

test('brood: less than half of the middle of the yard at two looks, by colonies long in the book; after a split it is no sign', async () => {
  await enter(...['2026-06-01', '2026-06-12'].flatMap((date) => [brood('A', date, 3), brood('B', date, 7), brood('C', date, 8), brood('D', date, 9)]));
  expect(await reasons('2026-06-15')).toEqual({ A: ['Much less brood than its neighbours at two looks in a row. (3 against 8 frames, 3 against 8 frames)'] });
  expect(await reasons('2026-06-05')).toEqual({});
  await enter(row('2026-05-25', 'split', 'A', { new_colony: 'E', queen: 'stays', new_queen: 'mated' }));
  expect(await reasons('2026-06-15')).toEqual({});
});

test('spotty brood in the notes of two looks, with the word that disease looks the same; supersedure cells until a look finds none', async () => {
  await enter(row('2025-07-01', 'inspection', 'A', { note: 'spotty brood' }), row('2025-07-01', 'inspection', 'B', { queen_cells: 'supersedure' }));
  expect(await reasons('2025-07-02')).toEqual({ B: ['Supersedure cells: her bees are replacing the queen. (on 1 July 2025; a new queen of your choice, or leave it to them)'] });
  await enter(row('2025-07-12', 'inspection', 'A', { note: 'Brood pattern patchy' }), row('2025-07-12', 'inspection', 'B', { queen_cells: 'none' }));
  expect(await reasons('2025-07-13')).toEqual({ A: ['Spotty brood was written down. Brood disease looks the same: look for it first. (twice)'] });
  expect(['solid brood', 'a spot of rain', 'brood is patchy', 'shotgun pattern', 'no pattern to the losses'].map(tellsOfSpottyBrood)).toEqual([false, false, true, true, false]);
});

test('swarming: cells in two seasons, or in one after her mother left with a swarm; cells of the old queen are not hers', async () => {
  const cells = (colony: string, date: string) => row(date, 'inspection', colony, { queen_cells: 'swarm' });
  await enter(cells('A', '2025-06-20'), cells('A', '2025-07-01'), cells('B', '2025-06-20'), row('2025-06-25', 'queen', 'B', { what: 'swarmed' }), cells('B', '2025-07-01'));
  // Two looks of one season are one sign; B's new queen is a swarm's daughter, and the cells of July are what the old one left.
  expect(await reasons('2025-07-10')).toEqual({});
  await enter(cells('A', '2026-05-20'), cells('B', '2026-05-20'));
  expect(await reasons('2026-05-25')).toEqual({
    A: ['She or her mother made ready to swarm in more than one season. (2025–26, 2026–27)'], B: ['She or her mother made ready to swarm in more than one season. (2025–26, 2026–27)'],
  });
});

test('in the list the gravest reason is the line, and the others stand beside it with their records', async () => {
  await enter(...['2025-07-10', '2025-08-10'].flatMap((date) => [wash('A', date, 9), ...['B', 'C', 'D'].map((colony) => wash(colony, date, 3))]));
  await enter(row('2025-07-20', 'inspection', 'A', { temper: '5' }), row('2025-08-12', 'inspection', 'A', { temper: '5' }));
  const { lines } = await trial.ask('needs.list', { asOf: '2025-08-20' as Day });
  const line = lines.find(({ rule }) => rule === 'requeen');
  expect(line).toMatchObject({ act: 'Requeen it', because: 'Fierce at the last two looks that noted it: 4 of 5 or more.', count: 1 });
  expect(line?.members[0]?.detail).toBe('temper 5, 5; also mites');
  expect(line?.members[0]?.records.map(({ entry }) => entry !== null)).toEqual([true, true, true, true]);
  expect(line?.sources.find(({ key }) => key === 'needs.requeen.settled')).toMatchObject({ confidence: 'arithmetic' });
});
