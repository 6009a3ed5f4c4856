import type { LineRow } from '#shared/contract/lines.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import { gramsPerPound } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Interval } from '#core/stats/interval.ts';
import { meanInterval, meanOf } from '#core/stats/meanInterval.ts';
import { partialPooling } from '#core/stats/partialPooling.ts';
import { proportion } from '#core/stats/proportion.ts';

/** What lines are compared by beside the winters they lived through. */
export type LineTraits = Pick<LineRow, 'yield' | 'temper' | 'swarming'>;

/** The line that something about a colony on a day counts for; null: for none. */
export type LineOn<Key> = (state: ColonyState, day: Day) => Key | null;

export const noTraits: LineTraits = { yield: { n: 0, lb: null, interval: null, pooled: false }, temper: { n: 0, mean: null, interval: null }, swarming: { count: 0, of: 0, interval: null } };

interface ColonySeason<Key> {
  readonly key: Key;
  readonly season: Season;
  readonly lb: number;
}

/**
 * Honey, temper and swarming of every line; linear in colonies and looks.
 * Honey: see `linesYield`. Temper: the mean of a colony's looks is one value, as looks at one hive resemble each other; 95 %
 * t interval over colonies, kept within 1 to 5. Swarming: a colony counts once in each season in whose summer it lived, and
 * swarmed if a swarm was written down in that season; Wilson, 95 %.
 */
export function lineTraits<Key>(states: readonly ColonyState[], lineOn: LineOn<Key>, borders: Borders, today: Day): { readonly lines: Map<Key, LineTraits>; readonly all: LineTraits } {
  const honey: ColonySeason<Key>[] = [];
  const temper = new Map<Key, number[]>();
  const tempers: number[] = [];
  const swarming = new Map<Key, { count: number; of: number }>();
  const whole = { count: 0, of: 0 };
  const summers = summersOf(borders);
  for (const state of states) {
    honey.push(...colonySeasons(state, lineOn, borders));
    const own = temperOf(state, lineOn);
    for (const [key, mean] of own.lines) pushTo(temper, key, mean);
    if (own.all !== null) tempers.push(own.all);
    countSwarms(state, lineOn, borders, summers, today, swarming, whole);
  }
  const yields = linesYield(honey);
  const keys = new Set([...yields.lines.keys(), ...temper.keys(), ...swarming.keys()]);
  const lines = new Map([...keys].map((key) => [key, {
    yield: yields.lines.get(key) ?? noTraits.yield, temper: temperShown(temper.get(key) ?? []), swarming: swarmsShown(swarming.get(key) ?? whole0),
  }]));
  return { lines, all: { yield: yields.all, temper: temperShown(tempers), swarming: swarmsShown(whole) } };
}

const whole0 = { count: 0, of: 0 };

/** Honey weighed of one colony in one season, for the line it belonged to on the day of its first harvest of that season. */
function colonySeasons<Key>(state: ColonyState, lineOn: LineOn<Key>, borders: Borders): ColonySeason<Key>[] {
  const seasons = new Map<Season, { first: Day; grams: number }>();
  for (const { day, grams } of state.harvests) {
    const season = seasonOf(day, borders);
    const sum = seasons.get(season);
    if (sum === undefined) seasons.set(season, { first: day, grams });
    else sum.grams += grams;
  }
  return [...seasons].flatMap(([season, { first, grams }]) => {
    const key = lineOn(state, first);
    return key === null ? [] : [{ key, season, lb: grams / gramsPerPound }];
  });
}

/**
 * Pounds per colony and season, the years evened out: each colony-season as its difference from the mean of all
 * colonies weighed in that season, plus the mean of all. A season in which one line alone was weighed compares
 * nothing and is left out. Then partial pooling over lines (`partialPooling`); with fewer than three lines, or no line with
 * two values, each line's own 95 % t interval.
 */
