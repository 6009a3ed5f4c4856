import { expect, test } from 'vitest';
import { orderQuestion } from '#shared/contract/decision.ts';
import { day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { highsSolver } from '#core/desk/highsSolver.ts';
import { decideOrder } from '#core/order/decideOrder.ts';
import { reviewPlans, type KeptPlan } from '#core/order/reviewPlans.ts';
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
  const judged = (dead: number, more: Parameters<typeof after>[1] = []) => reviewPlans([kept], after(dead, more), day('2026-04-01')).plans[0];
  expect(judged(6)).toMatchObject({ survivors: 14, inside: true });
  expect(judged(19)).toMatchObject({ survivors: 1, inside: false });
  expect(judged(19)?.sentence).toContain('harder');
  expect(judged(6, [{ date: '2026-03-01', entry: 'sale', colony: 'C19' }])).toMatchObject({ survivors: 14 });
  expect(judged(6, [{ date: '2026-03-01', entry: 'combine', colony: 'C19', into: 'C18' }])).toMatchObject({ survivors: 13 });
});

test('before the spring nothing is judged; of several plans for one spring only the last is tallied', () => {
  const plans = [plan('p1', '2025-11-01'), plan('p2', '2025-12-01')];
  expect(reviewPlans(plans, after(0), day('2026-03-31')).tally).toMatchObject({ over: 0 });
  const judged = reviewPlans(plans, after(6), day('2026-04-01'));
  expect(judged.tally).toMatchObject({ over: 1, inside: 1 });
  expect(judged.plans.map(({ key }) => key)).toEqual(['p2', 'p1']);
  expect(reviewPlans(plans, after(6), day('2026-07-01')).plans[0]).toMatchObject({ onTargetDay: 14 });
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
