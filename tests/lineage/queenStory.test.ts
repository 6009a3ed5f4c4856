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
const queens = async (colony: number) => (await at.ask('colony.story', { id: colony })).queens.map(({ id }) => id);
const story = (id: number) => at.askHeld('queen.story', { id });
const hived: Cells = { date: '2024-04-24', entry: 'install', yard: 'LB', colony: 'A', origin: 'package', supplier: 'Sandel Road Bees', queen_year: '2024', queen_source: 'Tarn' };
const split = (date: string, colony: string, label: string, more: Cells): Cells => ({ date, entry: 'split', colony, new_colony: label, ...more });

test('a mother is named only where the record tells', async () => {
  await enter(
    hived,
    split('2025-05-20', 'A', 'walk', { queen: 'stays', new_queen: 'walk-away', queen_year: '2025', queen_source: 'Tarn' }),
    split('2025-05-20', 'A', 'ownCell', { queen: 'stays', new_queen: 'cell', queen_source: 'Tarn' }),
    split('2025-05-20', 'A', 'strangeCell', { queen: 'stays', new_queen: 'cell', queen_source: 'Bramble' }),
    split('2025-05-20', 'A', 'virgin', { queen: 'stays', new_queen: 'virgin', queen_source: 'Tarn' }),
    split('2025-05-20', 'A', 'mated', { queen: 'stays', new_queen: 'mated', queen_source: 'Tarn' }),
    split('2025-06-01', 'A', 'mover', { queen: 'moves', new_queen: 'walk-away', queen_year: '2025', to_yard: 'NS' }),
  );
  await enter({ date: '2025-07-01', entry: 'queen', colony: 'mover', what: 'superseded' }, { date: '2026-05-15', entry: 'queen', colony: 'A', what: 'swarmed' });
  const [first, raised, afterSwarm] = await queens(1);
  const founder = await story(first ?? 0);
  expect(founder.mother).toBeNull();
  expect(founder.motherSays).toMatch(/stated/);
  expect(founder.sentence).toBe('Came with A, Tarn, on 24 April 2024, from Sandel Road Bees.');
  expect(founder.daughters.map(({ colony, how, day }) => [colony.label, how, day])).toEqual([
    ['walk', 'walk-away split', '2025-05-20'], ['ownCell', 'split with a cell', '2025-05-20'], ['A', 'walk-away split', '2025-06-01'], ['mover', 'superseded', '2025-07-01'],
  ]);
  // She went with the split, and her time there ended when a daughter took her place.
  expect(founder.reigns.map(({ colony, yards, from, until, ending }) => [colony.label, yards.join(), from, until, ending])).toEqual([
    ['A', 'Larch Bend', '2024-04-24', '2025-06-01', 'moved with a split'], ['mover', 'North Slope', '2025-06-01', '2025-07-01', 'superseded'],
  ]);
  expect((await story(raised ?? 0)).mother?.queen.id).toBe(first);
  expect(await story(afterSwarm ?? 0)).toMatchObject({ mother: { queen: { id: raised } }, queen: { year: null, colour: null } });
  const motherOf = async (colony: number) => (await story((await queens(colony))[0] ?? 0)).mother?.queen.id ?? null;
  expect([await motherOf(2), await motherOf(3), await motherOf(4), await motherOf(5), await motherOf(6)]).toEqual([first, first, null, null, null]);
  expect((await story((await queens(7)).at(-1) ?? 0)).mother?.queen.id).toBe(first);
});

test('a queen given on the morning of the split is the mother, not the one she replaced', async () => {
  await enter(hived, { date: '2025-05-20', entry: 'requeen', colony: 'A', queen_year: '2025', queen_source: 'Bramble' }, split('2025-05-20', 'A', 'B', { queen: 'stays', new_queen: 'walk-away' }));
  const [, given] = await queens(1);
  expect((await story((await queens(2))[0] ?? 0)).mother?.queen.id).toBe(given);
  // With no queen of the mother colony known, none is named.
  await enter({ date: '2025-06-01', entry: 'queen', colony: 'A', what: 'missing' }, split('2025-06-05', 'A', 'C', { queen: 'stays', new_queen: 'walk-away' }));
  const orphan = await story((await queens(3))[0] ?? 0);
  expect(orphan.mother).toBeNull();
  expect(orphan.motherSays).toMatch(/no queen of the mother colony/);
});

