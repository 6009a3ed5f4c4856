import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import { averageLoss, type AverageLoss } from '#core/stats/averageLoss.ts';
import { intervalAcrossUnits, type IntervalAcrossUnits } from '#core/stats/intervalAcrossUnits.ts';
import { proportion, type Proportion } from '#core/stats/proportion.ts';
import { quasiBinomialInterval, type QuasiBinomial } from '#core/stats/quasiBinomialInterval.ts';
import {
  colossLoss,
  populationUnchanged,
  usLoss,
  usLossCombinedAsRemoval,
  type UnitCounts,
} from './lossDefinitions.ts';

/** Loss over several units by one definition. Arrays run along the units; rates are shares in [0, 1]. */
export interface LossRate {
  readonly atRisk: readonly number[];
  readonly lost: readonly number[];
  readonly rate: readonly (number | null)[];
  readonly totalAtRisk: number;
  readonly totalLost: number;
  /** All lost over all at risk; its two intervals treat colonies as independent. */
  readonly total: Proportion;
  /** The interval that lets units differ. */
  readonly quasi: QuasiBinomial;
  /** The interval to show beside the total, and why that one. */
  readonly shown: IntervalAcrossUnits;
  readonly average: AverageLoss;
  readonly perUnit: readonly Proportion[];
}

/** COLOSS loss with its three parts, each as a share of the colonies wintered (null if there were none). */
export interface ColossLossRate extends LossRate {
  readonly deadRate: number | null;
  readonly queenRate: number | null;
  readonly disasterRate: number | null;
}

/** Loss by each published definition; `coloss` is null when the population changed in the period. */
export interface LossRates {
  readonly us: LossRate;
  readonly usCombinedAsRemoval: LossRate;
  readonly coloss: ColossLossRate | null;
}

/**
 * Sums up at-risk and lost counts of units, with every interval. A unit with nothing at risk has a null rate
 * and stays out of average and dispersion. Throws a RangeError if a unit lost more than were at risk or a
 * count is not whole: such counts do not balance (see `faultsInCounts`).
 */
export function lossRate(units: readonly AtRiskAndLost[]): LossRate {
  const perUnit = units.map((unit) => proportion(unit.lost, unit.atRisk));
  const totalAtRisk = units.reduce((sum, unit) => sum + unit.atRisk, 0);
  const totalLost = units.reduce((sum, unit) => sum + unit.lost, 0);
  return {
    atRisk: units.map((unit) => unit.atRisk),
    lost: units.map((unit) => unit.lost),
    rate: perUnit.map((unit) => unit.rate),
    totalAtRisk,
    totalLost,
    total: proportion(totalLost, totalAtRisk),
    quasi: quasiBinomialInterval(units),
    shown: intervalAcrossUnits(units),
    average: averageLoss(units),
    perUnit,
  };
}

/** Loss of the units by the US rule, the US rule with united colonies taken out, and the COLOSS rule. */
export function lossRates(units: readonly UnitCounts[]): LossRates {
  return {
    us: lossRate(units.map(usLoss)),
    usCombinedAsRemoval: lossRate(units.map(usLossCombinedAsRemoval)),
    coloss: units.every(populationUnchanged) ? colossLossRate(units) : null,
  };
}

/** Loss by the COLOSS rule for counts of the wintered cohort; does not ask whether the population changed. */
export function colossLossRate(units: readonly UnitCounts[]): ColossLossRate {
  const summary = lossRate(units.map(colossLoss));
  const share = (count: (unit: UnitCounts) => number): number | null =>
    summary.totalAtRisk === 0 ? null : units.reduce((sum, unit) => sum + count(unit), 0) / summary.totalAtRisk;
  return {
    ...summary,
    deadRate: share((unit) => unit.dead + (unit.absconded ?? 0)),
    queenRate: share((unit) => unit.queen),
    disasterRate: share((unit) => unit.disaster),
  };
}
