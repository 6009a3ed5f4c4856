import { expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { freshDesk } from './freshDesk.ts';

const trial = freshDesk();
const { ask } = trial;
const row = (date: string, entry: NonNullable<Cells['entry']>, more: Cells): Cells => ({ date, entry, ...more });
const plain = { hours: false, equipment: 'paid' as const };
const amounts = (lines: readonly { line: string; total: number }[]) => Object.fromEntries(lines.map(({ line, total }) => [line, total]));

async function season(): Promise<void> {
  await ask('book.create', { name: 'Ossar Valley' });
  for (const [code, name] of [['QY', 'Quarry'], ['LB', 'Larch Bend']] as const) await ask('yard.keep', { code, name, room: 20, minutes: 18 });
  await ask('journal.enter', {
    rows: [
      row('2025-04-10', 'purchase', { item: 'deep box', supplier: 'farm store', quantity: '10', price: '280' }),
      row('2026-04-01', 'install', { yard: 'QY', colony: 'A', origin: 'package', supplier: 'Sandel Road Bees', price: '174' }),
      row('2026-04-01', 'install', { yard: 'QY', colony: 'B', origin: 'package', supplier: 'Sandel Road Bees', price: '174' }),
      row('2026-04-01', 'install', { yard: 'LB', colony: 'C', origin: 'nuc', supplier: 'Upper Ferry Apiary', price: '230' }),
      row('2026-06-01', 'work', { yard: 'QY', hours: '2', people: '2', miles: '30', task: 'round' }),
      row('2026-07-20', 'harvest', { yard: 'QY', colony: 'A', gross: '75', tare: '15', unit: 'lb' }),
      row('2026-08-01', 'purchase', { item: 'white sugar, 50 lb bag', quantity: '2', price: '75' }),
      row('2026-08-02', 'purchase', { item: 'honey jar, 1 lb', quantity: '60' }),
      row('2026-09-05', 'sale', { item: 'honey, 1 lb jar', quantity: '40', price: '420' }),
      row('2026-09-06', 'sale', { yard: 'QY', colony: 'B', price: '255' }),
    ],
  });
}

test('a season’s account: its lines, its yards, what no yard is named for, and what is divided by', async () => {
  await season();
  const found = await ask('returns.season', { hours: false, equipment: 'parts' });
  expect(found).toMatchObject({ season: 2026, seasonName: '2026–27', running: true, hours: 4, miles: 30, pounds: expect.closeTo(60, 6) });
  expect(found.yards.map(({ code }) => code)).toEqual(['LB', 'QY']);
  expect(amounts(found.returns)).toEqual({ honey: 42_000, 'bees sold': 25_500 });
  // A tenth of 280 written off in the second season; 30 miles at 0.50.
  expect(amounts(found.costs)).toEqual({ bees: 57_800, feed: 7500, equipment: 2800, fuel: 1500 });
  expect(found.allReturns).toEqual({ byYard: [0, 25_500], notAssigned: 42_000, total: 67_500 });
  expect(found.allCosts).toEqual({ byYard: [23_000, 34_800 + 1500], notAssigned: 10_300, total: 69_600 });
  expect(found.net.total).toBe(-2100);
  expect(found.unpriced).toHaveLength(1);
  // A and C for the 239 days to 25 November; B from 1 April to 6 September, 158 of them.
  expect(found.colonies).toBeCloseTo(2 + 158 / 239, 9);
  expect(found.perColony.net).toBeCloseTo(-2100 / (2 + 158 / 239), 6);
  expect(found.perPound).toMatchObject({ returns: expect.closeTo(1125, 6), why: null });
  expect(found.yards[0]).toMatchObject({ pounds: 0, perPound: { returns: null, costs: null, net: null, why: 'No honey was weighed in these days, so there is nothing to divide by.' } });
});

test('hours valued by the house’s hour; equipment as paid in the season it was bought', async () => {
  await season();
  expect(amounts((await ask('returns.season', { hours: true, equipment: 'paid' })).costs)).toEqual({ bees: 57_800, feed: 7500, fuel: 1500, labour: 4 * 1800 });
  await ask('rules.set', { key: 'decision.hourValue', value: 25 });
  expect(amounts((await ask('returns.season', { hours: true, equipment: 'paid' })).costs).labour).toBe(10_000);
  const before = await ask('returns.season', { season: 2025, ...plain });
  expect(before).toMatchObject({ running: false, colonies: 0, perColony: { net: null, why: 'No colony was kept in these days, so there is nothing to divide by.' }, equipmentPaid: 28_000 });
  expect(amounts(before.costs)).toEqual({ equipment: 28_000 });
  expect(before.seasons.map(({ season: one }) => one)).toEqual([2025, 2026]);
});

test('the lines behind it are its amounts, and a struck one is gone; as of an earlier day only what was so then', async () => {
  await season();
  const asked = { hours: true, equipment: 'parts' as const };
  const [account, behind] = [await ask('returns.season', asked), await ask('returns.lines', asked)];
  const total = (side: 'cost' | 'return') => behind.lines.filter((line) => line.side === side).reduce((sum, { amount }) => sum + amount, 0);
  expect([total('return'), total('cost')]).toEqual([account.allReturns.total, account.allCosts.total]);
  const sold = behind.lines.find(({ line }) => line === 'bees sold')!;
  expect(sold).toMatchObject({ day: '2026-09-06', kind: 'sale', quantity: 1, yard: 'QY', basis: 'paid' });
  await ask('journal.strike', { entry: sold.entry, reason: 'not sold after all' });
  expect(amounts((await ask('returns.season', asked)).returns)).toEqual({ honey: 42_000 });
  expect(amounts((await ask('returns.season', { ...asked, asOf: '2026-05-01' })).costs)).toEqual({ bees: 57_800, equipment: 2800 });
  expect((await ask('returns.season', { ...plain, season: 2030 })).costs).toEqual([]);
});

test('the line of a purchase is chosen by hand, stays with it when it is replaced, and is taken back; what cannot be chosen is refused', async () => {
  await season();
  const lineOf = async (item: string) => (await ask('returns.lines', plain)).lines.find(({ description }) => description.includes(item));
  const sugar = (await lineOf('white sugar'))!;
  expect(sugar).toMatchObject({ line: 'feed', bought: { guess: 'feed', chosen: false } });
  expect(await ask('returns.chooseLine', { entry: sugar.entry, line: 'containers' })).toEqual({ entry: sugar.entry, item: 'white sugar, 50 lb bag', line: 'containers', guess: 'feed', chosen: true });
  expect(await lineOf('white sugar')).toMatchObject({ line: 'containers', bought: { guess: 'feed', chosen: true } });
  expect(amounts((await ask('returns.season', plain)).costs)).toMatchObject({ containers: 7500 });
  expect(amounts((await ask('returns.season', plain)).costs).feed).toBeUndefined();

  // Put right in the journal, it is the same purchase; of another item it is not.
  const replaced = async (entry: number, item: string) => {
    await ask('journal.replace', { entry, cells: row('2026-08-01', 'purchase', { item, quantity: '3', price: '80' }), reason: 'read the bill again' });
    return (await lineOf(item))!;
  };
  const again = await replaced(sugar.entry, 'white sugar, 50 lb bag');
  expect(again).toMatchObject({ amount: 8000, line: 'containers', bought: { guess: 'feed', chosen: true } });
  expect(await trial.desk.call('returns.chooseLine', { entry: sugar.entry, line: 'feed' })).toMatchObject({ ok: false, sentence: 'That purchase was struck, so it stands under no line.' });
  expect(await ask('returns.chooseLine', { entry: again.entry, line: null })).toMatchObject({ line: 'feed', chosen: false });
  expect(await lineOf('white sugar')).toMatchObject({ line: 'feed', bought: { guess: 'feed', chosen: false } });
  await ask('returns.chooseLine', { entry: again.entry, line: 'other costs' });
  expect(await replaced(again.entry, 'fondant')).toMatchObject({ line: 'feed', bought: { guess: 'feed', chosen: false } });

  const sold = (await ask('returns.lines', plain)).lines.find(({ line }) => line === 'bees sold')!;
  expect(sold.bought).toBeNull();
  expect(await trial.desk.call('returns.chooseLine', { entry: sold.entry, line: 'feed' })).toMatchObject({ ok: false, code: 'unknown' });
  await ask('journal.enter', { rows: [row('2026-10-01', 'purchase', { item: 'package', quantity: '4', price: '600', note: 'Ordered, delivery 2027-04-24' })] });
  const order = (await ask('orders.placed', {})).orders[0]!;
  expect(await trial.desk.call('returns.chooseLine', { entry: order.entry, line: 'feed' })).toMatchObject({ ok: false, sentence: expect.stringMatching(/^Bees that were ordered count when they are hived/) });
});