test('how her colonies did: only what was seen while she was there, with n and interval', async () => {
  const look = (date: string, brood: string, temper: string): Cells => ({ date, entry: 'inspection', colony: 'A', frames_brood: brood, temper });
  await enter(
    hived, look('2024-05-10', '4', '2'), look('2024-06-10', '6', '1'), look('2024-07-10', '8', '3'),
    { date: '2024-07-20', entry: 'harvest', colony: 'A', gross: '60', tare: '15', unit: 'lb' }, { date: '2024-08-01', entry: 'mites', colony: 'A', mites: '6', bees: '300' },
    { date: '2025-06-01', entry: 'requeen', colony: 'A', queen_year: '2025' }, look('2025-06-20', '9', '5'),
    { date: '2025-08-01', entry: 'harvest', colony: 'A', gross: '100', tare: '0', unit: 'lb' }, { date: '2026-01-10', entry: 'loss', colony: 'A', cause: 'mites; cold' },
  );
  const [first, second] = await queens(1);
  const her = await story(first ?? 0);
  // Mean of 4, 6, 8: sd 2, t(0.975, 2) = 4.302653 (any table of Student's t): 6 +- 4.302653 * 2 / sqrt(3).
  expect(her.brood).toMatchObject({ n: 3, value: 6, interval: [expect.closeTo(6 - (4.302653 * 2) / Math.sqrt(3), 5), expect.closeTo(6 + (4.302653 * 2) / Math.sqrt(3), 5)] });
  expect(her.temper).toMatchObject({ n: 3, value: 2, interval: [1, expect.closeTo(2 + 4.302653 / Math.sqrt(3), 5)], says: 'Only 3 looks: a first impression.' });
  expect(her.mites).toMatchObject({ n: 1, mites: 6, bees: 300, value: 2, says: 'One wash; it tells of its own day.' });
  expect(her.honey).toEqual([{ season: 2024, lb: 45, harvests: 1 }]);
  expect(her.winters).toMatchObject({ count: 1, of: 1 });
  // Two summers, 2024 and the two months of 2025; none swarmed in.
  expect(her.swarming).toMatchObject({ count: 0, of: 2 });
  const next = await story(second ?? 0);
  expect(next.brood).toMatchObject({ n: 1, value: 9, interval: null, says: 'One look; no range can be given.' });
  expect(next.mites).toMatchObject({ n: 0, value: null, interval: null, says: 'None was written down.' });
  expect(next.winters).toMatchObject({ count: 0, of: 1 });
  expect(next.reigns[0]?.colonyEnd).toBe('lost: mites; cold');
  expect(await at.answer('queen.story', { id: 4000 })).toMatchObject({ ok: false, code: 'unknown' });
});

test('in the demo every queen has a page, daughters and mothers name each other, and none is her own forebear', async () => {
  await at.ask('book.demo', { which: 'ossar' });
  const { lanes } = await at.ask('lines.picture', {});
  const all = [...new Set(lanes.flatMap((lane) => lane.queens.map(({ queen }) => queen.id)))];
  const stories = new Map<number, Awaited<ReturnType<typeof story>>>();
  for (const id of all) stories.set(id, await story(id));
  const raised = [...stories.values()].filter(({ mother }) => mother !== null);
  expect(raised.length).toBeGreaterThan(10);
  for (const one of raised) expect(stories.get(one.mother?.queen.id ?? 0)?.daughters.map(({ queen }) => queen.id)).toContain(one.queen.id);
  expect([...stories.values()].reduce((sum, { daughters }) => sum + daughters.length, 0)).toBe(raised.length);
  for (const one of raised) {
    let [steps, next] = [0, stories.get(one.mother?.queen.id ?? 0)];
    for (; next !== undefined && steps < 50; steps += 1) next = stories.get(next.mother?.queen.id ?? 0);
    expect(steps).toBeLessThan(50);
  }
});
