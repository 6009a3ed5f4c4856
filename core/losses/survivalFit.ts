import type { Incidence, SurvivalGroup } from '#shared/contract/lossSections.ts';
import { fates } from '#shared/contract/lossSections.ts';
import { cumulativeIncidence } from '#core/stats/cumulativeIncidence.ts';
import { kaplanMeier, type KaplanMeier } from '#core/stats/kaplanMeier.ts';
import { NORMAL_QUANTILE_975 } from '#core/stats/normalQuantile.ts';
import type { RestrictedMean } from '#core/stats/restrictedMean.ts';
import { restrictedMeanDifference } from '#core/stats/restrictedMeanDifference.ts';
import type { SurvivalSpans } from '#core/stats/survivalSpans.ts';
import { coloniesIn, type GroupRows } from './survivalGroups.ts';
import type { FateCode, WatchedRow } from './watchedRows.ts';

/** Which ends count as a loss on the curves. */
export type LostFates = ReadonlySet<FateCode>;

export interface Axis {
  readonly last: number;
  readonly step: number;
  /** Fewest watched for a curve to begin. */
  readonly fewest: number;
  readonly lost: LostFates;
  readonly life: boolean;
}

/** A group with its curve; `fit` is null where too few were ever watched at once. */
export interface Fitted {
  readonly group: GroupRows;
  readonly spans: SurvivalSpans;
  readonly fit: KaplanMeier | null;
  readonly colonies: number;
  readonly losses: number;
}

export function spansOf(rows: readonly WatchedRow[], lost: LostFates): SurvivalSpans {
  const spans = { entry: new Float64Array(rows.length), exit: new Float64Array(rows.length), status: new Float64Array(rows.length) };
  let at = 0;
  for (const row of rows) {
    spans.entry[at] = row.entry;
    spans.exit[at] = row.exit;
    spans.status[at] = lost.has(row.fate) ? 1 : 0;
    at += 1;
  }
  return spans;
}

/** The curve of a group, begun on the first day on which enough were watched. */
export function fitGroup(group: GroupRows, axis: Axis): Fitted {
  const { rows } = group;
  const spans = spansOf(rows, axis.lost);
  const riskTimes: number[] = [];
  for (let at = 0; at * axis.step <= axis.last + 1e-9; at += 1) riskTimes.push(at * axis.step);
  const whole = kaplanMeier(spans, { riskTimes, minimumAtRisk: axis.fewest, probabilities: [0.5] });
  const start = whole.firstWellWatched;
  // Pieces of colonies that went on into another group make no curve of their own.
  const colonies = coloniesIn(rows, axis.life);
  const fit = start === null || colonies < axis.fewest ? null : start > 0 ? kaplanMeier(spans, { riskTimes: riskTimes.filter((time) => time >= start), start, probabilities: [0.5] }) : whole;
  return { group, spans, fit, colonies, losses: rows.filter((row) => axis.lost.has(row.fate)).length };
}

/** The last day up to which every curve's mean can be taken; null without a curve, or where one begins late. */
export function sharedTau(fitted: readonly Fitted[], last: number): number | null {
  const curves = fitted.flatMap(({ fit }) => (fit === null ? [] : [fit]));
  const tau = curves.reduce((least, fit) => Math.min(least, fit.lastTime ?? 0), last);
  return curves.length === 0 || tau <= 0 || curves.some((fit) => fit.start > 0) ? null : tau;
}

export function meanTo({ spans }: Fitted, tau: number): RestrictedMean | null {
  return kaplanMeier(spans, { tau, probabilities: [] }).restrictedMean;
}

