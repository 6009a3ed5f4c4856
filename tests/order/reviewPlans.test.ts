import { expect, test } from 'vitest';
import { orderQuestion, type KeptPlan } from '#shared/contract/decision.ts';
import { day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { highsSolver } from '#core/desk/highsSolver.ts';
import { decideOrder } from '#core/order/decideOrder.ts';
import { reviewPlans } from '#core/order/reviewPlans.ts';
import { hived, lost, recorded, yards } from '../losses/recorded.ts';

const solver = await highsSolver();
const rows = Array.from({ length: 20 }, (_, n) => hived('2025-05-01', `C${n}`));

function plan(key: string, on: string, united: 'lost' | 'takenOut' = 'lost'): KeptPlan {
  const today = day(on);
  const facts = { states: recorded(rows).states, yards, borders: defaultBorders, rules: new Map(), asOf: today, today, views: [], offers: [], paid: [], there: () => null, stockTrouble: [], onOrder: { colonies: 0, packages: 0, queens: 0, equipment: new Map<string, number>() } };
  return { key, day: today, note: null, decision: decideOrder(orderQuestion.parse({ target: 20, united }), facts, solver, new SeededRandom(1)) };
}
const after = (dead: number, more: Parameters<typeof recorded>[0] = []) => recorded([...rows, ...Array.from({ length: dead }, (_, n) => lost('2026-02-01', `C${n}`)), ...more].toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1))).states;

test('without a record of winters the plan is made from the published rate, and says so', () => {
  const { decision } = plan('p1', '2025-12-01');
  expect(decision.forecast.rate).toBeCloseTo(0.288, 2);
  expect(decision.forecast.from).toContain('published surveys');
  expect(decision.sentences.join(' ')).toContain('USDA NASS');
});

test('survivors inside and outside the range are told apart; a sold colony is not a dead one', () => {
  const kept = plan('p1', '2025-12-01');
  const judged = (dead: number, more: Parameters<typeof after>[1] = []) => reviewPlans([kept], { states: after(dead, more), entries: [], today: day('2026-04-01') }).plans[0];
  expect(judged(6)).toMatchObject({ survivors: 14, inside: true });
  expect(judged(19)).toMatchObject({ survivors: 1, inside: false });
  expect(judged(19)?.sentence).toContain('harder');
  expect(judged(6, [{ date: '2026-03-01', entry: 'sale', colony: 'C19' }])).toMatchObject({ survivors: 14 });
  expect(judged(6, [{ date: '2026-03-01', entry: 'combine', colony: 'C19', into: 'C18' }])).toMatchObject({ survivors: 13 });
});

test('before the spring nothing is judged; of several plans for one spring only the last is tallied', () => {
  const plans = [plan('p1', '2025-11-01'), plan('p2', '2025-12-01')];
  expect(reviewPlans(plans, { states: after(0), entries: [], today: day('2026-03-31') }).tally).toMatchObject({ over: 0 });
  const judged = reviewPlans(plans, { states: after(6), entries: [], today: day('2026-04-01') });
  expect(judged.tally).toMatchObject({ over: 1, inside: 1 });
  expect(judged.plans.map(({ key }) => key)).toEqual(['p2', 'p1']);
  expect(reviewPlans(plans, { states: after(6), entries: [], today: day('2026-07-01') }).plans[0]).toMatchObject({ onTargetDay: 14 });
});

