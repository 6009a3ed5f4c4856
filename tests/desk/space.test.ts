import { expect, test } from 'vitest';
import type { InputOf } from '#shared/contract/contract.ts';
import type { Cells } from '#shared/entryForms.ts';
import { hold } from '#shared/figures.ts';
import { freshDesk } from './freshDesk.ts';

const trial = freshDesk();
const { ask } = trial;

const about = (date: string, entry: NonNullable<Cells['entry']>, colony: string, more: Cells = {}): Cells => ({ date, entry, yard: colony.startsWith('L') ? 'LB' : 'QY', colony, ...more });
const stock = (quantity: number, item: string, to: string): Cells => ({ date: '2026-03-01', entry: 'stock', item, quantity: String(quantity), from: 'supplier', to });
const list = async (asOf?: string) => ask('space.list', asOf === undefined ? {} : ({ asOf } as InputOf<'space.list'>));
const colony = async (label: string, asOf: string) => (await list(asOf)).yards.flatMap(({ colonies }) => colonies).find((one) => one.label === label)!;

/** Colonies taken over stand on two deeps, 20 frames; nucs on one, 10 frames or 8. */
async function spring(): Promise<void> {
  await ask('book.create', { name: 'Ossar Valley' });
  for (const [code, name] of [['LB', 'Larch Bend'], ['QY', 'Quarry']] as const) await ask('yard.keep', { code, name, room: 20, minutes: 18 });
  const look = (label: string, bees: string, more: Cells = {}) => about('2026-05-10', 'inspection', label, { frames_bees: bees, queen_cells: 'none', ...more });
  await ask('journal.enter', {
    rows: [
      stock(40, 'deep box', 'shed'), stock(3, 'medium super', 'shed'), stock(1, 'medium super', 'LB'),
      ...['A', 'B', 'C', 'F', 'L1', 'L2'].map((label) => about('2026-04-10', 'install', label, { origin: 'opening', queen_year: label === 'C' ? '2024' : '2025' })),
      about('2026-04-10', 'install', 'D', { origin: 'nuc', queen_year: '2026' }),
      about('2026-04-10', 'install', 'E', { origin: 'nuc', queen_year: '2026', note: 'eight-frame hive' }),
      about('2026-04-10', 'install', 'G', { origin: 'nuc', queen_year: '2026', note: 'eight-frame hive' }),
      look('A', '14', { frames_brood: '7', eggs: 'yes' }), look('B', '13.5', { frames_brood: '3.5' }), look('C', '18', { frames_brood: '8', eggs: 'yes', queen_cells: 'swarm' }),
      look('D', '7'), look('E', '6'), look('G', '5'), look('L1', '20', { frames_brood: '8', eggs: 'yes' }), look('L2', '14', { frames_brood: '6', eggs: 'yes' }),
    ],
  });
}

// trade-facts 5, check case 3: of ten frames 7 covered ask for a box, 6 are watched; of eight the same share is 5.6, so 6 ask (read-weak, arithmetic).
test('room wanted: brood boxes first, then supers, each with the share of frames that bees cover', async () => {
  await spring();
  const found = await Promise.all(['A', 'B', 'C', 'D', 'E', 'G', 'F', 'L1'].map(async (label) => ({ label, ...(await colony(label, '2026-05-15')).need })));
  expect(found.map(({ label, say, bees, room, add }) => [label, say, bees, room, add === null ? null : `${add.count} ${add.box}`])).toEqual([
    ['A', 'add', 14, 20, '1 medium'], // 70 %; with a medium, 10 x 6.25 / 9.125 = 6.85 deep frames more, 52 %
    ['B', 'watch', 13.5, 20, null], // 67.5 %
    ['C', 'add', 18, 20, '1 medium'], // 90 %; 18 of 26.85 are 67 %
    ['D', 'add', 7, 10, '1 deep'],
    ['E', 'add', 6, 8, '1 deep'],
    ['G', 'watch', 5, 8, null], // 62.5 %
    ['F', 'not told', null, null, null],
    ['L1', 'add', 20, 20, '2 medium'], // 20 of 26.85 are 74 %, so two
  ]);
  expect(found[0]).toMatchObject({ look: '2026-05-10', rests: { kind: 'inspection', day: '2026-05-10' }, reason: `14 frames of bees on 10 May 2026; it stands on 2 deeps of 10 frames: 70${hold}% covered.` });
  // A box put on since is in the account: 14 of 26.85 are 52 %. After 21 days the look tells nothing any more.
  await ask('journal.enter', { rows: [about('2026-05-12', 'supers on', 'A', { box: 'medium', count: '1' })] });
  expect(await colony('A', '2026-05-15')).toMatchObject({ need: { say: 'enough', add: null, room: expect.closeTo(26.849, 3) } });
  expect([(await colony('C', '2026-05-31')).need.say, (await colony('C', '2026-06-01')).need.say]).toEqual(['add', 'look first']);
});

