import type { AtRiskAndLost } from './atRiskAndLost.ts';
import { checkCounts } from './checkCounts.ts';

/** How the spread of a prior was found: from the data, held at a bound, or by default. */
export type BetaPriorRule = 'moments' | 'floor' | 'ceiling' | 'default-concentration' | 'expected-rate';

/**
 * Beta distribution of the loss rate from winter to winter. `rho` is the correlation of two colonies of one
 * winter, `M` = alpha + beta the concentration; `S` and `rhoRaw` are null where they could not be computed.
 */
export interface BetaPrior {
  /** Winters with colonies at risk. */
  readonly seasons: number;
  readonly p: number;
  readonly rule: BetaPriorRule;
  readonly S: number | null;
  readonly rhoRaw: number | null;
  readonly rho: number;
  readonly M: number;
  readonly alpha: number;
  readonly beta: number;
}

/** Concentration where a single winter, or none, cannot tell it. A choice of this program, not a published value. */
export const DEFAULT_CONCENTRATION = 8;
const HIGHEST_RHO = 0.5;

/**
 * Fits a beta distribution to past winters by moments (intraclass form after Kleinman 1973, JASA 68:46-54,
 * from memory). Each element is one winter of the whole operation; yards of one winter share its weather and
 * must not be given as winters of their own.
 *
 * rho is held between 1/(1+N) (known at best as well as N colonies can tell) and 0.5 (no stronger U shape than
 * Jeffreys'): choices of this program. One winter: `concentration`, p = (Y + 0.5)/(N + 1). No winter with
 * colonies: null; ask for an expected rate and use `betaPriorFromExpectedRate`.
 * Nothing or everything ever lost: p = (Y + 0.5)/(N + 1). Broken counts: RangeError.
 */
export function betaPriorByMoments(
  winters: readonly AtRiskAndLost[],
  concentration = DEFAULT_CONCENTRATION,
): BetaPrior | null {
  for (const winter of winters) checkCounts(winter.lost, winter.atRisk);
  const used = winters.filter((winter) => winter.atRisk > 0);
  const seasons = used.length;
  if (seasons === 0) return null;
  const N = used.reduce((sum, winter) => sum + winter.atRisk, 0);
  const Y = used.reduce((sum, winter) => sum + winter.lost, 0);
  const damped = (Y + 0.5) / (N + 1);
  if (seasons === 1) {
    return withConcentration({ seasons, p: damped, rule: 'default-concentration', S: null, rhoRaw: null }, concentration);
  }
  const p = Y === 0 || Y === N ? damped : Y / N;
  const S = used.reduce((sum, winter) => sum + winter.atRisk * (winter.lost / winter.atRisk - Y / N) ** 2, 0);
  const squares = used.reduce((sum, winter) => sum + winter.atRisk ** 2, 0);
  const denominator = N - squares / N - (seasons - 1);
  const lowestRho = 1 / (1 + N);
  // All winters of one colony each: the data cannot tell rho. The tolerance catches rounding around 0.
  const rhoRaw = denominator > 1e-9 * N ? (S / (p * (1 - p)) - (seasons - 1)) / denominator : null;
  if (rhoRaw === null || rhoRaw < lowestRho) return withRho({ seasons, p, rule: 'floor', S, rhoRaw }, lowestRho);
  if (rhoRaw > HIGHEST_RHO) return withRho({ seasons, p, rule: 'ceiling', S, rhoRaw }, HIGHEST_RHO);
  return withRho({ seasons, p, rule: 'moments', S, rhoRaw }, rhoRaw);
}

/** Prior for a beekeeper without a past winter: an expected loss rate in (0, 1), else RangeError. */
export function betaPriorFromExpectedRate(rate: number, concentration = DEFAULT_CONCENTRATION): BetaPrior {
  if (!(rate > 0 && rate < 1)) throw new RangeError(`an expected loss rate lies between 0 and 1, not at ${rate}`);
  return withConcentration({ seasons: 0, p: rate, rule: 'expected-rate', S: null, rhoRaw: null }, concentration);
}

type Found = Pick<BetaPrior, 'seasons' | 'p' | 'rule' | 'S' | 'rhoRaw'>;

function withRho(found: Found, rho: number): BetaPrior {
  const M = (1 - rho) / rho;
  return { ...found, rho, M, alpha: found.p * M, beta: (1 - found.p) * M };
}

function withConcentration(found: Found, M: number): BetaPrior {
  if (!(M > 0)) throw new RangeError(`a concentration is positive, not ${M}`);
  return { ...found, rho: 1 / (1 + M), M, alpha: found.p * M, beta: (1 - found.p) * M };
}
