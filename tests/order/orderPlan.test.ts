import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders, seasonOf } from '#shared/seasons.ts';
import { orderPlan } from '#core/order/orderPlan.ts';
import { pastWindows, planWindow } from '#core/order/planWindow.ts';
import { houseRuleDefinitions, ruleTrouble, type RuleValues } from '#core/rules/houseRules.ts';
import { hived, lost, recorded, yards } from '../losses/recorded.ts';

function plan(rows: Cells[], asOf: string, target?: number, confidence?: number, rules: RuleValues = new Map()) {
  const today = day(asOf);
  return orderPlan(
    { target, confidence, source: 'package', hiveFrames: 10, united: 'lost', asOf: today, today },
    { states: recorded(rows).states, yards, borders: defaultBorders, rules, there: () => null },
  );
}
/** `lost` of `atRisk` in each winter, on the day given; the losers of a winter are hived in its spring. */
function winters(past: readonly (readonly [number, number])[], monthDay: string, last: number, living: number): Cells[] {
  const rows = past.flatMap(([gone, atRisk], at) => {
    const year = last - past.length + at;
    const label = (n: number) => `W${year}-${n}`;
    const spring = Array.from({ length: atRisk }, (_, n) => hived(`${year}-05-01`, label(n)));
    const dead = Array.from({ length: gone }, (_, n) => lost(`${monthDay < '04-01' ? year + 1 : year}-${monthDay}`, label(n)));
    const rest = Array.from({ length: atRisk - gone }, (_, n): Cells => ({ date: `${year + 1}-04-10`, entry: 'sale', colony: label(n + gone) }));
    return [...spring, ...dead, ...rest];
  });
  return [...rows, ...Array.from({ length: living }, (_, n) => hived(`${last}-05-01`, `L${n}`))].toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1));
}

describe('the order', () => {
  test('five winters of 5/40, 11/44, 3/38, 9/46, 14/50 with 48 alive and 45 wanted: buy 11 at 90 in 100', () => {
    // Worked with R 4.2.2 from the winters alone: p 0.1926606, mean loss 9.2477, 90 % quantile 14, P(short) 0.0977.
    const found = plan(winters([[5, 40], [11, 44], [3, 38], [9, 46], [14, 50]], '12-20', 2025, 48), '2025-09-20', 45, 0.9);
    expect(found.past.map((one) => [one.lost, one.atRisk])).toEqual([[5, 40], [11, 44], [3, 38], [9, 46], [14, 50]]);
    expect(found.buy).toBe(11);
    expect(found.survivors.mean).toBeCloseTo(48 - 9.2477, 4);
    expect(found.chanceShort).toBeCloseTo(0.0977, 4);
  });

  test('within a winter only losses after that day count, among those that lived until then', () => {
    const rows = [...winters([[0, 10]], '12-20', 2025, 5), lost('2024-11-25', 'W2024-0'), lost('2024-11-26', 'W2024-1')].filter((row) => !(row.entry === 'sale' && ['W2024-0', 'W2024-1'].includes(row.colony ?? '')));
    const found = plan(rows.toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1)), '2025-11-25', 5);
    expect(found.past).toEqual([{ season: 2024, from: '2024-11-26', until: '2025-04-01', atRisk: 9, lost: 1 }]);
  });

  test('on 28 February of a leap year the rest of other winters begins on 1 March, and on the last day nothing is left', () => {
    const { states } = recorded([...Array.from({ length: 4 }, (_, n) => hived('2022-05-01', `C${n}`)), lost('2022-12-01', 'C0'), lost('2023-02-28', 'C1'), lost('2023-03-01', 'C2')]);
    const past = (asOf: string, from: string) => pastWindows(states, yards, planWindow(day(asOf), defaultBorders, from), 2022, day(asOf), day(asOf), 'lost', defaultBorders)[0];
    expect(seasonOf(day('2024-02-28'))).toBe(2023);
    expect(past('2024-02-28', '03-15')).toMatchObject({ from: '2023-03-01', atRisk: 2, lost: 1 });
    expect(past('2024-03-31', '05-01')).toMatchObject({ from: '2023-04-01', atRisk: 1, lost: 0 });
  });

  test('more confidence and a higher target never buy fewer; a target below what lives buys none', () => {
    const rows = winters([[3, 20], [6, 22]], '12-20', 2025, 15);
    fc.assert(fc.property(fc.nat(40), fc.nat(10), fc.double({ min: 0.5, max: 0.99, noNaN: true }), fc.double({ min: 0, max: 0.009, noNaN: true }), (target, more, confidence, surer) => {
      const { buy } = plan(rows, '2025-09-20', target, confidence);
      expect(plan(rows, '2025-09-20', target + more, confidence).buy).toBeGreaterThanOrEqual(buy);
      expect(plan(rows, '2025-09-20', target, confidence + surer).buy).toBeGreaterThanOrEqual(buy);
    }), { numRuns: 25 });
    expect(plan(rows, '2025-09-20', 1)).toMatchObject({ buy: 0, orders: [] });
  });

  test('without a past winter the published rate is taken, and said to be', () => {
    const found = plan([hived('2025-05-01', 'A'), hived('2025-05-01', 'B')], '2025-09-20', 4);
    expect(found.prior).toMatchObject({ rate: 0.288, rule: 'expected-rate', seasons: 0 });
    expect(found.sentences.join(' ')).toContain('published surveys');
  });

  test('outside the winter the living are put as going into it, since what the summer changes is not foreseen', () => {
    expect(plan([hived('2025-09-01', 'A')], '2025-09-20').sentences[0]).toMatch(/^If the 1 alive now /);
    expect(plan([hived('2025-11-01', 'A')], '2025-11-25').sentences[0]).toMatch(/^Of the 1 alive now/);
  });

  test('a day past is late; the last day itself is not', () => {
    const late = (asOf: string) => plan([hived('2025-05-01', 'A')], asOf, 5).orders[0];
    expect(late('2026-01-31')).toMatchObject({ orderBy: '2026-01-31', late: false });
    expect(late('2026-02-01')).toMatchObject({ orderBy: '2026-01-31', late: true });
  });

  test('with nothing alive and nothing wanted there is nothing to buy', () => {
    expect(plan([], '2025-11-25').sentences.join(' ')).not.toContain('whole target of 0');
    expect(JSON.stringify(plan([], '2025-11-25'))).not.toContain('NaN');
  });
});

describe('house rules', () => {
  test('each has a source and holds its own default; a bad value is refused in a sentence', () => {
    for (const rule of houseRuleDefinitions) {
      expect(rule.source.length).toBeGreaterThan(5);
      expect(ruleTrouble(rule.key, rule.default)).toBeNull();
      expect(ruleTrouble(rule.key, rule.type === 'number' ? 1e6 : '')).toMatch(/\.$/);
    }
    expect(['02-29', '04-31', '13-01', '00-10'].map((text) => ruleTrouble('season.winter', text) === null)).toEqual([false, false, false, false]);
    expect(ruleTrouble('no.such', 1)).toContain('no.such');
  });
});