test('boxes by yard: first what lies there, then the shed’s in the order of the yards, then what is lacking', async () => {
  await spring();
  const found = await list('2026-05-15');
  // Wanted: three mediums at Larch Bend (two on L1, one on L2), where one lies; two mediums (A, C), a ten-frame deep (D) and an eight-frame one (E) at the Quarry.
  expect(found.yards.map(({ code, boxes }) => [code, boxes])).toEqual([
    ['LB', [{ box: 'medium', frames: 10, wanted: 3, inYard: 1, fromShed: 2, lack: 0 }]],
    ['QY', [
      { box: 'medium', frames: 10, wanted: 2, inYard: 0, fromShed: 1, lack: 1 }, { box: 'deep', frames: 10, wanted: 1, inYard: 0, fromShed: 1, lack: 0 }, { box: 'deep', frames: 8, wanted: 1, inYard: 0, fromShed: 0, lack: null },
    ]],
  ]);
  expect(found.shed.find(({ box, frames }) => box === 'medium' && frames === 10)?.free).toBe(3);
  // No row names an eight-frame box: its account is not kept, which is not none. 
  expect(found.shed.find(({ frames }) => frames === 8)?.free).toBeNull();
  // trade-facts 11, check case 1 (Waters et al. 1994, read): 29.0 lb; a medium of 55 lb is 1.90 times that, a deep of 85 lb 2.93.
  expect(found.lifting).toContain('no more than 29 lb: they are 1.9 and 2.9 times that');
  expect(found.sentence).toBe(`6${hold}colonies want a box now, and 1${hold}box is not there; 1${hold}box is of a size that the shed’s account does not name. 2${hold}are at high swarm risk. Splits are made until 3 July at the latest.`);
  // Of three, two stand under E and G.
  await ask('journal.enter', { rows: [stock(3, '8-frame deep box', 'shed')] });
  expect((await list('2026-05-15')).yards[1]?.boxes[2]).toEqual({ box: 'deep', frames: 8, wanted: 1, inYard: 0, fromShed: 1, lack: 0 });
});

// trade-facts 5 and check cases 1 and 2: a cell is sealed 8 days after the egg (read), so every 7 days, at high risk every 5 (Trunch, read).
// Queens: second-year about twice, third-year about three times as often (Simpson, from memory). The points are the house's own.
test('swarm risk: points from season, queen, room and cells add up to the level, with the next look', async () => {
  await spring();
  const risk = async (label: string, asOf = '2026-05-15') => (await colony(label, asOf)).risk;
  const points = async (label: string) => [(await risk(label))?.level, (await risk(label))?.points, (await risk(label))?.nextLook];
  // Season 1, queen of last year 1, 70 % covered 1.
  expect(await points('A')).toEqual(['some', 3, '2026-05-17']);
  // Season 1, older queen 2, packed at 90 % 2, swarm cells 4.
  expect(await points('C')).toEqual(['high', 9, '2026-05-15']);
  expect((await risk('C'))?.reasons.map(({ words, points: got }) => [words, got])).toEqual([['Swarm cells on 10 May 2026.', 4], ['Queen of 2024, in her third summer.', 2], [`Bees on 90${hold}% of its combs on 10 May 2026.`, 2], ['It is swarm season.', 1]]);
  // Season 1, last year 1, packed 2; and season 1 with room 1 for a nuc of the year.
  expect([await points('L1'), await points('D')]).toEqual([['high', 4, '2026-05-15'], ['low', 2, '2026-05-17']]);
  // Never looked into: what is not known is said and gives no points.
  expect(await risk('F')).toMatchObject({ level: 'low', points: 2, lastLook: null, nextLook: '2026-05-15', unknown: ['No look has told how strong it is.', 'No look of this season has told of queen cells.'] });
  expect([(await risk('A', '2026-04-24')), (await risk('A', '2026-07-01'))]).toEqual([null, null]);
});

