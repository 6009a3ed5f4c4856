import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import { betaBinomialMixture, betaComponents, type ExpectedRate } from '#core/stats/betaBinomialMixture.ts';
import { betaBinomial } from '#core/stats/betaBinomial.ts';
import { betaPriorByMoments, betaPriorFromExpectedRate } from '#core/stats/betaPriorByMoments.ts';
import { discreteQuantile } from '#core/stats/discreteQuantile.ts';
import { outcomeOf, type LossDistribution, type Outcome } from './coverage.ts';

/** A winter forecast from earlier ones only, and what the order made from it would have cost more than the best in hindsight. */
export interface BacktestedWinter extends Outcome {
  readonly earlier: number;
  readonly bought: number;
  /** Enough to come back to the number wintered, had it been known. */
  readonly hindsight: number;
  /** Minor units. */
  readonly regret: number;
}

/** What a colony bought, one missing and one too many cost, minor units. */
export interface RegretCosts {
  readonly price: number;
  readonly missing: number;
  readonly surplus: number;
}

export type Forecaster = (earlier: readonly AtRiskAndLost[], wintering: number) => LossDistribution;

/** The forecast that orders are made with. */
export function mixtureForecaster(expected: ExpectedRate): Forecaster {
  return (earlier, wintering) => betaBinomialMixture(wintering, betaComponents(earlier, expected));
}

/** One fitted beta plugged in, for comparison. */
export function momentForecaster(rate: number): Forecaster {
  return (earlier, wintering) => {
    const prior = betaPriorByMoments(earlier) ?? betaPriorFromExpectedRate(rate);
    return betaBinomial(wintering, prior.alpha, prior.beta);
  };
}

/** Every winter in turn as if it lay ahead. The order is for as many in spring as went into the winter. */
export function backtest(winters: readonly AtRiskAndLost[], forecaster: Forecaster, confidence: number, costs: RegretCosts): BacktestedWinter[] {
  return winters.map((winter, at) => {
    const forecast = forecaster(winters.slice(0, at), winter.atRisk);
    const bought = discreteQuantile(forecast.cdf, confidence);
    const cost = (colonies: number) => costs.price * colonies + costs.missing * Math.max(0, winter.lost - colonies) + costs.surplus * Math.max(0, colonies - winter.lost);
    // Knowing the winter, one buys what was lost, or nothing where a colony costs more than it is worth.
    const hindsight = costs.missing > costs.price ? winter.lost : 0;
    return { ...outcomeOf(forecast, winter), earlier: at, bought, hindsight, regret: cost(bought) - cost(hindsight) };
  });
}
