import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kaplanMeier } from '#core/stats/kaplanMeier.ts';
import { kaplanMeierByGroup } from '#core/stats/kaplanMeierByGroup.ts';
import { numberAtRisk } from '#core/stats/numberAtRisk.ts';
import { sortSpans, type SurvivalSpans } from '#core/stats/survivalSpans.ts';

interface Row {
  readonly entry: number;
  readonly length: number;
  readonly status: number;
}

const row: fc.Arbitrary<Row> = fc.record({
  entry: fc.integer({ min: 0, max: 60 }),
  length: fc.integer({ min: 0, max: 60 }),
  status: fc.integer({ min: 0, max: 1 }),
});
const rows = fc.array(row, { minLength: 1, maxLength: 80 });

function spansOf(list: readonly Row[]): SurvivalSpans {
  return Object.freeze({
    entry: Object.freeze(list.map((one) => one.entry)),
    exit: Object.freeze(list.map((one) => one.entry + one.length)),
    status: Object.freeze(list.map((one) => one.status)),
  });
}

/** The definition read aloud: quadratic, with rows instead of sorted columns. */
function plainly(list: readonly Row[]): readonly { time: number; atRisk: number; lost: number; survival: number }[] {
  const used = list.filter((one) => one.length > 0);
  const times = [...new Set(used.filter((one) => one.status === 1).map((one) => one.entry + one.length))].toSorted((a, b) => a - b);
  let survival = 1;
  return times.map((time) => {
    const atRisk = used.filter((one) => one.entry < time && time <= one.entry + one.length).length;
    const lost = used.filter((one) => one.status === 1 && one.entry + one.length === time).length;
    survival *= 1 - lost / atRisk;
    return { time, atRisk, lost, survival };
  });
}