// trade-facts 5: bees on 8 frames and brood on 4 (read-weak); from the split's first eggs 11 weeks to the frost of 28 September: 13 July (from memory).
test('splits: who is strong enough, by what is still open; a split answers the risk and is not asked for twice', async () => {
  await spring();
  const found = await list('2026-05-15');
  expect(found.yards.flatMap(({ colonies }) => colonies.flatMap(({ label, split }) => (split === null ? [] : [[label, split.bees, split.brood, split.ways.length]])))).toEqual([['L1', 20, 8, 3], ['L2', 14, 6, 3], ['A', 14, 7, 3], ['C', 18, 8, 3]]);
  // A caged queen lays by day 10, a ripe cell by day 21, a walk-away by day 28 after the split.
  expect(found.splits).toMatchObject({ from: '2026-05-01', frost: '2026-09-28' });
  expect(found.splits.latest).toEqual([{ way: 'mated', day: '2026-07-03', eggs: 10, past: false }, { way: 'cell', day: '2026-06-22', eggs: 21, past: false }, { way: 'walk-away', day: '2026-06-15', eggs: 28, past: false }]);
  expect((await list('2026-06-20')).splits.latest.map(({ past }) => past)).toEqual([false, false, true]);
  await ask('journal.enter', { rows: [about('2026-05-14', 'split', 'C', { new_colony: 'H', queen: 'stays', new_queen: 'walk-away' })] });
  const c = await colony('C', '2026-05-15');
  // Season 1, older queen 2, less 2: its cells and its bees were of before the split.
  expect([c.split, c.need.say, c.risk?.level, c.risk?.points]).toEqual([null, 'look first', 'low', 1]);
});

test('in November it says calmly that this is not the season; an empty book says so too; the list of needs asks for the same', async () => {
  expect((await trial.answer('space.list', {})).ok).toBe(false);
  await spring();
  const now = await list();
  expect(now).toMatchObject({ asOf: '2026-11-25', adding: { now: false }, swarming: { now: false }, shed: [] });
  expect(now.sentence).toBe('Boxes are added from 15 April to 20 July; this is not the time.');
  expect(now.yards.flatMap(({ colonies }) => colonies.map(({ need, risk, split }) => [need.say, risk, split]))).toEqual(Array.from({ length: 9 }, () => ['out of season', null, null]));
  expect(now.splits.latest.every(({ past }) => past)).toBe(true);
  const { lines } = await ask('needs.list', { yard: null, asOf: '2026-05-15' } as InputOf<'needs.list'>);
  const asked = (rule: string) => lines.filter((line) => line.rule === rule).flatMap(({ members }) => members.map((one) => one.colony?.label)).toSorted();
  expect([asked('addBox'), asked('splitBy')]).toEqual([['A', 'C', 'D', 'E', 'L1', 'L2'], ['A', 'C', 'L1', 'L2']]);
  await ask('book.create', { name: 'Larch Bend' });
  expect(await list()).toMatchObject({ yards: [], shed: [], sentence: 'No colonies stand in any yard.' });
});
