import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import { discreteQuantile } from '#core/stats/discreteQuantile.ts';

/** A forecast of the number lost: what is needed of it to see whether it held. */
export interface LossDistribution {
  readonly n: number;
  readonly pmf: readonly number[];
  readonly cdf: readonly number[];
}

/** How one winter came out against a forecast made before it. */
export interface Outcome {
  readonly low: number;
  readonly high: number;
  readonly survivors: number;
  /** Inside low to high, both included, as the range is shown. */
  readonly inside: boolean;
  /**
   * Chance of lying in the middle 80 % when the outcome's own step of the distribution is drawn from at random.
   * Counts come in steps, so a closed range holds more than 80 %; the mean of this share is 0.8 exactly when the
   * forecast is right (randomised probability integral transform: Czado, Gneiting and Held 2009, Biometrics 65:1254,
   * from memory).
   */
  readonly share: number;
}

/** Throws RangeError when the winter had another number of colonies than the forecast. */
export function outcomeOf(forecast: LossDistribution, winter: AtRiskAndLost, range = 0.8): Outcome {
  if (winter.atRisk !== forecast.n) throw new RangeError(`a forecast for ${forecast.n} colonies says nothing of ${winter.atRisk}`);
  const [tail, head] = [(1 - range) / 2, (1 + range) / 2];
  const low = forecast.n - discreteQuantile(forecast.cdf, head);
  const high = forecast.n - discreteQuantile(forecast.cdf, tail);
  const survivors = winter.atRisk - winter.lost;
  const above = forecast.cdf[winter.lost] as number;
  const below = winter.lost === 0 ? 0 : (forecast.cdf[winter.lost - 1] as number);
  const width = above - below;
  const within = Math.max(0, Math.min(above, head) - Math.max(below, tail));
  return { low, high, survivors, inside: survivors >= low && survivors <= high, share: width > 0 ? within / width : Number(above > tail && above < head) };
}