export function linesYield<Key>(rows: readonly ColonySeason<Key>[]): { readonly lines: Map<Key, LineTraits['yield']>; readonly all: LineTraits['yield'] } {
  const seasons = [...Map.groupBy(rows, ({ season }) => season).values()];
  const compared = seasons.filter(([first, ...rest]) => rest.some(({ key }) => key !== first?.key));
  const overall = meanInterval(rows.map(({ lb }) => lb));
  const all = { n: overall.n, lb: overall.mean, interval: notBelowNought(overall.limits), pooled: false };
  if (compared.length === 0) return { lines: new Map(), all };
  const level = meanOf(compared.flat().map(({ lb }) => lb));
  const lines = new Map<Key, number[]>();
  for (const season of compared) {
    const mean = meanOf(season.map(({ lb }) => lb));
    for (const { key, lb } of season) pushTo(lines, key, lb - mean + level);
  }
  const listed = [...lines];
  const pooling = partialPooling(listed.map(([, values], at) => ({ group: String(at), values })));
  return {
    all,
    lines: new Map(listed.map(([key, values], at): [Key, LineTraits['yield']] => {
      const pooled = pooling?.groups[at];
      if (pooled !== undefined) return [key, { n: pooled.n, lb: pooled.pooled, interval: notBelowNought(pooled.limits), pooled: true }];
      const own = meanInterval(values);
      return [key, { n: own.n, lb: own.mean, interval: notBelowNought(own.limits), pooled: false }];
    })),
  };
}

function temperOf<Key>(state: ColonyState, lineOn: LineOn<Key>): { readonly lines: Map<Key, number>; readonly all: number | null } {
  const sums = new Map<Key, { sum: number; n: number }>();
  const all = { sum: 0, n: 0 };
  for (const { day, temper } of state.looks) {
    if (temper === null) continue;
    all.sum += temper;
    all.n += 1;
    const key = lineOn(state, day);
    if (key === null) continue;
    const own = sums.get(key) ?? { sum: 0, n: 0 };
    sums.set(key, own);
    own.sum += temper;
    own.n += 1;
  }
  return { lines: new Map([...sums].map(([key, { sum, n }]) => [key, sum / n])), all: all.n === 0 ? null : all.sum / all.n };
}

export function temperShown(values: readonly number[]): LineTraits['temper'] {
  const { n, mean, limits } = meanInterval(values);
  // Values that are all the same have no spread to reckon a range from; one of no width would claim certainty.
  return { n, mean, interval: limits === null || limits.lower === limits.upper ? null : [Math.max(1, limits.lower), Math.min(5, limits.upper)] };
}

/** First and last border of each season's summer, worked out once a season. */
function summersOf(borders: Borders): (season: Season) => { from: Day; until: Day } {
  const known = new Map<Season, { from: Day; until: Day }>();
  return (season) => {
    const found = known.get(season) ?? periodDays(season, 'summer', borders);
    known.set(season, found);
    return found;
  };
}

function countSwarms<Key>(
  state: ColonyState, lineOn: LineOn<Key>, borders: Borders, summerOf: (season: Season) => { from: Day; until: Day }, today: Day,
  lines: Map<Key, { count: number; of: number }>, whole: { count: number; of: number },
): void {
  const swarms = state.reigns.flatMap(({ ending, since, until }) => (ending === 'swarmed' && until !== null ? [{ since, until }] : []));
  const last = state.end ?? today;
  for (let season = seasonOf(state.start, borders); season <= seasonOf(last, borders); season += 1) {
    const { from, until } = summerOf(season);
    const swarmed = swarms.filter((swarm) => seasonOf(swarm.until, borders) === season);
    const begins = state.start > from ? state.start : from;
    if ((begins >= until || begins > last) && swarmed.length === 0) continue;
    whole.of += 1;
    if (swarmed.length > 0) whole.count += 1;
    // A line counts for every colony that it was in on the first day of its summer, or on the day a later queen of it came.
    const days = [begins, ...state.reigns.flatMap(({ since }) => (since > begins && since < until && since <= last ? [since] : []))];
    const left = new Set(swarmed.map(({ since }) => lineOn(state, since)));
    for (const key of new Set([...days.map((on) => lineOn(state, on)), ...left])) {
      if (key === null) continue;
      const counts = lines.get(key) ?? { count: 0, of: 0 };
      lines.set(key, counts);
      counts.of += 1;
      if (left.has(key)) counts.count += 1;
    }
  }
}

export function swarmsShown({ count, of }: { readonly count: number; readonly of: number }): LineTraits['swarming'] {
  const { wilson } = proportion(count, of);
  return { count, of, interval: wilson === null ? null : [wilson.lower, wilson.upper] };
}

function notBelowNought(limits: Interval | null): [number, number] | null {
  return limits === null ? null : [Math.max(0, limits.lower), limits.upper];
}

function pushTo<Key>(lists: Map<Key, number[]>, key: Key, value: number): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}
