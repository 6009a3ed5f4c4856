import type { YardId } from '#shared/brands.ts';
import type { LossMixture } from '#core/stats/betaBinomialMixture.ts';
import { betaBinomialMixture, type BetaComponent } from '#core/stats/betaBinomialMixture.ts';
import { logBeta } from '#core/stats/logBeta.ts';
import { betaDraw, type Chance } from './chance.ts';

/** A yard going into the rest of the winter. `rate` is the person's own expectation of its loss, null to leave it to the record. */
export interface WinteringYard {
  readonly yard: YardId;
  readonly living: number;
  /** Logarithm of how much likelier a colony here is lost than elsewhere, and how sure that is. */
  readonly effect: number;
  readonly sd: number;
  readonly rate: number | null;
}

export interface Scenarios {
  readonly count: number;
  readonly living: number;
  /** Survivors of all yards in each scenario. */
  readonly survivors: Int32Array;
  /** Survivors of each yard in each scenario, in the order of the yards given. */
  readonly byYard: readonly Int32Array[];
  /** Share of the scenarios with k survivors, k = 0..living. */
  readonly shares: readonly number[];
  /** The exact distribution of survivors by number, where nothing was adjusted yard by yard. */
  readonly exact: readonly number[] | null;
}

/**
 * Springs drawn from the forecast. The yards share the winter: the number lost of all is drawn from the mixture by
 * even steps of its distribution function (systematic sampling: every share is within 1/count of the exact one), then
 * given to yards one by one with the odds of their effects, which are drawn anew each winter (a noncentral
 * hypergeometric of Wallenius's kind). A yard with a rate of its own is drawn apart: its odds follow the winter's
 * rate, which given the others' losses is again a beta of the mixture.
 */
export function drawScenarios(yards: readonly WinteringYard[], components: readonly BetaComponent[], count: number, chance: Chance): Scenarios {
  const living = yards.reduce((sum, yard) => sum + yard.living, 0);
  const together = yards.filter(({ rate }) => rate === null).reduce((sum, yard) => sum + yard.living, 0);
  const adjusted = yards.some(({ rate }) => rate !== null);
  const mixture = betaBinomialMixture(together, components);
  const mean = components.reduce((sum, { alpha, beta, weight }) => sum + (weight * alpha) / (alpha + beta), 0);
  const survivors = new Int32Array(count);
  const byYard = yards.map(() => new Int32Array(count));
  const start = chance.next();
  let lost = 0;
  for (let at = 0; at < count; at += 1) {
    while (lost < together && (mixture.cdf[lost] as number) < (at + start) / count) lost += 1;
    const left = allot(yards, lost, chance);
    if (adjusted) {
      const rate = winterRate(mixture, components, lost, chance);
      yards.forEach((yard, y) => { if (yard.rate !== null) left[y] = surviving(yard.living, shifted(rate, mean, yard.rate), chance); });
    }
    left.forEach((alive, y) => { (byYard[y] as Int32Array)[at] = alive; });
    survivors[at] = left.reduce((sum, alive) => sum + alive, 0);
  }
  const shares = Array.from({ length: living + 1 }, () => 0);
  for (const alive of survivors) shares[alive] = (shares[alive] as number) + 1 / count;
  return { count, living, survivors, byYard, shares, exact: adjusted ? null : mixture.pmf.toReversed() };
}

/** Survivors by yard when so many are lost of the yards that share one draw. */
function allot(yards: readonly WinteringYard[], lost: number, chance: Chance): number[] {
  const left = yards.map(({ living }) => living);
  const odds = yards.map(({ rate, effect, sd }) => (rate === null ? Math.exp(sd > 0 ? chance.normal(effect, sd) : effect) : 0));
  let sum = left.reduce((total, alive, y) => total + alive * (odds[y] as number), 0);
  for (let gone = 0; gone < lost; gone += 1) {
    let pick = chance.next() * sum;
    let y = left.findIndex((alive, at) => {
      pick -= alive * (odds[at] as number);
      return alive > 0 && pick < 0;
    });
    // Rounding may leave a crumb at the end; the last yard that still has a colony takes it.
    if (y < 0) y = left.findLastIndex((alive, at) => alive > 0 && (odds[at] as number) > 0);
    left[y] = (left[y] as number) - 1;
    sum -= odds[y] as number;
  }
  return left;
}

/** The winter's rate given how many the others lost. */
function winterRate(mixture: LossMixture, components: readonly BetaComponent[], lost: number, chance: Chance): number {
  const fits = components.map(({ alpha, beta, weight }) => weight * Math.exp(logBeta(alpha + lost, beta + mixture.n - lost) - logBeta(alpha, beta)));
  let pick = chance.next() * fits.reduce((sum, fit) => sum + fit, 0);
  const at = fits.findIndex((fit) => (pick -= fit) < 0);
  const { alpha, beta } = components[at < 0 ? components.length - 1 : at] as BetaComponent;
  return betaDraw(alpha + lost, beta + mixture.n - lost, chance);
}

/** The winter's rate moved on the scale of log-odds so that a middling winter has the expected rate. */
function shifted(rate: number, mean: number, expected: number): number {
  const held = Math.min(1 - 1e-9, Math.max(1e-9, rate));
  const logOdds = Math.log(held / (1 - held)) - Math.log(mean / (1 - mean)) + Math.log(expected / (1 - expected));
  return 1 / (1 + Math.exp(-logOdds));
}

function surviving(living: number, lossRate: number, chance: Chance): number {
  let alive = 0;
  for (let colony = 0; colony < living; colony += 1) if (chance.next() >= lossRate) alive += 1;
  return alive;
}

/** Standard error of a share or mean over scenarios that were drawn in even steps: neighbours are compared in pairs. */
export function samplingError(values: ArrayLike<number>): number {
  let sum = 0;
  const pairs = Math.floor(values.length / 2);
  for (let pair = 0; pair < pairs; pair += 1) sum += ((values[2 * pair] as number) - (values[2 * pair + 1] as number)) ** 2;
  return pairs === 0 ? 0 : Math.sqrt(sum) / (2 * pairs);
}
