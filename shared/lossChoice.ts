import type { LossRow } from './contract/losses.ts';
import type { LossRates, SurvivalGroup } from './contract/lossSections.ts';
import type { Period } from './seasons.ts';
import { grouped } from './grouped.ts';

/** Below this many colonies at risk the counts and the range lead, not the rate. */
export const fewColonies = 10;
/** Fewer yards than this say nothing of how much yards differ, and the range that allows for it is useless. */
export const enoughYards = 3;

type Rates = Pick<LossRates, 'season' | 'united' | 'rates'>;

/** The season's rates for one period: yards from the highest rate down, those without a rate last, then "all". */
export function ratesOf(review: Rates, period: Period): { yards: LossRow[]; all: LossRow | undefined } {
  const rows = review.rates.filter((row) => row.season === review.season && row.period === period && row.united === review.united);
  const yards = rows
    .filter((row) => row.group !== 'all')
    .sort((a, b) => (b.rate ?? -1) - (a.rate ?? -1) || b.atRisk - a.atRisk || a.group.localeCompare(b.group));
  return { yards, all: rows.find((row) => row.group === 'all') };
}

/** The rates of all yards together, season by season, newest first; seasons without a colony at risk left out. */
export function pastRates(review: Rates, period: Period): LossRow[] {
  return review.rates
    .filter((row) => row.group === 'all' && row.period === period && row.united === review.united && row.atRisk > 0)
    .sort((a, b) => b.season - a.season);
}

/** The range to show: with none or all lost the exact one, for all yards the one that allows for yards sharing their fate, where it can be given. */
export function rangeOf(row: LossRow): readonly [number, number] | null {
  if (row.atRisk > 0 && row.group === 'all' && (row.lost === 0 || row.lost === row.atRisk)) return row.clopperPearson;
  return row.quasi && row.quasi.units >= enoughYards ? [row.quasi.lower, row.quasi.upper] : row.wilson;
}

/** True when the whole range of a yard lies above that of all yards together. */
export function isAbove(row: LossRow, total: LossRow | undefined): boolean {
  const whole = total === undefined ? null : rangeOf(total);
  return row !== total && whole !== null && row.wilson !== null && row.wilson[0] > whole[1];
}

/** Published rates beside each other: one line for a season, a place and a kind of rate, newest first. */
export interface PublishedLine {
  readonly key: string;
  readonly season: number;
  readonly place: string;
  readonly what: 'total' | 'average';
  readonly rates: Partial<Record<Period, LossRates['published'][number]>>;
  readonly sources: readonly string[];
}

export function publishedLines(published: LossRates['published']): PublishedLine[] {
  const lines = grouped(published, ({ season, place, what }) => `${season} ${place} ${what}`);
  return [...lines].flatMap(([key, rows]) => {
    const [first] = rows;
    if (first === undefined) return [];
    return [{ key, season: first.season, place: first.place, what: first.what, rates: Object.fromEntries(rows.map((row) => [row.period, row])), sources: [...new Set(rows.map(({ source }) => source))] }];
  }).toSorted((a, b) => b.season - a.season);
}

/** Lowest and highest total winter loss of a survey, as shares; null without one. */
export function publishedSpan(published: LossRates['published'], survey: LossRates['published'][number]['survey']): readonly [number, number] | null {
  const rates = published.filter((row) => row.survey === survey && row.period === 'winter' && row.what === 'total').map(({ rate }) => rate);
  return rates.length === 0 ? null : [Math.min(...rates), Math.max(...rates)];
}

/** With more groups than this not all curves are shown unasked. */
const plain = 4;

/** The curves shown until others are chosen: all of a few, else the groups with the most and the least left alive. */
export function firstShown(groups: readonly SurvivalGroup[]): readonly string[] {
  const drawn = groups.filter(({ curve }) => curve !== null);
  // One group alone is the same curve as all together.
  if (groups.length === 1) return [];
  if (drawn.length <= plain) return drawn.map(({ key }) => key);
  const left = (group: SurvivalGroup) => group.curve?.survival.at(-1) ?? 1;
  const ordered = drawn.toSorted((a, b) => left(a) - left(b));
  const [worst, best] = [ordered[0], ordered.at(-1)];
  return [worst, best].flatMap((group) => (group === undefined ? [] : [group.key]));
}
