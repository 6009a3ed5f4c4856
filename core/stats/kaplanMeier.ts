import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { firstTimeWithAtLeast, numberAtRisk } from './numberAtRisk.ts';
import { restrictedMean, type RestrictedMean } from './restrictedMean.ts';
import { survivalQuantile } from './survivalQuantile.ts';
import { sortSpans, type LeftOutSpans, type SortedSpans, type SurvivalSpans } from './survivalSpans.ts';

/** One element per distinct loss time, ascending. A null limit or error: the curve is at 0, none exists. */
export interface SurvivalTable {
  readonly time: readonly number[];
  readonly atRisk: readonly number[];
  readonly lost: readonly number[];
  readonly survival: readonly number[];
  readonly se: readonly (number | null)[];
  readonly lowerLogLog: readonly (number | null)[];
  readonly upperLogLog: readonly (number | null)[];
  readonly lowerPlain: readonly (number | null)[];
  readonly upperPlain: readonly (number | null)[];
}

/** Time by which the share `p` is lost (p = 0.5: median) with log-log limits; null: not reached. */
export interface SurvivalQuantile {
  readonly p: number;
  readonly time: number | null;
  readonly lowerLogLog: number | null;
  readonly upperLogLog: number | null;
}

export interface KaplanMeier {
  /** Rows used, and losses among them. */
  readonly n: number;
  readonly losses: number;
  readonly leftOut: LeftOutSpans;
  readonly start: number;
  /** Last time anything was watched; null without rows. */
  readonly lastTime: number | null;
  readonly table: SurvivalTable;
  readonly quantiles: readonly SurvivalQuantile[];
  readonly restrictedMean: RestrictedMean | null;
  /** Number at risk at the times asked for. */
  readonly numberAtRisk: readonly { readonly time: number; readonly atRisk: number }[];
  /** Times at which colonies left alive (the tick marks), with how many. */
  readonly censored: { readonly time: readonly number[]; readonly count: readonly number[] };
  /**
   * Not null if every colony at risk was lost at `time` while `later` more come after it: the curve then
   * stays at 0 although colonies live on, and must not be shown without a warning.
   */
  readonly riskSetRanOut: { readonly time: number; readonly later: number } | null;
  /** First time with at least `minimumAtRisk` watched: a good `start` for a curve "given alive at day x". */
  readonly firstWellWatched: number | null;
}

export interface KaplanMeierOptions {
  /** Shares lost whose times are wanted; default quarter, half, three quarters. */
  readonly probabilities?: readonly number[];
  /** Restrict the mean to this time; without it there is no restricted mean. */
  readonly tau?: number;
  /** Times for the row of numbers at risk. */
  readonly riskTimes?: readonly number[];
  /** Where the axis starts; survival is then given alive at `start`. Default 0. */
  readonly start?: number;
  /** For `firstWellWatched`; default 5. */
  readonly minimumAtRisk?: number;
}

/**
 * Kaplan-Meier survival curve with delayed entry, Greenwood errors and 95 % bands.
 *
 * Source: Kaplan and Meier 1958, JASA 53:457-481; Greenwood 1926 (both from memory); suggested for censored
 * mortality of colonies by Pirk et al. 2013, Statistical guidelines for Apis mellifera research, J Apic Res 52(4).
 * At risk at t: entry < t <= exit, so a colony that leaves alive on the day another is lost is still at risk,
 * and one that enters that day is not. The log-log band is the one to show: it stays between 0 and 1; the
 * plain one is clipped. Survival is 1 before the first loss and has no band there.
 * O(n log n). Errors as for `sortSpans`; `tau` at or before `start`: RangeError.
 */
