import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { YardId } from '#shared/brands.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { backtest, mixtureForecaster } from '#core/order/backtest.ts';
import { betaDraw } from '#core/order/chance.ts';
import { outcomeOf } from '#core/order/coverage.ts';
import { forecastLosses, purchase, splitsToMake } from '#core/order/forecastLosses.ts';
import { drawScenarios, samplingError, type WinteringYard } from '#core/order/scenarios.ts';
import { fewestBought, splitColumn } from '#core/order/springTable.ts';
import { shiftComponents } from '#core/order/survivalForecast.ts';
import { yardEffects } from '#core/order/yardEffects.ts';
import { betaBinomial } from '#core/stats/betaBinomial.ts';
import { betaBinomialMixture, betaComponents } from '#core/stats/betaBinomialMixture.ts';
import { betaPriorByMoments } from '#core/stats/betaPriorByMoments.ts';

const id = (yard: number) => yard as YardId;
const yard = (of: number, living: number, more: Partial<WinteringYard> = {}): WinteringYard => ({ yard: id(of), living, effect: 0, sd: 0, rate: null, ...more });
const winters = [{ lost: 5, atRisk: 40 }, { lost: 11, atRisk: 44 }, { lost: 3, atRisk: 38 }, { lost: 9, atRisk: 46 }, { lost: 14, atRisk: 50 }];
const expected = { rate: 0.288, weight: 8 };
const sum = (values: Iterable<number>) => [...values].reduce((total, one) => total + one, 0);

describe('the forecast that keeps its doubt', () => {
  test('one component is its own beta-binomial; shares and chances add up to 1', () => {
    expect(betaBinomialMixture(12, [{ alpha: 2, beta: 7, weight: 1 }]).pmf).toEqual(betaBinomial(12, 2, 7).pmf);
    const components = betaComponents(winters, expected);
    expect(sum(components.map(({ weight }) => weight))).toBeCloseTo(1, 12);
    expect(sum(betaBinomialMixture(48, components).pmf)).toBeCloseTo(1, 10);
  });

  test('without a winter it expects the published rate; with winters it is wider than one fitted beta and centred near it', () => {
    const none = betaBinomialMixture(50, betaComponents([], expected));
    expect(none.mean / 50).toBeCloseTo(0.288, 2);
    const prior = betaPriorByMoments(winters);
    if (prior === null) throw new Error('a prior was expected');
    const [fitted, mixed] = [betaBinomial(48, prior.alpha, prior.beta), betaBinomialMixture(48, betaComponents(winters, expected))];
    const variance = sum(mixed.pmf.map((p, lost) => p * (lost - mixed.mean) ** 2));
    expect(variance).toBeGreaterThan(fitted.variance);
    expect(Math.abs(mixed.mean - fitted.mean)).toBeLessThan(2);
  });

  test('a rate of the person’s own becomes the mean', () => {
    const moved = shiftComponents(betaComponents(winters, expected), 0.4);
    expect(betaBinomialMixture(40, moved).mean).toBeCloseTo(16, 6);
  });

  test('on winters whose truth is known the 80 % range holds between 75 and 85 %', () => {
    // Mean rates evenly from 12 to 45 %, winters differing little to much, as in the bench: not the family the forecast expects.
    // Where winters differ little, a few of them cannot show it, and the range holds more.
    const chance = new SeededRandom(7);
    // The second and the fifth winter of each are forecast from those before; the first, from none, is held wider on purpose.
    const shares = Array.from({ length: 200 }, () => {
      const [mean, concentration] = [chance.between(0.12, 0.45), Math.exp(chance.between(Math.log(6), Math.log(60)))];
      const past = Array.from({ length: 5 }, () => {
        const atRisk = chance.whole(20, 60);
        return { atRisk, lost: chance.binomial(atRisk, betaDraw(mean * concentration, (1 - mean) * concentration, chance)) };
      });
      const shareOf = (at: number) => {
        const winter = past[at] ?? { lost: 0, atRisk: 0 };
        return outcomeOf(mixtureForecaster(expected)(past.slice(0, at), winter.atRisk), winter).share;
      };
      return (shareOf(1) + shareOf(4)) / 2;
    });
    const coverage = sum(shares) / shares.length;
    expect(coverage).toBeGreaterThan(0.75);
    expect(coverage).toBeLessThan(0.85);
  });

  test('the share inside is 0.8 on average when the forecast is the truth itself, whatever the steps', () => {
    for (const [n, alpha, beta] of [[1, 1, 1], [4, 2, 5], [30, 3, 9]] as const) {
      const truth = betaBinomial(n, alpha, beta);
      expect(sum(truth.pmf.map((p, lost) => p * outcomeOf(truth, { lost, atRisk: n }).share))).toBeCloseTo(0.8, 10);
    }
  });

  test('the regret against hindsight is never negative, and none when the right number was bought', () => {
    const tried = backtest(winters, mixtureForecaster(expected), 0.8, { price: 10, missing: 25, surplus: 5 });
    expect(tried.map(({ earlier }) => earlier)).toEqual([0, 1, 2, 3, 4]);
    for (const { regret, bought, hindsight } of tried) expect(regret).toBeGreaterThanOrEqual(bought === hindsight ? 0 : 1e-9);
  });
});

