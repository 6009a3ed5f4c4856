import { describe, expect, test } from 'vitest';
import { efficacy, hendersonTilton } from '#core/mites/efficacy.ts';
import { pairedRatio, rateRatio } from '#core/stats/rateRatio.ts';

const pair = (before: number, beforeOf: number, after: number, afterOf: number) => ({ before, beforeOf, after, afterOf });

describe('a ratio of two rates', () => {
  // stata.com/links/stata-basics/incidence-rate-ratio-calculator (read): 41 cases in 28,010 against 15 in 19,017 person-years, 1.855759 (1.005684 to 3.6093, exact).
  test('41 in 28,010 over 15 in 19,017', () => {
    const found = rateRatio(pair(15, 19_017, 41, 28_010));
    expect(found?.ratio).toBeCloseTo(1.855759, 6);
    expect(found?.limits.lower).toBeCloseTo(1.005684, 6);
    expect(found?.limits.upper).toBeCloseTo(3.6093, 4);
  });
  // poisson.test of R 4.2.2.
  test('few or none after', () => {
    const some = rateRatio(pair(40, 1180, 6, 1200));
    expect([some?.limits.lower, some?.limits.upper]).toEqual([expect.closeTo(0.05110905352, 9), expect.closeTo(0.35011755375, 9)]);
    const none = rateRatio(pair(40, 1180, 0, 1200));
    expect(none).toEqual({ ratio: 0, limits: { lower: 0, upper: expect.closeTo(0.09499809001, 9) } });
    expect(rateRatio(pair(0, 300, 0, 300))).toBeNull();
    expect(rateRatio(pair(0, 300, 4, 300))?.limits.upper).toBe(Infinity);
    expect(() => rateRatio(pair(3, 0, 4, 300))).toThrow(RangeError);
  });
});

describe('one ratio of several colonies', () => {
  // glm(cbind(after, before) ~ 1 + offset(log(after bees / before bees)), family = quasibinomial) of R 4.2.2, run until nothing changes.
  test('alike by more than chance: the dispersion is held at 1', () => {
    const found = pairedRatio([pair(12, 300, 2, 300), pair(20, 300, 5, 290), pair(4, 280, 0, 310), pair(30, 320, 9, 300)]);
    expect(Math.log(found?.ratio ?? 0)).toBeCloseTo(-1.3814691658, 8);
    expect(found?.dispersion).toBeCloseTo(0.6053580961, 7);
    expect(found?.seLog).toBeCloseTo(0.2786955142, 8);
    expect(found?.limits.upper).toBeCloseTo(Math.exp(-1.3814691658 + 3.1824463053 * 0.2786955142), 7);
  });
  test('colonies that differ', () => {
    const found = pairedRatio([pair(12, 300, 2, 300), pair(15, 300, 14, 300), pair(20, 300, 1, 300)]);
    expect(Math.log(found?.ratio ?? 0)).toBeCloseTo(-1.0169342572, 8);
    expect(found?.dispersion).toBeCloseTo(6.6036568713, 7);
    expect(found?.seLog).toBeCloseTo(0.7272920607, 8);
  });
});

describe('how far mites fell', () => {
  // Henderson and Tilton 1955, J. Econ. Entomol. 48:157-161 (formula from memory); the figures are arithmetic: treated 10 to 2, untreated 10 to 20, so 1 - (2 x 10) / (10 x 20) = 90 %.
  test('corrected by untreated colonies', () => {
    const treated = [pair(30, 300, 6, 300), pair(30, 300, 6, 300)];
    const untreated = [pair(30, 300, 60, 300), pair(30, 300, 60, 300)];
    const found = efficacy(treated, untreated);
    expect(found).toMatchObject({ basis: 'corrected', colonies: 2, controls: 2, before: 10, after: 2, few: true });
    expect(found.fall).toBeCloseTo(0.9, 9);
    expect(efficacy(treated).fall).toBeCloseTo(0.8, 9);
    const alone = pairedRatio(treated)!;
    expect(hendersonTilton(alone, { ...alone, ratio: 1, seLog: 0 }).fall).toBeCloseTo(0.8, 9);
  });
  test('one colony: the exact range; no mite before: nothing can fall; a rise is below nought', () => {
    expect(efficacy([pair(40, 1180, 6, 1200)])).toMatchObject({ basis: 'counts', limits: { lower: expect.closeTo(1 - 0.35011755375, 8), upper: expect.closeTo(1 - 0.05110905352, 8) } });
    expect(efficacy([pair(0, 300, 3, 300)])).toMatchObject({ basis: 'no mite before', fall: null, limits: null });
    expect(efficacy([])).toMatchObject({ basis: 'none', before: null, after: null, fall: null });
    expect(efficacy([pair(3, 300, 6, 300)]).fall).toBeCloseTo(-1, 9);
  });
});
