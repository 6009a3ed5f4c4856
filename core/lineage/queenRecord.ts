import type { EntryId } from '#shared/brands.ts';
import type { QueenFigure, QueenShare, QueenStory } from '#shared/contract/queens.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import type { ColonyState, Reign } from '#core/journal/colonyState.ts';
import { few, fits } from '#core/losses/lossWords.ts';
import { miteRateBinomial, type MiteWash } from '#core/mites/miteRate.ts';
import { pooledWash, shownYardRate, yardMites } from '#core/mites/yardMites.ts';
import { meanInterval } from '#core/stats/meanInterval.ts';
import { proportion } from '#core/stats/proportion.ts';
import { fateIn, wintersOver } from './winterFates.ts';

export interface QueensTime {
  readonly state: ColonyState;
  readonly reign: Reign;
}

/** Her times in colonies, the earliest first. */
export function reignsOf(states: readonly ColonyState[], queen: EntryId): QueensTime[] {
  return states
    .flatMap((state) => state.reigns.flatMap((reign) => (reign.queen === queen ? [{ state, reign }] : [])))
    .toSorted((a, b) => (a.reign.since < b.reign.since ? -1 : a.reign.since > b.reign.since ? 1 : a.state.startPlace - b.state.startPlace));
}

/** On that day at its end, as everywhere in the book; on the day her time ends another may be there. */
function under({ since, until }: Reign, day: Day): boolean {
  return since <= day && (until === null || day < until);
}

/**
 * How the colonies did while she was in them. Brood and temper: means of looks, 95 % t interval. Mites: all washes pooled,
 * per 100 bees; one wash, or no mite at all, with the exact interval (Clopper-Pearson), several with the one that
 * allows for washes that differ (`yardMites`). Swarming and winters: shares of colony-seasons and colony-winters; Wilson, 95 %.
 */
export function queenRecord(times: readonly QueensTime[], states: readonly ColonyState[], borders: Borders, today: Day): Pick<QueenStory, 'brood' | 'mites' | 'temper' | 'swarming' | 'winters'> {
  const looks = times.flatMap(({ state, reign }) => state.looks.filter(({ day }) => under(reign, day)));
  const washes = times.flatMap(({ state, reign }) => state.miteCounts.filter(({ day }) => under(reign, day)));
  return {
    brood: mean(looks.flatMap(({ framesBrood }) => framesBrood ?? []), 0, Infinity, 'look'),
    temper: mean(looks.flatMap(({ temper }) => temper ?? []), 1, 5, 'look'),
    mites: mitesUnder(washes),
    swarming: swarmingUnder(times, borders, today),
    winters: wintersUnder(times, states, borders, today),
  };
}

function mean(values: readonly number[], least: number, most: number, what: string): QueenFigure {
  const { n, mean: value, limits } = meanInterval(values);
  const interval: [number, number] | null = limits === null ? null : [Math.max(least, limits.lower), Math.min(most, limits.upper)];
  return { n, value, interval, says: saysOf(n, what) };
}

function saysOf(n: number, what: string): string {
  if (n === 0) return 'None was written down.';
  if (n === 1) return `One ${what}; no range can be given.`;
  return n < few ? `Only ${n} ${what}${what.endsWith('sh') ? 'es' : 's'}: a first impression.` : '';
}

function mitesUnder(washes: readonly MiteWash[]): QueenStory['mites'] {
  if (washes.length === 0) return { n: 0, mites: 0, bees: 0, value: null, interval: null, says: saysOf(0, 'wash') };
  const all = pooledWash(washes);
  const several = yardMites(washes, null);
  const rate = several === null ? miteRateBinomial(all) : shownYardRate(several);
  return {
    n: washes.length, mites: all.mites, bees: all.bees, value: (100 * all.mites) / all.bees, interval: rate === null ? null : [rate.limits.lower, rate.limits.upper],
    says: washes.length === 1 ? 'One wash; it tells of its own day.' : saysOf(washes.length, 'wash'),
  };
}

function swarmingUnder(times: readonly QueensTime[], borders: Borders, today: Day): QueenShare {
  let [count, of] = [0, 0];
  for (const { state, reign } of times) {
    const last = reign.until ?? today;
    for (let season = seasonOf(reign.since, borders); season <= seasonOf(last, borders); season += 1) {
      const summer = periodDays(season, 'summer', borders);
      const swarmed = reign.ending === 'swarmed' && reign.until !== null && seasonOf(reign.until, borders) === season;
      // A day that only ended her time is no summer of hers.
      if (!swarmed && !(reign.since < summer.until && (reign.until === null ? today >= summer.from : reign.until > summer.from && reign.since < reign.until) && state.start <= today)) continue;
      of += 1;
      if (swarmed) count += 1;
    }
  }
  return shareOf(count, of, 'She was in no colony in a summer.');
}

function wintersUnder(times: readonly QueensTime[], states: readonly ColonyState[], borders: Borders, today: Day): QueenShare {
  const winters = wintersOver(states, borders, today);
  const fates = times.flatMap(({ state, reign }) =>
    winters.flatMap((winter) => (reign.since < winter.from && (reign.until === null || reign.until >= winter.from) ? (fateIn(state, winter) ?? []) : [])));
  return shareOf(fates.filter((fate) => fate === 'lived').length, fates.length, 'No winter that is over was gone into with her.');
}

function shareOf(count: number, of: number, none: string): QueenShare {
  const { wilson } = proportion(count, of);
  if (wilson === null) return { count, of, interval: null, says: none };
  return { count, of, interval: [wilson.lower, wilson.upper], says: of < few ? `So few that ${fits(wilson.lower, wilson.upper)}.` : '' };
}