describe('drawn springs', () => {
  test('every number of survivors comes within one draw of its exact share, and the yards add up', () => {
    const count = 1024;
    const components = betaComponents(winters, expected);
    const drawn = drawScenarios([yard(1, 20, { effect: 0.4, sd: 0.2 }), yard(2, 15), yard(3, 0)], components, count, new SeededRandom(1));
    const { exact } = drawn;
    if (exact === null) throw new Error('nothing was adjusted');
    let [below, exactBelow] = [0, 0];
    drawn.shares.forEach((share, alive) => {
      below += share;
      exactBelow += exact[alive] as number;
      expect(Math.abs(below - exactBelow)).toBeLessThanOrEqual(1 / count + 1e-9);
    });
    for (let at = 0; at < count; at += 1) expect(sum(drawn.byYard.map((alive) => alive[at] as number))).toBe(drawn.survivors[at]);
    const lostIn = (y: number) => 1 - sum(drawn.byYard[y] ?? []) / count / ([20, 15][y] as number);
    expect(lostIn(0)).toBeGreaterThan(lostIn(1) + 0.03);
  });

  test('the same seed draws the same springs', () => {
    const draw = (seed: number) => drawScenarios([yard(1, 10, { sd: 0.3 }), yard(2, 10, { rate: 0.5 })], betaComponents(winters, expected), 128, new SeededRandom(seed)).byYard;
    expect(draw(3)).toEqual(draw(3));
    expect(draw(3)).not.toEqual(draw(4));
  });

  test('a yard with a rate of the person’s own loses about that, in the same winters as the others', () => {
    const drawn = drawScenarios([yard(1, 30), yard(2, 30, { rate: 0.6 })], betaComponents(winters, expected), 4096, new SeededRandom(5));
    expect(drawn.exact).toBeNull();
    expect(1 - sum(drawn.byYard[1] ?? []) / 4096 / 30).toBeCloseTo(0.6, 1);
    const [one, other] = [Array.from(drawn.byYard[0] ?? []), Array.from(drawn.byYard[1] ?? [])];
    const [m1, m2] = [sum(one) / 4096, sum(other) / 4096];
    expect(sum(one.map((alive, at) => (alive - m1) * ((other[at] as number) - m2)))).toBeGreaterThan(0);
  });

  test('the error of a share over even steps counts only neighbours that differ', () => {
    expect(samplingError([0, 0, 0, 0, 1, 1, 1, 1])).toBe(0);
    expect(samplingError([0, 0, 0, 1, 1, 1, 1, 1])).toBeCloseTo(1 / 8, 12);
  });
});