describe('kaplanMeier', () => {
  test('is what the definition says, row by row', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const { table, n, leftOut } = kaplanMeier(spansOf(list));
        const want = plainly(list);
        expect(table.time).toEqual(want.map((step) => step.time));
        expect(table.atRisk).toEqual(want.map((step) => step.atRisk));
        expect(table.lost).toEqual(want.map((step) => step.lost));
        for (const [at, step] of want.entries()) expect(table.survival[at]).toBeCloseTo(step.survival, 12);
        expect(n + leftOut.zeroLength).toBe(list.length);
      }),
    );
  });

  test('never rises, and lies within both of its bands', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const { table } = kaplanMeier(spansOf(list));
        let before = 1;
        for (const [at, survival] of table.survival.entries()) {
          expect(survival).toBeLessThanOrEqual(before);
          before = survival;
          for (const [lower, upper] of [
            [table.lowerLogLog[at], table.upperLogLog[at]],
            [table.lowerPlain[at], table.upperPlain[at]],
          ]) {
            if (survival === 0) {
              expect([lower, upper]).toEqual([null, null]);
            } else {
              expect(lower).toBeGreaterThanOrEqual(0);
              expect(lower).toBeLessThanOrEqual(survival);
              expect(upper).toBeGreaterThanOrEqual(survival);
              expect(upper).toBeLessThanOrEqual(1);
            }
          }
        }
      }),
    );
  });

  test('without late entry and censoring it is the share still alive, and its error the binomial one', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 60 }), (lives) => {
        const { table, restrictedMean } = kaplanMeier(
          { entry: lives.map(() => 0), exit: lives, status: lives.map(() => 1) },
          { tau: 30 },
        );
        for (const [at, time] of table.time.entries()) {
          const share = lives.filter((life) => life > time).length / lives.length;
          expect(table.survival[at]).toBeCloseTo(share, 12);
          if (share > 0) expect(table.se[at]).toBeCloseTo(Math.sqrt((share * (1 - share)) / lives.length), 12);
        }
        expect(restrictedMean?.value).toBeCloseTo(lives.reduce((sum, life) => sum + life, 0) / lives.length, 10);
      }),
    );
  });

  test('counts every row once: lost, left alive, or left out', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 0, max: 40 }), (list, start) => {
        const curve = kaplanMeier(spansOf(list), { start });
        const censored = curve.censored.count.reduce((sum, count) => sum + count, 0);
        expect(curve.losses).toBe(curve.table.lost.reduce((sum, lost) => sum + lost, 0));
        expect(curve.losses + censored).toBe(curve.n);
        expect(curve.n + curve.leftOut.zeroLength + curve.leftOut.endedBeforeStart).toBe(list.length);
      }),
    );
  });

  test('a later start gives the curve of those alive then: S(t) / S(start)', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 40 }), (list, start) => {
        const whole = kaplanMeier(spansOf(list)).table;
        const given = kaplanMeier(spansOf(list), { start }).table;
        const atStart = whole.survival[whole.time.findLastIndex((time) => time <= start)] ?? 1;
        fc.pre(atStart > 0);
        for (const [at, time] of given.time.entries()) {
          const survival = whole.survival[whole.time.indexOf(time)] ?? Number.NaN;
          expect(given.survival[at]).toBeCloseTo(survival / atStart, 10);
        }
      }),
    );
  });

  test('does not depend on the order of rows', () => {
    fc.assert(
      fc.property(rows, (list) => {
        expect(kaplanMeier(spansOf(list.toReversed()))).toEqual(kaplanMeier(spansOf(list)));
      }),
    );
  });

  test('ignoring late entry makes survival look too good', () => {
    const late = { entry: [0, 0, 50, 50], exit: [30, 80, 70, 80], status: [1, 0, 1, 0] };
    const ignored = { ...late, entry: [0, 0, 0, 0] };
    expect(kaplanMeier(late).table.survival.at(-1)).toBeLessThan(kaplanMeier(ignored).table.survival.at(-1) as number);
  });

  test('warns when all at risk are lost before others come', () => {
    const spans = { entry: [0, 0, 50, 50], exit: [20, 30, 70, 90], status: [1, 1, 1, 0] };
    expect(kaplanMeier(spans).riskSetRanOut).toEqual({ time: 30, later: 2 });
    expect(kaplanMeier(spans, { start: 50 }).riskSetRanOut).toBeNull();
    expect(kaplanMeier(spans, { minimumAtRisk: 2 }).firstWellWatched).toBe(0);
    expect(kaplanMeier({ ...spans, entry: [0, 5, 50, 50] }, { minimumAtRisk: 2 }).firstWellWatched).toBe(5);
    expect(kaplanMeier(spans).firstWellWatched).toBeNull();
    expect(kaplanMeier({ entry: [0, 0], exit: [5, 9], status: [1, 1] }).riskSetRanOut).toBeNull();
  });

  test('no rows, no losses, one colony', () => {
    expect(kaplanMeier({ entry: [], exit: [], status: [] })).toMatchObject({ n: 0, losses: 0, lastTime: null, table: { time: [] } });
    const alive = kaplanMeier({ entry: [0, 3], exit: [10, 10], status: [0, 0] }, { tau: 10 });
    expect(alive).toMatchObject({ n: 2, losses: 0, restrictedMean: { value: 10, se: 0 }, censored: { time: [10], count: [2] } });
    expect(alive.quantiles.map((quantile) => quantile.time)).toEqual([null, null, null]);
    const lost = kaplanMeier({ entry: [0], exit: [10], status: [1] }, { tau: 20 });
    expect(lost).toMatchObject({ table: { survival: [0], se: [null] }, restrictedMean: { value: 10, se: 0 }, riskSetRanOut: null });
  });

  test('the median is the middle of a flat piece that lies exactly at one half', () => {
    const curve = kaplanMeier({ entry: [0, 0, 0, 0], exit: [10, 20, 40, 50], status: [1, 1, 1, 1] }, { probabilities: [0.5, 0.6] });
    expect(curve.quantiles.map((quantile) => quantile.time)).toEqual([30, 40]);
    const flatToTheEnd = kaplanMeier({ entry: [0, 0], exit: [10, 20], status: [1, 0] }, { probabilities: [0.5] });
    expect(flatToTheEnd.quantiles[0]?.time).toBe(10);
  });

  test.each([
    ['columns of unequal length', { entry: [0], exit: [1, 2], status: [1] }],
    ['a time that is none', { entry: [0], exit: [Number.NaN], status: [1] }],
    ['an exit before its entry', { entry: [5], exit: [4], status: [1] }],
    ['an unknown status', { entry: [0], exit: [4], status: [2] }],
  ])('refuses %s', (_, spans) => {
    expect(() => kaplanMeier(spans)).toThrow(RangeError);
  });

  test('a mean restricted to no time at all is refused', () => {
    expect(() => kaplanMeier({ entry: [0], exit: [4], status: [1] }, { tau: 0 })).toThrow(RangeError);
  });
});

describe('numberAtRisk', () => {
  test('counts entry < t <= exit, and at the start those that begin there', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 130 }), (list, time) => {
        const used = list.filter((one) => one.length > 0);
        const sorted = sortSpans(spansOf(list));
        expect(numberAtRisk(sorted, time)).toBe(used.filter((one) => one.entry < time && time <= one.entry + one.length).length);
        expect(numberAtRisk(sorted, 0)).toBe(used.filter((one) => one.entry === 0).length);
        expect(numberAtRisk(sorted, -1)).toBe(0);
      }),
    );
  });
});

describe('kaplanMeierByGroup', () => {
  test('each group is the curve of its own rows, numbers in order of size, rows without a group left out', () => {
    const spans = { entry: [0, 0, 0, 0, 0], exit: [5, 6, 7, 8, 9], status: [1, 1, 0, 1, 1] };
    const curves = kaplanMeierByGroup(spans, [10, 9, 10, null, 9]);
    expect([...curves.keys()]).toEqual(['9', '10']);
    expect(curves.get('10')).toEqual(kaplanMeier({ entry: [0, 0], exit: [5, 7], status: [1, 0] }));
    expect([...kaplanMeierByGroup(spans, ['QY', 'LB', 'QY', 'LB', 'KF']).keys()]).toEqual(['KF', 'LB', 'QY']);
  });
});
