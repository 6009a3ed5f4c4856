import { expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import type { Cells } from '#shared/entryForms.ts';
import { colonyDues } from '#core/attention/colonyDues.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import { queenColour } from '#core/lineage/queenColour.ts';
import { houseRuleDefinitions, numberRule } from '#core/rules/houseRules.ts';
import { acts, trialBook } from '#tests/journal/trialBook.ts';

async function duesOf(rows: readonly Cells[], label: string, today: string) {
  const store = await trialBook();
  await acts.enter(store, rows);
  const [state] = await store.statesByLabel([label]);
  if (state === undefined) throw new Error(`no colony ${label}`);
  const entries = (await store.entriesOf([state.id])).get(state.id) ?? [];
  const names = { colony: (id: ColonyId) => String(id), yard: () => ({ code: 'OO', name: 'Yard OO' }), massUnit: 'lb' as const };
  return colonyDues({ state, entries, said: (entry) => rulesOf(entry.kind).sentence(entry.body, names), borders: defaultBorders }, new Map(), day(today));
}
const hived = (date: string): Cells => ({ date, entry: 'install', yard: 'OO', colony: 'A', origin: 'nuc', queen_year: '2024' });

// Walk-away split of 20 May 2025: laying check from 10 June (day 21; practice page on walk-away splits, buttsbees.com, beekeeping
// tip 7, read-weak), given up after 17 June (day 28; from memory).
test('a walk-away split of 20 May is looked at from 10 to 17 June', async () => {
  const rows = [hived('2025-04-20'), { date: '2025-05-20', entry: 'split', colony: 'A', new_colony: 'B', queen: 'stays', new_queen: 'walk-away' }];
  expect((await duesOf(rows, 'B', '2025-06-12'))[0]).toMatchObject({ rule: 'walkAwayLaying', earliest: '2025-06-10', latest: '2025-06-17', status: 'due' });
  expect(await duesOf(rows, 'A', '2025-06-12')).toEqual([]);
});

// Queen lost on 1 June 2025, emergency cells from larvae a day old: first look for eggs not before 22 June (day 21) and no later
// than 29 June (day 28). Follows from the days of a queen's growth (egg 3 days, out on day 16); from memory.
test('a colony whose queen is missing on 1 June is looked at from 22 to 29 June', async () => {
  const rows = [hived('2025-04-20'), { date: '2025-06-01', entry: 'queen', colony: 'A', what: 'missing' }];
  expect((await duesOf(rows, 'A', '2025-06-02'))[0]).toMatchObject({ rule: 'queenlessLaying', earliest: '2025-06-22', latest: '2025-06-29', status: 'coming' });
});

// A queen cell is sealed 8 days after the egg, so a look every 7 days: seen on 10 May, due by 17 May, a day before an egg of that day
// could be sealed (18 May). Southport and District Beekeepers, Numbers (southportbeekeepers.co.uk/sd-bee-times/numbers), read.
test('swarm cells of 10 May ask for a look by 17 May, before an egg of that day can be sealed', async () => {
  const rows = [hived('2025-04-20'), { date: '2025-05-10', entry: 'inspection', colony: 'A', queen_cells: 'swarm' }];
  const [item] = await duesOf(rows, 'A', '2025-05-19');
  expect(item).toMatchObject({ rule: 'swarmCellsLook', latest: '2025-05-17', status: 'overdue' });
  expect((item?.latest ?? '') < '2025-05-18').toBe(true);
});

// Egg check on day 7 to 10 after a package or a caged queen: extension package guides, from memory.
test('a new queen is looked for on day 7 to 10', async () => {
  const rows = [hived('2025-04-20'), { date: '2025-08-01', entry: 'requeen', colony: 'A', queen_year: '2025' }];
  expect((await duesOf(rows, 'A', '2025-08-01'))[0]).toMatchObject({ rule: 'newQueenLaying', earliest: '2025-08-08', latest: '2025-08-11' });
});

test('each number says how well it is sourced', () => {
  const own = houseRuleDefinitions.filter(({ room }) => room === 'attention');
  expect(Object.fromEntries(own.map(({ key, confidence }) => [key, confidence]))).toMatchObject({ 'attention.walkAway.from': 'read-weak', 'attention.walkAway.by': 'from memory', 'attention.swarmCells.by': 'read', 'attention.recount.by': 'common practice, no source' });
  for (const { key, source, range } of own) {
    expect(source.length, key).toBeGreaterThan(8);
    expect(range?.[0], key).toBeLessThanOrEqual(numberRule(new Map(), key));
  }
});

// International code (community.lsoft.com BEE-L July 2000; launcestonbeekeepers.org.uk/queen-bee-marking): read.
test('marking colours of the years', () => {
  expect([2023, 2024, 2025, 2026, 2027].map(queenColour)).toEqual(['red', 'green', 'blue', 'white', 'yellow']);
});