describe('tables of what is left open', () => {
  test('without splits they are the purchases, and with splits the splits, of the worked method', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 12 }), fc.double({ min: 0.5, max: 9, noNaN: true }), fc.double({ min: 0.5, max: 20, noNaN: true }), fc.double({ min: 0.1, max: 1, noNaN: true }), fc.integer({ min: 0, max: 2 }), (wintering, target, alpha, beta, take, cap) => {
      const forecast = forecastLosses({ seasons: 1, p: alpha / (alpha + beta), rule: 'moments', S: null, rhoRaw: null, rho: 0.1, M: alpha + beta, alpha, beta }, wintering);
      const shares = forecast.losses.pmf.toReversed();
      const terms = { take, most: (survivors: number) => survivors * cap };
      const none = splitColumn(shares, target, 0, target + 2, terms);
      for (let bought = 0; bought <= target + 2; bought += 1) {
        const exact = purchase(forecast, target, bought);
        expect(none.probabilityShort[bought]).toBeCloseTo(exact.probabilityShort, 10);
        expect(none.expectedShort[bought]).toBeCloseTo(exact.expectedShort, 10);
        expect(none.expectedLeft[bought]).toBeCloseTo(exact.expectedLeft, 10);
      }
      const plan = splitsToMake(forecast, target, 0.9, take, cap);
      if (plan.splits !== null) {
        expect(splitColumn(shares, target, plan.splits, 0, terms).probabilityShort[0]).toBeCloseTo(plan.probabilityShort, 10);
        expect(fewestBought(splitColumn(shares, target, plan.splits, target, terms), 0.9)).toBe(0);
        if (plan.splits > 0) expect(fewestBought(splitColumn(shares, target, plan.splits - 1, target, terms), 0.9)).not.toBe(0);
      }
    }), { numRuns: 60 });
  });
});

describe('yards over seasons', () => {
  const record = (rows: readonly (readonly [number, number, number, number])[]) => rows.map(([of, season, lost, atRisk]) => ({ yard: id(of), season, lost, atRisk }));

  test('a yard that stood only in a hard winter is not a bad yard', () => {
    const effects = yardEffects([id(1), id(2), id(3)], record([[1, 2023, 2, 20], [2, 2023, 2, 20], [1, 2024, 10, 20], [2, 2024, 10, 20], [3, 2024, 10, 20]]));
    for (const { effect } of effects) expect(Math.abs(effect)).toBeLessThan(0.05);
  });

  test('a yard that always loses more is told apart, less so the fewer colonies it had, and a new yard stands in the middle', () => {
    const bad = (atRisk: number) => yardEffects([id(1), id(2), id(3), id(4), id(5)], record([2021, 2022, 2023, 2024].flatMap((season) => [[1, season, 4, 24], [2, season, 3, 22], [3, season, 4, 20], [4, season, Math.round(atRisk * 0.6), atRisk]] as const)));
    const [large, small] = [bad(20)[3], bad(3)[3]];
    expect(large?.effect).toBeGreaterThan(0.4);
    expect(small?.shrinkage).toBeGreaterThan(large?.shrinkage ?? 1);
    expect(bad(20)[4]).toMatchObject({ winters: 0, effect: 0, shrinkage: 1 });
  });

  test('no winter, no loss at all and everything lost give no NaN', () => {
    for (const rows of [[], [[1, 2024, 0, 5], [2, 2024, 0, 5], [3, 2024, 0, 4]], [[1, 2024, 5, 5], [2, 2024, 5, 5], [3, 2024, 4, 4]], [[1, 2024, 0, 0]]] as const) {
      for (const one of yardEffects([id(1), id(2), id(3)], record(rows as never))) for (const value of [one.effect, one.sd, one.shrinkage]) expect(Number.isFinite(value)).toBe(true);
    }
  });
});
