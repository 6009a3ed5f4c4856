import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayCuts, type DayWork } from '#core/work/plan/dayCuts.ts';

const yards = fc.uniqueArray(fc.nat(2), { minLength: 1, maxLength: 3 });
const share = fc.nat(20).map((part) => part / 20);
const outing = fc.record({ yards, crew: fc.integer({ min: 1, max: 2 }), room: fc.integer({ min: 30, max: 150 }), share });
const piece = fc.record({ yard: fc.nat(2), people: fc.integer({ min: 1, max: 2 }), units: fc.integer({ min: 1, max: 2 }), each: fc.integer({ min: 80, max: 600 }).map((tenths) => tenths / 10), share });

/** Every way of doing work on an outing: units of each piece. */
function waysOf({ yards: there, crew, room }: DayWork['outings'][number], work: DayWork['work']): number[][] {
  let ways: { done: number[]; left: number }[] = [{ done: [], left: room }];
  for (const { yard, people, units, each } of work) {
    const most = there.includes(yard) && crew >= people ? units : 0;
    ways = ways.flatMap(({ done, left }) => Array.from({ length: most + 1 }, (_, many) => ({ done: [...done, many], left: left - many * each })).filter((one) => one.left >= -1e-9));
  }
  return ways.map(({ done }) => done);
}

test('a row that is cut from a mixture of outings takes none of them away, whatever is done on it', () => {
  let cuts = 0;
  fc.assert(fc.property(fc.array(outing, { minLength: 1, maxLength: 4 }), fc.array(piece, { minLength: 1, maxLength: 5 }), (outings, work) => {
    const day: DayWork = { outings: outings.map((one, at) => ({ ...one, variable: at })), work: work.map((one, at) => ({ ...one, variable: outings.length + at })) };
    const all = outings.reduce((sum, one) => sum + one.share, 1e-3);
    const mixed = [...outings.map((one) => one.share / all), ...work.map((one) => one.share * one.units)];
    const found = dayCuts([day], mixed);
    cuts += found.length;
    const over = ({ terms, high }: (typeof found)[number], values: readonly number[]) => terms.reduce((sum, [variable, factor]) => sum + factor * (values[variable] ?? 0), -(high ?? 0));
    for (const cut of found) {
      expect(over(cut, mixed)).toBeGreaterThan(0);
      for (const [at, one] of day.outings.entries()) {
        for (const done of waysOf(one, day.work)) expect(over(cut, [...outings.map((_, other) => (other === at ? 1 : 0)), ...done])).toBeLessThanOrEqual(1e-6);
      }
    }
  }), { numRuns: 300 });
  expect(cuts).toBeGreaterThan(300);
});

test('the room of one outing is not given to the work of another, and what does not divide is not divided', () => {
  // Half of an outing with much room to one yard, half of one with little to both: the other yard's work has only the little.
  const day: DayWork = {
    outings: [{ variable: 0, yards: [0], crew: 1, room: 200 }, { variable: 1, yards: [0, 1], crew: 1, room: 60 }],
    work: [{ variable: 2, yard: 0, people: 1, units: 1, each: 40 }, { variable: 3, yard: 1, people: 1, units: 2, each: 25 }],
  };
  const rows = (values: readonly number[]) => dayCuts([day], values).map(({ terms }) => terms.map(([variable, factor]) => [variable, Math.round(factor)]));
  // All of both: 40 + 25 minutes on a half of 60, and 40 on the other.
  expect(rows([0.5, 0.5, 1, 1])).toContainEqual([[2, 40], [3, 25], [0, -40], [1, -60]]);
  // 50 minutes of the other yard's 60 beside 40 are not done by thirds: of steps of 25 minutes the outing has two.
  expect(rows([0, 1, 0.25, 2])).toContainEqual([[2, 1], [3, 1], [0, -1], [1, -2]]);
});
