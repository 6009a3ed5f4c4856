import { expect, test } from 'vitest';
import { betaComponents } from '#core/stats/betaBinomialMixture.ts';

// Tarone 1982 (Biometrics 38:215-220), tumours in 71 control groups of rats, analysed in Gelman and others, Bayesian Data
// Analysis, section 5.3: posterior means of about 2.4 and 14.3 for the two shapes. Data and figures from memory.
const groups: readonly (readonly [lost: number, atRisk: number, times: number])[] = [
  [0, 20, 7], [0, 19, 4], [0, 18, 2], [0, 17, 1], [1, 20, 4], [1, 19, 2], [1, 18, 2], [2, 25, 1], [2, 24, 1], [2, 23, 1], [2, 20, 6], [1, 10, 1], [5, 49, 1], [2, 19, 1],
  [5, 46, 1], [3, 27, 1], [2, 17, 1], [7, 49, 1], [7, 47, 1], [3, 20, 2], [2, 13, 1], [9, 48, 1], [10, 50, 1], [4, 20, 7], [10, 48, 1], [4, 19, 3], [5, 22, 1], [11, 46, 1],
  [12, 49, 1], [5, 20, 2], [6, 23, 1], [5, 19, 1], [6, 22, 1], [6, 20, 3], [16, 52, 1], [15, 47, 1], [15, 46, 1], [9, 24, 1], [4, 14, 1],
];

test('the mixture finds the shapes of the rat tumour example, whose prior is flatter than ours', () => {
  const seen = groups.flatMap(([lost, atRisk, times]) => Array.from({ length: times }, () => ({ lost, atRisk })));
  expect(seen).toHaveLength(71);
  const components = betaComponents(seen, { rate: 0.2, weight: 2 });
  const mean = (of: 'alpha' | 'beta') => components.reduce((sum, one) => sum + one.weight * one[of], 0);
  expect(mean('alpha')).toBeGreaterThan(2.0);
  expect(mean('alpha')).toBeLessThan(2.8);
  expect(mean('beta')).toBeGreaterThan(12);
  expect(mean('beta')).toBeLessThan(16.6);
});
