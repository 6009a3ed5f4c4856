import type { AtRiskAndLost } from './atRiskAndLost.ts';
import { betaBinomial } from './betaBinomial.ts';
import { checkCounts } from './checkCounts.ts';
import { compensatedSum } from './compensatedSum.ts';
import { incompleteBeta } from './incompleteBeta.ts';
import { logBeta } from './logBeta.ts';

/** One beta distribution of the winters' loss rates, and how well it fits what was seen. */
export interface BetaComponent {
  readonly alpha: number;
  readonly beta: number;
  readonly weight: number;
}

/** What is expected of the mean rate before any winter is seen: `rate` in (0, 1), worth `weight` colonies. */
export interface ExpectedRate {
  readonly rate: number;
  readonly weight: number;
}

/** Mean rates at even steps of the expectation's own distribution, so that no step lies where nothing is expected. */
const RATE_STEPS = 40;
/** alpha + beta, from winters that hardly resemble one another (2) to winters that differ little (256). */
const CONCENTRATIONS: readonly number[] = Array.from({ length: 15 }, (_, at) => 2 * 2 ** (at / 2));

/**
 * Posterior of a beta distribution of winter loss rates given past winters, on a grid: the beta-binomial
 * likelihood of each winter, times the expectation of the mean rate (a beta with the given rate and weight),
 * flat in the logarithm of the concentration alpha + beta between 2 and 256 (a choice of this program).
 *
 * Plugging in one fitted beta forgets that a few winters tell its mean and spread poorly, and forecasts come out
 * too narrow; the mixture carries that doubt. Method: Bayes on a grid (Gelman and others, Bayesian Data Analysis,
 * section 5.3, rat tumours: the same model; from memory). Components below a millionth of the best are left out.
 * O(600 winters). Broken counts, a rate outside (0, 1) or a weight that is not positive: RangeError.
 */
export function betaComponents(winters: readonly AtRiskAndLost[], expected: ExpectedRate): BetaComponent[] {
  const { rate, weight } = expected;
  if (!(rate > 0 && rate < 1)) throw new RangeError(`an expected loss rate lies between 0 and 1, not at ${rate}`);
  if (!(weight > 0)) throw new RangeError(`a weight is positive, not ${weight}`);
  for (const winter of winters) checkCounts(winter.lost, winter.atRisk);
  const used = winters.filter((winter) => winter.atRisk > 0);
  const edges = Array.from({ length: 400 }, (_, at) => (at + 0.5) / 400);
  const steps = midpoints(edges, edges.map((edge) => incompleteBeta(edge, rate * weight, (1 - rate) * weight)));
  const fitted = steps.flatMap((p) => CONCENTRATIONS.map((concentration) => {
    const [alpha, beta] = [p * concentration, (1 - p) * concentration];
    const own = logBeta(alpha, beta);
    return { alpha, beta, log: used.reduce((sum, { lost, atRisk }) => sum + logBeta(alpha + lost, beta + atRisk - lost) - own, 0) };
  }));
  const best = fitted.reduce((top, { log }) => Math.max(top, log), -Infinity);
  const kept = fitted.map(({ alpha, beta, log }) => ({ alpha, beta, weight: Math.exp(log - best) })).filter(({ weight }) => weight > 1e-6);
  const total = compensatedSum(kept.map(({ weight }) => weight)).at(-1) ?? 1;
  return kept.map(({ alpha, beta, weight }) => ({ alpha, beta, weight: weight / total }));
}

/** The middle quantiles of equal shares of a distribution given by its cdf on a rising grid, by straight lines between. */
function midpoints(grid: readonly number[], cdf: readonly number[]): number[] {
  const found: number[] = [];
  let at = 0;
  for (let step = 0; step < RATE_STEPS; step += 1) {
    const u = (step + 0.5) / RATE_STEPS;
    while (at < grid.length - 1 && (cdf[at] as number) < u) at += 1;
    const [lowX, highX, lowP, highP] = at === 0 ? [0, grid[0] as number, 0, cdf[0] as number] : [grid[at - 1] as number, grid[at] as number, cdf[at - 1] as number, cdf[at] as number];
    found.push(Math.min(0.999, Math.max(0.001, highP > lowP ? lowX + ((highX - lowX) * (u - lowP)) / (highP - lowP) : highX)));
  }
  return found;
}

/** Distribution of the number lost of `n` under the mixture: element k of `pmf` and `cdf` is for k lost, k = 0..n. */
export interface LossMixture {
  readonly n: number;
  readonly pmf: readonly number[];
  readonly cdf: readonly number[];
  readonly mean: number;
  readonly components: readonly BetaComponent[];
}

/** Beta-binomial for each component, weighed. Components must not be empty. O(n x components). */
export function betaBinomialMixture(n: number, components: readonly BetaComponent[]): LossMixture {
  if (components.length === 0) throw new RangeError('a mixture has at least one component');
  const pmf = Array.from({ length: n + 1 }, () => 0);
  for (const { alpha, beta, weight } of components) betaBinomial(n, alpha, beta).pmf.forEach((p, lost) => { pmf[lost] = (pmf[lost] as number) + weight * p; });
  const cdf = compensatedSum(pmf).map((p) => Math.min(1, p));
  return { n, pmf, cdf, mean: pmf.reduce((sum, p, lost) => sum + p * lost, 0), components };
}