export function kaplanMeier(spans: SurvivalSpans, options: KaplanMeierOptions = {}): KaplanMeier {
  const sorted = sortSpans(spans, options.start ?? 0);
  const steps = lossSteps(sorted);
  const bands = steps.survival.map((survival, at) => band(survival, steps.greenwood[at] as number));
  const lower = bands.map((limits) => limits?.logLog.lower ?? Number.NaN);
  const upper = bands.map((limits) => limits?.logLog.upper ?? Number.NaN);
  return {
    n: sorted.exits.length,
    losses: sorted.losses.length,
    leftOut: sorted.leftOut,
    start: sorted.start,
    lastTime: sorted.exits.at(-1) ?? null,
    table: {
      time: steps.time,
      atRisk: steps.atRisk,
      lost: steps.lost,
      survival: steps.survival,
      se: bands.map((limits) => limits?.se ?? null),
      lowerLogLog: bands.map((limits) => limits?.logLog.lower ?? null),
      upperLogLog: bands.map((limits) => limits?.logLog.upper ?? null),
      lowerPlain: bands.map((limits) => limits?.plain.lower ?? null),
      upperPlain: bands.map((limits) => limits?.plain.upper ?? null),
    },
    quantiles: (options.probabilities ?? [0.25, 0.5, 0.75]).map((p) => ({
      p,
      time: survivalQuantile(steps.time, steps.survival, 1 - p),
      lowerLogLog: survivalQuantile(steps.time, lower, 1 - p),
      upperLogLog: survivalQuantile(steps.time, upper, 1 - p),
    })),
    restrictedMean: options.tau === undefined ? null : restrictedMean(steps, options.tau, sorted.start),
    numberAtRisk: (options.riskTimes ?? []).map((time) => ({ time, atRisk: numberAtRisk(sorted, time) })),
    censored: censoredTimes(sorted),
    riskSetRanOut: ranOut(steps, sorted),
    firstWellWatched: firstTimeWithAtLeast(options.minimumAtRisk ?? 5, sorted),
  };
}

interface Steps {
  readonly time: number[];
  readonly atRisk: number[];
  readonly lost: number[];
  readonly survival: number[];
  /** Greenwood's sum; infinite once the curve is at 0. */
  readonly greenwood: number[];
}

function lossSteps({ entries, exits, losses }: SortedSpans): Steps {
  const steps: Steps = { time: [], atRisk: [], lost: [], survival: [], greenwood: [] };
  let come = 0;
  let gone = 0;
  let survival = 1;
  let greenwood = 0;
  for (let at = 0; at < losses.length; ) {
    const time = losses[at] as number;
    let lost = 0;
    while (at < losses.length && losses[at] === time) {
      lost++;
      at++;
    }
    while (come < entries.length && (entries[come] as number) < time) come++;
    while (gone < exits.length && (exits[gone] as number) < time) gone++;
    const atRisk = come - gone;
    survival *= (atRisk - lost) / atRisk;
    greenwood += lost / (atRisk * (atRisk - lost));
    steps.time.push(time);
    steps.atRisk.push(atRisk);
    steps.lost.push(lost);
    steps.survival.push(survival);
    steps.greenwood.push(greenwood);
  }
  return steps;
}

interface Band {
  readonly se: number;
  readonly logLog: Interval;
  readonly plain: Interval;
}

function band(survival: number, greenwood: number): Band | null {
  if (survival === 0) return null;
  const z = NORMAL_QUANTILE_975;
  const root = Math.sqrt(greenwood);
  const se = survival * root;
  const theta = Math.exp((z * root) / Math.abs(Math.log(survival)));
  return {
    se,
    logLog: { lower: survival ** theta, upper: survival ** (1 / theta) },
    plain: { lower: Math.max(0, survival - z * se), upper: Math.min(1, survival + z * se) },
  };
}

function censoredTimes({ exits, losses }: SortedSpans): KaplanMeier['censored'] {
  const time: number[] = [];
  const count: number[] = [];
  let loss = 0;
  for (const exit of exits) {
    // At equal times every loss finds its own exit first; the exits left over are the censored ones.
    if (losses[loss] === exit) {
      loss++;
    } else if (time.at(-1) === exit) {
      count.push((count.pop() as number) + 1);
    } else {
      time.push(exit);
      count.push(1);
    }
  }
  return { time, count };
}

function ranOut(steps: Steps, { exits }: SortedSpans): KaplanMeier['riskSetRanOut'] {
  const at = steps.survival.indexOf(0);
  const time = steps.time[at];
  if (time === undefined) return null;
  const later = exits.reduce((sum, exit) => (exit > time ? sum + 1 : sum), 0);
  return later === 0 ? null : { time, later };
}
