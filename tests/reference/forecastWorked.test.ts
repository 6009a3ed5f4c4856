import { expect, test } from 'vitest';
import { cheapestPurchase, coloniesToBuy, forecastLosses, lossQuantile, purchase, splitsToMake } from '#core/order/forecastLosses.ts';
import { betaBinomial } from '#core/stats/betaBinomial.ts';
import { betaPriorByMoments } from '#core/stats/betaPriorByMoments.ts';

// Worked example computed with R 4.2.2 from the formulas (beta prior by moments in the intraclass form of
// Kleinman 1973, JASA 68:46-54, from memory; beta-binomial forecast; newsvendor rule).
const winters = [
  { lost: 5, atRisk: 40 },
  { lost: 11, atRisk: 44 },
  { lost: 3, atRisk: 38 },
  { lost: 9, atRisk: 46 },
  { lost: 14, atRisk: 50 },
];

test('five winters, 48 colonies going in, 45 wanted in spring', () => {
  const prior = betaPriorByMoments(winters);
  if (prior === null) throw new Error('a prior was expected');
  expect([prior.p.toFixed(7), prior.rho.toFixed(7), prior.alpha.toFixed(5), prior.beta.toFixed(5)]).toEqual([
    '0.1926606',
    '0.0218916',
    '8.60802',
    '36.07170',
  ]);
  const next = forecastLosses(prior, 48);
  expect([next.losses.mean.toFixed(4), next.losses.variance.toFixed(4)]).toEqual(['9.2477', '15.1479']);
  expect(lossQuantile(next, 0.9)).toBe(14);
  const buy = coloniesToBuy(next, 45, 0.9);
  expect([buy.colonies, buy.probabilityShort.toFixed(4)]).toEqual([11, '0.0977']);
  expect(cheapestPurchase(next, 45, 3, 1).colonies).toBe(9);
  expect(splitsToMake(next, 45, 0.9, 0.8).splits).toBe(15);
  // By hand: one colony fewer leaves more than one chance in ten.
  expect(purchase(next, 45, 10).probabilityShort).toBeGreaterThan(0.1);
});

test('alpha = beta = 1 is uniform: 1 / (n + 1)', () => {
  for (const p of betaBinomial(5, 1, 1).pmf) expect(p).toBeCloseTo(1 / 6, 15);
});
