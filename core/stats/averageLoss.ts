import type { AtRiskAndLost } from './atRiskAndLost.ts';
import { checkCounts } from './checkCounts.ts';
import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { studentTQuantile } from './studentTQuantile.ts';

/**
 * The average loss: every unit weighs the same, whatever its size. All figures are shares in [0, 1], but
 * for `ciTUnclipped`, which may lie outside. What a single unit cannot tell is null; with no unit all is.
 */
export interface AverageLoss {
  readonly units: number;
  readonly mean: number | null;
  readonly sd: number | null;
  readonly se: number | null;
  readonly ciT: Interval | null;
  readonly ciZ: Interval | null;
  readonly ciTUnclipped: Interval | null;
  readonly median: number | null;
  readonly smallest: number | null;
  readonly largest: number | null;
}

/**
 * Mean of the units' own loss rates with a 95 % t interval (and the normal one that survey papers print),
 * clipped to [0, 1], plus median and range, because rates of small and large units are not equally variable.
 *
 * Source: vanEngelsdorp et al. 2013, J Apic Res 52, doi 10.3896/IBRA.1.52.4.15 (average loss); van der Zee
 * et al. 2013, doi 10.3896/IBRA.1.52.4.18 (the warning). Units with nothing at risk are left out.
 * Counts per unit: 0 <= lost <= atRisk, whole numbers, else RangeError.
 */
export function averageLoss(counts: readonly AtRiskAndLost[]): AverageLoss {
  for (const unit of counts) checkCounts(unit.lost, unit.atRisk);
  const rates = counts.filter((unit) => unit.atRisk > 0).map((unit) => unit.lost / unit.atRisk);
  const sorted = rates.toSorted((a, b) => a - b);
  const units = rates.length;
  const smallest = sorted[0] ?? null;
  const largest = sorted[units - 1] ?? null;
  const median = middle(sorted);
  if (units < 2) {
    return { units, mean: smallest, sd: null, se: null, ciT: null, ciZ: null, ciTUnclipped: null, median, smallest, largest };
  }
  const mean = rates.reduce((sum, rate) => sum + rate, 0) / units;
  const sd = Math.sqrt(rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0) / (units - 1));
  const se = sd / Math.sqrt(units);
  const around = (quantile: number): Interval => ({ lower: mean - quantile * se, upper: mean + quantile * se });
  const ciTUnclipped = around(studentTQuantile(0.975, units - 1));
  return {
    units,
    mean,
    sd,
    se,
    ciT: clip(ciTUnclipped),
    ciZ: clip(around(NORMAL_QUANTILE_975)),
    ciTUnclipped,
    median,
    smallest,
    largest,
  };
}

function clip(interval: Interval): Interval {
  return { lower: Math.max(0, interval.lower), upper: Math.min(1, interval.upper) };
}

function middle(sorted: readonly number[]): number | null {
  const above = sorted[sorted.length >> 1];
  const below = sorted[(sorted.length - 1) >> 1];
  return above === undefined || below === undefined ? null : (above + below) / 2;
}
