import { describe, expect, test } from 'vitest';
import { coxModel } from '#core/stats/coxModel.ts';
import { exactStratified } from '#core/stats/exactStratified.ts';
import { fisherExactTwoByTwo } from '#core/stats/fisherExactTwoByTwo.ts';
import { mantelHaenszel } from '#core/stats/mantelHaenszel.ts';
import { powerOfTwoRates } from '#core/stats/noticeableDifference.ts';
import { relativeRisk } from '#core/stats/relativeRisk.ts';
import type { TwoByTwo } from '#core/stats/twoByTwo.ts';

const table = (a: number, b: number, c: number, d: number): TwoByTwo => ({ a, b, c, d });

// Ovarian cancer (Edmonson et al. 1979), as in R's survival package; the fit is printed in its help page of survfit.coxph.
// From memory, and computed with R 4.2.2, survival 3.5-3.
describe('Cox with strata', () => {
  const exit = [59, 115, 156, 421, 431, 448, 464, 475, 477, 563, 638, 744, 769, 770, 803, 855, 1040, 1106, 1129, 1206, 1227, 268, 329, 353, 365, 377];
  const status = [1, 1, 1, 0, 1, 0, 1, 1, 0, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 0];
  const age = [
    72.3315, 74.4932, 66.4658, 53.3644, 50.3397, 56.4301, 56.937, 59.8548, 64.1753, 55.1781, 56.7562, 50.1096, 59.6301, 57.0521, 39.2712, 43.1233, 38.8932, 44.6,
    53.9068, 44.2055, 59.589, 74.5041, 43.137, 63.2192, 64.4247, 58.3096,
  ];
  const rx = [1, 1, 1, 2, 1, 1, 2, 2, 1, 2, 1, 2, 2, 2, 1, 1, 1, 1, 2, 2, 2, 1, 1, 2, 2, 2];

  test('ovarian cancer, age stratified by treatment: 0.13735, error 0.04741, ratio 1.1472', () => {
    const model = coxModel({ entry: exit.map(() => 0), exit, status }, [{ name: 'age', values: age }], rx);
    expect(model?.terms[0]?.coefficient).toBeCloseTo(0.13735171927, 9);
    expect(model?.terms[0]?.se).toBeCloseTo(0.04740702942, 9);
    expect(model?.terms[0]?.hazardRatio).toBeCloseTo(1.14723158102, 8);
    expect(model?.likelihoodRatio).toBeCloseTo(12.69, 2);
  });

  test('a covariate that does not differ within any stratum is left out and said to be constant', () => {
    const model = coxModel({ entry: exit.map(() => 0), exit, status }, [{ name: 'age', values: age }, { name: 'rx', values: rx }], rx);
    expect(model?.dropped).toEqual([{ name: 'rx', why: 'constant', sameAs: null }]);
  });
});

// Rabbits and delayed penicillin (Mantel 1963, JASA 58), the example of R's mantelhaen.test. From memory; agrees with R.
describe('strata of 2x2 tables', () => {
  const rabbits = [table(0, 6, 0, 5), table(3, 3, 0, 6), table(6, 0, 2, 4), table(5, 1, 6, 0), table(2, 0, 5, 0)];

  test('penicillin: exact p 0.03994, chi-square without correction 5.6571, p 0.01738', () => {
    expect(exactStratified(rabbits)).toBeCloseTo(0.0399449035812672, 12);
    const pooled = mantelHaenszel(rabbits);
    expect(pooled.chiSquare?.toFixed(4)).toBe('5.6571');
    expect(pooled.p?.toFixed(5)).toBe('0.01738');
  });

  test('Berkeley admissions 1973: exact p 0.22776, chi-square 1.5246 (Bickel et al. 1975, from memory; R agrees)', () => {
    const departments = [table(512, 313, 89, 19), table(353, 207, 17, 8), table(120, 205, 202, 391), table(138, 279, 131, 244), table(53, 138, 94, 299), table(22, 351, 24, 317)];
    expect(exactStratified(departments)).toBeCloseTo(0.227762526798206, 10);
    expect(mantelHaenszel(departments).chiSquare).toBeCloseTo(1.52460666044344, 10);
  });

  // University Group Diabetes Program, deaths under tolbutamide and placebo by age (Rothman, Modern Epidemiology). From memory.
  test('tolbutamide: relative risk 1.33, risk difference 0.035 over the two ages', () => {
    const ages = [table(8, 98, 5, 115), table(22, 76, 16, 69)];
    const pooled = mantelHaenszel(ages);
    expect(pooled.relativeRisk?.toFixed(2)).toBe('1.33');
    expect(pooled.riskDifference?.toFixed(3)).toBe('0.035');
  });

  test('one stratum: Fisher’s p, and the plain relative risk with Katz’s interval', () => {
    const tea = table(3, 1, 1, 3);
    expect(exactStratified([tea])?.toFixed(4)).toBe('0.4857');
    for (const one of [tea, table(7, 20, 3, 31), table(12, 3, 40, 80)]) {
      expect(exactStratified([one])).toBeCloseTo(fisherExactTwoByTwo(one).p, 12);
      const pooled = mantelHaenszel([one]);
      const katz = relativeRisk(one);
      expect(pooled.relativeRisk).toBeCloseTo(katz.value, 12);
      expect(pooled.limits?.lower).toBeCloseTo(katz.limits.lower, 12);
      expect(pooled.limits?.upper).toBeCloseTo(katz.limits.upper, 12);
    }
  });

  test('strata in which a group is empty compare nothing', () => {
    const pooled = mantelHaenszel([...rabbits, table(0, 0, 3, 4), table(2, 9, 0, 0)]);
    expect(pooled).toEqual(mantelHaenszel(rabbits));
    expect(mantelHaenszel([table(0, 0, 3, 4)])).toMatchObject({ strata: 0, relativeRisk: null, limits: null, riskDifference: null, p: null });
    expect(mantelHaenszel([table(0, 5, 0, 4)])).toMatchObject({ relativeRisk: null, limits: null, p: null });
  });
});

// The examples of R's power.prop.test: 50 a group, 0.50 against 0.75, power 0.740; power 0.90 at 76.7 a group.
test('power of two rates', () => {
  expect(powerOfTwoRates(50, 0.5, 0.75)).toBeCloseTo(0.740165901331, 9);
  expect(powerOfTwoRates(76.7069301141, 0.5, 0.75)).toBeCloseTo(0.9, 7);
});