/** A fitted group as the screen shows it. `place`: its colour and dash. */
export function shownGroup(one: Fitted, place: number, axis: Axis, mean: RestrictedMean | null, reference: RestrictedMean | null): SurvivalGroup {
  const { group, fit, colonies, losses } = one;
  const median = fit?.quantiles[0];
  // Without a loss the spread of a mean is unknown, not nought: it has no range, and no difference either.
  const difference = mean !== null && reference !== null && mean !== reference && mean.se > 0 && reference.se > 0 ? restrictedMeanDifference(mean, reference) : null;
  return {
    key: group.key, label: group.label, place, colonies, losses,
    curve: fit === null ? null : curveOfFit(fit, axis.last),
    why: fit !== null ? null : colonies === 0 ? 'No colony was watched here.' : colonies < axis.fewest ? `Fewer than ${axis.fewest} colonies, so no curve is drawn.` : `Fewer than ${axis.fewest} were watched at any one time, so no curve is drawn.`,
    median: median?.time === undefined || median.time === null ? null : { value: median.time, low: median.lowerLogLog, high: median.upperLogLog },
    mean: mean === null ? null : mean.se === 0 ? { value: mean.value, low: null, high: null } : { value: mean.value, low: Math.max(0, mean.value - NORMAL_QUANTILE_975 * mean.se), high: Math.min(mean.tau, mean.value + NORMAL_QUANTILE_975 * mean.se) },
    difference: difference === null ? null : { value: difference.value, low: difference.interval.lower, high: difference.interval.upper },
  };
}

function curveOfFit(fit: KaplanMeier, last: number): NonNullable<SurvivalGroup['curve']> {
  return {
    colonies: fit.n, losses: fit.losses,
    times: [...fit.table.time], atRisk: [...fit.table.atRisk], lost: [...fit.table.lost], survival: [...fit.table.survival], low: [...fit.table.lowerLogLog], high: [...fit.table.upperLogLog],
    censored: [...fit.censored.time],
    strip: fit.numberAtRisk.map(({ time, atRisk }) => ({ time, atRisk })),
    ...(fit.start > 0 ? { from: fit.start } : {}),
    last,
    warning: fit.riskSetRanOut === null ? null : `On day ${fit.riskSetRanOut.time} every colony then watched was lost; ${fit.riskSetRanOut.later} came later, so the curve says nothing about them.`,
  };
}

/** What became of the colonies: lost, sold or given away, united, each as a share; null where nothing but loss took any. */
export function incidenceOf(rows: readonly WatchedRow[], ended: string): Incidence | null {
  if (!rows.some(({ fate }) => fate === 2 || fate === 3)) return null;
  const found = cumulativeIncidence({ entry: Float64Array.from(rows, (row) => row.entry), exit: Float64Array.from(rows, (row) => row.exit), cause: Int8Array.from(rows, (row) => row.fate) }, fates.length);
  const curves = fates.map((fate, at) => ({ fate, ends: found.causes[at]?.ends ?? 0, curve: found.causes[at] }));
  return {
    times: [...found.time], atRisk: [...found.atRisk], alive: [...found.free],
    fates: curves.map(({ fate, ends, curve }) => ({ fate, colonies: ends, share: [...(curve?.incidence ?? [])], low: [...(curve?.lower ?? [])], high: [...(curve?.upper ?? [])] })),
    sentence: incidenceSentence(curves.map(({ fate, ends, curve }) => ({ fate, ends, share: curve?.incidence.at(-1) ?? 0, low: curve?.lower.at(-1) ?? null, high: curve?.upper.at(-1) ?? null })), found.n, ended),
  };
}

const fateWords = { lost: 'lost', sold: 'sold or given away', united: 'united' } as const;

function incidenceSentence(ends: readonly { fate: (typeof fates)[number]; ends: number; share: number; low: number | null; high: number | null }[], watched: number, ended: string): string {
  const said = ends.filter((one) => one.ends > 0).map(({ fate, ends: count, share, low, high }) => {
    const range = fate !== 'lost' || watched < 10 || low === null || high === null ? '' : `, ${Math.round(share * 100)} in 100 (${Math.round(low * 100)} to ${Math.round(high * 100)})`;
    return `${count} ${fateWords[fate]}${range}`;
  });
  return `Of ${watched} watched, ${ended}: ${said.join('; ')}. A colony that was sold or united cannot be lost any more, so these are counted beside each other and add up with those that lived on.`;
}
