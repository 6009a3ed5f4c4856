import type { Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import { gramsPerPound } from '#shared/units.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';

/** More supers than this are not planned for a hive, whatever it made. */
const most = 8;
const leastColonies = 8;
const leastSeasons = 2;

/**
 * Medium supers to own for a hive: the crop expected, by what a full super gives, times the room that nectar takes
 * until it is ripe. Pounds in; the share of supers and the whole ones, rounded up. Practice, from memory.
 */
export function supersFromYield(pounds: number, netPerSuper: number, ripening: number): { readonly exact: number; readonly whole: number } {
  const exact = (Math.max(0, pounds) / netPerSuper) * ripening;
  return { exact, whole: Math.ceil(exact - 1e-9) };
}

/** What wintered colonies gave, in grams each: over a season, and on the day that gave most. */
export interface WinteredCrop {
  readonly season: number;
  readonly largest: number;
  readonly colonies: number;
  readonly seasons: number;
}

/**
 * Crop of wintered colonies by the own harvests, in yards and seasons where honey was weighed colony by colony; there
 * a colony without a harvest gave none. Supers that were emptied go on again, so it is the largest day of a season
 * that tells how many are wanted at once. Null with fewer than 8 colonies or 2 seasons, and the season that is not
 * over is left out.
 */
export function winteredCrop(states: readonly ColonyState[], borders: Borders, asOf: Day): WinteredCrop | null {
  const weighed = new Set<string>();
  for (const state of states) for (const { day, yard } of state.harvests) weighed.add(`${seasonOf(day, borders)}|${yard}`);
  const seasons = new Set<number>();
  let [colonies, whole, largest] = [0, 0, 0];
  for (const season of new Set([...weighed].map((key) => Number(key.split('|')[0])))) {
    const { from, until } = periodDays(season, 'summer', borders);
    if (until > asOf) continue;
    const middle = `${season}-07-15` as Day;
    for (const state of states) {
      const yard = aliveBefore(state, from) && (state.end === null || state.end >= middle) ? yardOn(state, middle) : null;
      if (yard === null || !weighed.has(`${season}|${yard}`)) continue;
      const days = new Map<Day, number>();
      for (const { day, grams } of state.harvests) if (seasonOf(day, borders) === season) days.set(day, (days.get(day) ?? 0) + grams);
      colonies += 1;
      seasons.add(season);
      whole += [...days.values()].reduce((sum, one) => sum + one, 0);
      largest += Math.max(0, ...days.values());
    }
  }
  return colonies < leastColonies || seasons.size < leastSeasons ? null : { season: whole / colonies, largest: largest / colonies, colonies, seasons: seasons.size };
}

export interface SupersWanted {
  readonly each: number;
  readonly sentence: string;
}

/** Supers for a hive: the person's own rule, else by the own harvests where they are enough, else the default. */
export function supersWanted(rules: RuleValues, frames: 8 | 10, crop: WinteredCrop | null): SupersWanted {
  const byRule = numberRule(rules, 'order.mediums');
  if (crop === null) {
    return { each: byRule, sentence: `${inSupers(byRule)} a hive by ${rules.has('order.mediums') ? 'your house rule' : 'the house rule; there are too few harvests weighed colony by colony to tell it from your own'}.` };
  }
  const pounds = crop.largest / gramsPerPound;
  const season = crop.season / gramsPerPound;
  const net = numberRule(rules, frames === 8 ? 'order.superNet8' : 'order.superNet10');
  const ripening = numberRule(rules, 'order.superRipening');
  const { exact, whole } = supersFromYield(pounds, net, ripening);
  const each = Math.min(most, Math.max(1, whole));
  const more = Math.round(season) > Math.round(pounds) ? ` of ${Math.round(season)} lb in a season` : '';
  const reckoned = `At their largest harvest your wintered colonies gave ${Math.round(pounds)} lb each${more} (${crop.colonies} in ${crop.seasons} seasons); at ${net} lb a full super and ${ripening} times the room while it ripens that is ${Math.round(exact * 100) / 100}, so ${inSupers(each)} a hive`;
  return rules.has('order.mediums') ? { each: byRule, sentence: `${inSupers(byRule)} a hive by your house rule. ${reckoned} would do.` } : { each, sentence: `${reckoned}.` };
}

function inSupers(count: number): string {
  return `${count} ${count === 1 ? 'super' : 'supers'}`;
}
