/** An estimate with its variance (positive). */
export interface Estimate {
  readonly value: number;
  readonly variance: number;
}

/** A group's effect about the common mean: `shrinkage` is the mean share by which it is pulled in; `sd` carries the doubt about the spread. */
export interface PooledEffect {
  readonly effect: number;
  readonly sd: number;
  readonly shrinkage: number;
}

export interface PooledEffects {
  /** Posterior means of the common mean, and of the square of the spread between groups. */
  readonly mean: number;
  readonly spread2: number;
  readonly groups: readonly PooledEffect[];
}

const STEPS = 240;

/**
 * Normal effects that differ between groups by an unknown spread tau, averaged over tau instead of fixing it: with
 * few groups a moment estimate of tau is often 0, which calls all groups alike, and its error is forgotten.
 *
 * Method: common mean integrated out, tau on a grid (Gelman and others, Bayesian Data Analysis, section 5.4, from
 * memory), prior half-normal with the given scale (Infinity: flat). Needs at least one estimate; broken variances: RangeError.
 */
export function pooledEffects(estimates: readonly Estimate[], scale: number): PooledEffects {
  for (const { variance } of estimates) if (!(variance > 0)) throw new RangeError(`a variance is positive, not ${variance}`);
  if (estimates.length === 0) return { mean: 0, spread2: Number.isFinite(scale) ? scale ** 2 : 0, groups: [] };
  const values = estimates.map(({ value }) => value);
  const range = Math.max(...values) - Math.min(...values);
  const widest = Math.sqrt(Math.max(...estimates.map(({ variance }) => variance)));
  const most = Math.min(4 * scale, 6 * (range + widest));
  const grid = Array.from({ length: STEPS }, (_, at) => {
    // Finer near 0, where shrinkage changes fastest.
    const tau = most * ((at + 0.5) / STEPS) ** 2;
    const weights = estimates.map(({ variance }) => 1 / (variance + tau ** 2));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = values.reduce((sum, value, g) => sum + value * (weights[g] as number), 0) / total;
    const fit = values.reduce((sum, value, g) => sum + Math.log(weights[g] as number) - (weights[g] as number) * (value - mean) ** 2, 0);
    const log = (fit - Math.log(total)) / 2 - (Number.isFinite(scale) ? (tau / scale) ** 2 / 2 : 0) + Math.log((at + 0.5) / STEPS);
    return { tau, mean, variance: 1 / total, log };
  });
  const best = Math.max(...grid.map(({ log }) => log));
  const masses = grid.map(({ log }) => Math.exp(log - best));
  const mass = masses.reduce((sum, one) => sum + one, 0);
  const average = (of: (step: (typeof grid)[number]) => number) => grid.reduce((sum, step, at) => sum + (masses[at] as number) * of(step), 0) / mass;
  return {
    mean: average(({ mean }) => mean),
    spread2: average(({ tau }) => tau ** 2),
    groups: estimates.map(({ value, variance }) => {
      const pull = (tau: number) => variance / (variance + tau ** 2);
      const effect = average(({ tau, mean }) => (1 - pull(tau)) * (value - mean));
      const spread = average(({ tau, mean, variance: ofMean }) => {
        const kept = 1 - pull(tau);
        return kept * variance + kept ** 2 * ofMean + (kept * (value - mean) - effect) ** 2;
      });
      return { effect, sd: Math.sqrt(spread), shrinkage: average(({ tau }) => pull(tau)) };
    }),
  };
}
