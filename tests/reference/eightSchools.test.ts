import { expect, test } from 'vitest';
import { pooledEffects } from '#core/stats/pooledEffects.ts';

// The eight schools of Rubin 1981 in Gelman and others, Bayesian Data Analysis, section 5.5: posterior means with a flat
// prior on the spread are about 8 for the mean, and 11, 8, 6, 8, 5, 6, 11, 8.5 for the schools. Figures from memory.
test('the eight schools are pulled in as published', () => {
  const effects = [28, 8, -3, 7, -1, 1, 18, 12];
  const errors = [15, 10, 16, 11, 9, 11, 10, 18];
  const pooled = pooledEffects(effects.map((value, at) => ({ value, variance: (errors[at] as number) ** 2 })), Infinity);
  expect(Math.abs(pooled.mean - 8)).toBeLessThan(0.5);
  const published = [11.3, 7.9, 6.1, 7.7, 5.1, 6.1, 10.7, 8.5];
  pooled.groups.forEach(({ effect }, at) => expect(Math.abs(pooled.mean + effect - (published[at] as number))).toBeLessThan(0.8));
});