test('line by line: survivors, colonies, bought, splits and money, so far and when it is over', () => {
  const kept = plan('p1', '2025-12-01');
  const order = kept.decision.answer;
  if (order === null) throw new Error('an order was expected');
  const later: Parameters<typeof recorded>[0] = [
    ...rows,
    { date: '2025-11-01', entry: 'purchase', item: 'deep box', quantity: '5', price: '100', supplier: 'farm store' },
    // Ordered with a price, hived with one each: the same bees once. Equipment is paid when it is ordered.
    { date: '2025-12-02', entry: 'purchase', item: 'package', quantity: '3', price: '480', supplier: 'Sandel Road Bees', note: 'Ordered' },
    { date: '2025-12-03', entry: 'purchase', item: 'deep box', quantity: '10', price: '250', supplier: 'farm store', note: 'Ordered' },
    ...Array.from({ length: 6 }, (_, n) => lost('2026-02-01', `C${n}`)),
    hived('2026-04-20', 'P1', 'QY', { price: '160', supplier: 'Sandel Road Bees' }), hived('2026-04-20', 'P2', 'QY', { price: '160', supplier: 'sandel road bees' }),
    { date: '2026-06-01', entry: 'split', colony: 'C10', new_colony: 'S1' },
    hived('2026-07-10', 'P9', 'QY', { price: '999', supplier: 'Sandel Road Bees' }),
  ];
  const of = (today: string) => {
    const { states, entries } = recorded(later.filter(({ date }) => (date ?? '') <= today));
    const { plans: [review], tally } = reviewPlans([kept], { states, entries, today: day(today) });
    return { lines: Object.fromEntries((review?.lines ?? []).map((line) => [line.what, line])), tally };
  };
  const early = of('2026-03-01').lines;
  expect(early['survivors']).toMatchObject({ happened: null, held: null, over: false });
  expect(early['bought']).toMatchObject({ planned: String(order.bought), happened: '0', held: null });
  expect(early['money']).toMatchObject({ happened: '$730', held: null });
  const { lines, tally } = of('2026-08-01');
  expect(lines['survivors']).toMatchObject({ happened: '14', held: true });
  expect(lines['colonies']).toMatchObject({ happened: '17', held: false, sentence: expect.stringContaining('3 short') });
  expect(lines['bought']).toMatchObject({ happened: '2', over: true });
  expect(lines['splits']).toMatchObject({ happened: '1' });
  expect(lines['money']).toMatchObject({ happened: '$730', over: true });
  expect(tally).toMatchObject({ over: 1, inside: 1, springs: [{ spring: '2026-04-01', survivors: 14, runningInside: 1, runningOver: 1 }] });
});

test('the tally runs on from spring to spring, with its share and range once there are enough', () => {
  const kept = plan('p1', '2025-12-01');
  const years = Array.from({ length: 12 }, (_, at) => {
    const [living, spring] = [20, day(`${2010 + at}-04-01`)];
    const decision = { ...kept.decision, spring, targetDay: day(`${2010 + at}-06-20`), asOf: day(`${2009 + at}-12-01`), living };
    return { ...kept, key: `p${String(at).padStart(2, '0')}`, day: decision.asOf, decision: { ...decision, forecast: { ...decision.forecast, low: at < 3 ? 21 : 10, high: 22 } } };
  });
  const { tally } = reviewPlans(years, { states: [], entries: [], today: day('2030-01-01') });
  expect(tally).toMatchObject({ over: 12, inside: 9 });
  expect(tally.springs.map(({ runningInside, runningOver }) => `${runningInside}/${runningOver}`)).toEqual(['0/1', '0/2', '0/3', '1/4', '2/5', '3/6', '4/7', '5/8', '6/9', '7/10', '8/11', '9/12']);
  // 9 of 12 by Wilson, 95 %: 47 to 91 per cent.
  expect(tally.sentence).toContain('9 times (75 %, 47–91)');
  expect(tally.sentence).toContain('agrees');
  expect(reviewPlans(years.slice(0, 3), { states: [], entries: [], today: day('2030-01-01') }).tally.sentence).toContain('So few say little yet.');
});

test('with nothing alive and nothing wanted, and with nothing alive and much wanted, there is a page to read', () => {
  const today = day('2025-12-01');
  const facts = { states: [], yards, borders: defaultBorders, rules: new Map(), asOf: today, today, views: [], offers: [], paid: [], there: () => null, stockTrouble: [], onOrder: { colonies: 0, packages: 0, queens: 0, equipment: new Map<string, number>() } };
  const decide = (target: number) => decideOrder(orderQuestion.parse({ target }), facts, solver, new SeededRandom(1));
  expect(decide(0)).toMatchObject({ outcome: 'nothing', living: 0 });
  const ten = decide(10);
  expect(ten).toMatchObject({ outcome: 'order', answer: { bought: 10, chanceShort: 0 } });
  expect(ten.sentences[0]).toContain('all 10 are to be bought');
  // Nor does it take a yard in the book.
  expect(decideOrder(orderQuestion.parse({ target: 6 }), { ...facts, yards: [] }, solver, new SeededRandom(1))).toMatchObject({ outcome: 'order', answer: { bought: 6, placed: [] } });
  expect(JSON.stringify([decide(0), ten])).not.toContain('NaN');
});
