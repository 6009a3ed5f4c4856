import { betaBinomial, type BetaBinomial } from '#core/stats/betaBinomial.ts';
import type { BetaPrior } from '#core/stats/betaPriorByMoments.ts';
import { binomialCdf } from '#core/stats/binomialCdf.ts';
import { compensatedSum } from '#core/stats/compensatedSum.ts';
import { discreteQuantile } from '#core/stats/discreteQuantile.ts';

/** Probabilities are sums of floating-point numbers; without this a tie with the confidence could flip. */
const TOLERANCE = 1e-12;
/** A plan of more splits than this is no plan (take rates next to nothing lead there). */
const MOST_SPLITS = 100_000;

/** Losses of the coming winter as a distribution, for `wintering` colonies going in. */
export interface LossForecast {
  readonly wintering: number;
  readonly prior: BetaPrior;
  readonly losses: BetaBinomial;
}

/** Survivors in spring; `low` and `high` hold them with probability `share`. `mean` need not be whole. */
export interface SurvivorRange {
  readonly share: number;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A number of colonies to buy, and what it leaves open: the probability of fewer than the target in spring,
 * the expected number short and the expected number left over.
 */
export interface Purchase {
  readonly colonies: number;
  readonly probabilityShort: number;
  readonly expectedShort: number;
  readonly expectedLeft: number;
}

export interface CostedPurchase extends Purchase {
  readonly criticalRatio: number;
  readonly expectedCost: number;
}

/** Splits to make; `splits` is null if no number of splits reaches the confidence, `probabilityShort` then is the least possible. */
export interface SplitPlan {
  readonly splits: number | null;
  readonly probabilityShort: number;
}

/**
 * Forecast of winter losses: beta-binomial, the winters' rates being draws from the prior. Past winters are
 * not pooled as one rate, which would make the forecast far too narrow.
 * `wintering`: whole number of colonies, 0 or more, else RangeError.
 */
export function forecastLosses(prior: BetaPrior, wintering: number): LossForecast {
  return { wintering, prior, losses: betaBinomial(wintering, prior.alpha, prior.beta) };
}

/** Smallest number of losses that is not exceeded with probability `u`. */
export function lossQuantile(forecast: LossForecast, u: number): number {
  return discreteQuantile(forecast.losses.cdf, u);
}

/** Survivors in spring with the range that holds them with probability `share` (0.8: from the 90 % to the 10 % quantile of losses). */
export function survivorRange(forecast: LossForecast, share = 0.8): SurvivorRange {
  return {
    share,
    mean: forecast.wintering - forecast.losses.mean,
    low: forecast.wintering - lossQuantile(forecast, (1 + share) / 2),
    high: forecast.wintering - lossQuantile(forecast, (1 - share) / 2),
  };
}

/**
 * The fewest colonies to buy so that at least `target` stand in spring with probability `confidence`:
 * target - wintering + the `confidence` quantile of losses, or 0 if that is negative.
 */
export function coloniesToBuy(forecast: LossForecast, target: number, confidence: number): Purchase {
  checkTarget(target);
  checkConfidence(confidence);
  return purchase(forecast, target, Math.max(0, target - forecast.wintering + lossQuantile(forecast, confidence)));
}

/** What buying a given number of colonies leaves open. */
export function purchase(forecast: LossForecast, target: number, colonies: number): Purchase {
  const needed = target - forecast.wintering - colonies;
  // With l lost, needed + l colonies are short (negative: left over).
  const { pmf } = forecast.losses;
  return {
    colonies,
    // The tail is summed itself: 1 - cdf would lose the digits of a small probability.
    probabilityShort: Math.min(1, total(pmf.filter((_, lost) => needed + lost > 0))),
    expectedShort: total(pmf.map((p, lost) => p * Math.max(0, needed + lost))),
    expectedLeft: total(pmf.map((p, lost) => p * Math.max(0, -needed - lost))),
  };
}

/**
 * Newsvendor rule: the purchase of least expected cost when one colony short costs `underCost` and one too
 * many `overCost` (same money, both positive). Equals `coloniesToBuy` at the confidence
 * underCost / (underCost + overCost).
 */
export function cheapestPurchase(
  forecast: LossForecast,
  target: number,
  underCost: number,
  overCost: number,
): CostedPurchase {
  if (!(underCost > 0 && overCost > 0)) throw new RangeError(`costs are positive, not ${underCost} and ${overCost}`);
  const criticalRatio = underCost / (underCost + overCost);
  const bought = coloniesToBuy(forecast, target, criticalRatio);
  return {
    ...bought,
    criticalRatio,
    expectedCost: underCost * bought.expectedShort + overCost * bought.expectedLeft,
  };
}

/**
 * The fewest splits to make in spring so that the target is reached with probability `confidence`, when each
 * split takes with probability `takeRate` by itself. `splitsPerColony` caps them at what the survivors can give.
 * If no number does it (`takeRate` 0, or the cap), `splits` is null.
 */
export function splitsToMake(
  forecast: LossForecast,
  target: number,
  confidence: number,
  takeRate: number,
  splitsPerColony = Infinity,
): SplitPlan {
  checkTarget(target);
  checkConfidence(confidence);
  if (!(takeRate >= 0 && takeRate <= 1)) throw new RangeError(`a take rate lies between 0 and 1, not at ${takeRate}`);
  if (!(splitsPerColony >= 0)) throw new RangeError(`splits per colony are not negative, not ${splitsPerColony}`);
  const short = (splits: number): number => probabilityShortAfterSplits(forecast, target, splits, takeRate, splitsPerColony);
  const enough = (probability: number): boolean => probability <= 1 - confidence + TOLERANCE;

  const none = short(0);
  if (enough(none)) return { splits: 0, probabilityShort: none };
  // More splits never make a shortfall likelier: double until it is enough, then halve the gap.
  let tooFew = 0;
  let many = 1;
  const most = mostSplitsThatCanHelp(forecast, target, takeRate, splitsPerColony);
  while (!enough(short(many))) {
    if (many >= most) return { splits: null, probabilityShort: short(many) };
    tooFew = many;
    many = Math.min(most, many * 2);
  }
  while (many - tooFew > 1) {
    const mid = (tooFew + many) >>> 1;
    if (enough(short(mid))) many = mid;
    else tooFew = mid;
  }
  return { splits: many, probabilityShort: short(many) };
}

/** Hives to hold ready: the colonies that may well survive (10 % quantile of losses) and the colonies to come. */
export function hivesNeeded(forecast: LossForecast, newColonies: number): number {
  return Math.max(forecast.wintering, forecast.wintering - lossQuantile(forecast, 0.1) + newColonies);
}

function probabilityShortAfterSplits(
  forecast: LossForecast,
  target: number,
  splits: number,
  takeRate: number,
  splitsPerColony: number,
): number {
  const takes = new Map<number, readonly number[]>();
  const takesOf = (made: number): readonly number[] => {
    const known = takes.get(made) ?? binomialCdf(made, takeRate);
    takes.set(made, known);
    return known;
  };
  return total(
    forecast.losses.pmf.map((p, lost) => {
      const survivors = forecast.wintering - lost;
      const needed = target - survivors;
      if (needed <= 0) return 0;
      const made = splitsPerColony === Infinity ? splits : Math.min(splits, Math.floor(survivors * splitsPerColony));
      return needed > made ? p : p * (takesOf(made)[needed - 1] as number);
    }),
  );
}

/** Beyond this number of splits nothing changes any more: all capped, or a shortfall is out of the question. */
function mostSplitsThatCanHelp(forecast: LossForecast, target: number, takeRate: number, splitsPerColony: number): number {
  if (takeRate === 0) return 1;
  const ample = Math.min(MOST_SPLITS, Math.ceil((2 * target + 100) / takeRate));
  const cap = splitsPerColony === Infinity ? ample : Math.ceil(forecast.wintering * splitsPerColony);
  return Math.max(1, Math.min(ample, cap));
}

function total(terms: readonly number[]): number {
  return compensatedSum(terms).at(-1) ?? 0;
}

function checkTarget(target: number): void {
  if (!Number.isSafeInteger(target) || target < 0) {
    throw new RangeError(`a target is a whole number of colonies, 0 or more, not ${target}`);
  }
}

function checkConfidence(confidence: number): void {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`a confidence lies between 0 and 1, not at ${confidence}`);
}
