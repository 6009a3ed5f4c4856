import type { YardId } from '#shared/brands.ts';
import type { MonthAhead } from '#shared/contract/worked.ts';
import type { WorkHours } from '#shared/contract/work.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Season } from '#shared/seasons.ts';
import { meanInterval } from '#core/stats/meanInterval.ts';
import { studentTQuantile } from '#core/stats/studentTQuantile.ts';
import { daylightOn } from './daylight.ts';
import { goingOn } from './goingOn.ts';
import { done, leastWritten, meanAlive, type WorkedFacts } from './workedHours.ts';
import type { WorkedVisit } from './workedVisits.ts';

/** Past seasons that are looked at, at most: how one works changes. */
const lookedBack = 5;

/** What a month of one past season took. */
interface MonthTaken {
  readonly season: Season;
  /** Person-hours at the hives for each colony alive. */
  readonly perColony: number;
  readonly driving: number;
}

/**
 * The months of the season to come: person-hours for each colony by the months of past whole seasons, times the colonies
 * there are to be, against the hours there are. The range is that of one more season like those: mean ± t s sqrt(1 + 1/n)
 * (prediction of a new value of a normal sample; from memory). Driving is as it was: it follows visits, not colonies.
 */
export function workedAhead(facts: WorkedFacts, hours: WorkHours, colonies: number): { season: Season; months: MonthAhead[]; seasons: Season[] } {
  const season = seasonOf(facts.today, facts.borders) + 1;
  const past = wholeSeasons(facts, season);
  const { from, until } = periodDays(season, 'year', facts.borders);
  const months = monthsBetween(from, until).map(({ month, first, after }): MonthAhead => {
    const taken = past.flatMap((one) => takenIn(facts, one, month) ?? []);
    const have = hoursThere(hours, first, after);
    const { n, mean, sd } = meanInterval(taken.map((one) => one.perColony));
    const driving = taken.length === 0 ? 0 : taken.reduce((sum, one) => sum + one.driving, 0) / taken.length;
    if (mean === null) return { month, need: null, driving, have, fits: 'unknown' };
    const half = sd === null ? null : studentTQuantile(0.975, n - 1) * sd * Math.sqrt(1 + 1 / n);
    const range: [number, number] | null = half === null ? null : [Math.max(0, mean - half) * colonies, (mean + half) * colonies];
    const need = { hours: mean * colonies, range, seasons: n };
    return { month, need, driving, have, fits: fitOf(need, driving, have) };
  });
  return { season, months, seasons: past };
}

function fitOf({ hours, range }: NonNullable<MonthAhead['need']>, driving: number, have: number): MonthAhead['fits'] {
  if (range === null) return hours + driving > have ? 'short' : 'open';
  return range[1] + driving <= have ? 'fits' : range[0] + driving > have ? 'short' : 'open';
}

/** Seasons that are over, or all but over, and have hours enough to tell anything. */
function wholeSeasons({ visits, borders, today }: WorkedFacts, next: Season): Season[] {
  const seasons = [...new Set(visits.map(({ day }) => seasonOf(day, borders)))].filter((season) => season < next && (periodDays(season, 'year', borders).until <= today || season === next - 1));
  return seasons.filter((season) => visits.filter(({ day, hours }) => hours !== null && seasonOf(day, borders) === season).length >= leastWritten).toSorted((a, b) => b - a).slice(0, lookedBack);
}

/** What the month of that name took in a season; null where it is not over. */
function takenIn(facts: WorkedFacts, season: Season, month: string): MonthTaken | null {
  const { from, until } = periodDays(season, 'year', facts.borders);
  const own = monthsBetween(from, until).find((one) => one.month.slice(5) === month.slice(5));
  if (own === undefined || own.after > facts.today) return null;
  const ofSeason = facts.visits.filter(({ day }) => day >= from && day < until);
  const inMonth = ofSeason.filter(({ day }) => day >= own.first && day < own.after);
  const alive = meanAlive(facts.states, own.first, own.after);
  if (alive === null || alive === 0) return null;
  // The visits without hours of a month are taken as long as those of the whole season: a month alone has too few.
  // Those at home by themselves: a day of extracting tells nothing of an evening in a yard.
  const mean = (visits: readonly WorkedVisit[]) => {
    const { hours, written } = done(visits);
    return written === 0 ? null : hours / written;
  };
  const each = [true, false].map((home) => mean(ofSeason.filter(({ yard }) => (yard === null) === home)) ?? mean(ofSeason) ?? 0);
  const hours = inMonth.reduce((sum, { yard, hours: own }) => sum + (own ?? each[yard === null ? 0 : 1] ?? 0), 0);
  const minutes = new Map(facts.yards.map((yard): [YardId, number] => [yard.id, yard.minutes ?? 0]));
  const driving = inMonth.reduce((sum, { yard, people }) => sum + (yard === null ? 0 : (2 * (minutes.get(yard) ?? 0) * (people ?? 1)) / 60), 0);
  return { season, perColony: hours / alive, driving };
}

function hoursThere(hours: WorkHours, first: Day, after: Day): number {
  let minutes = 0;
  for (let day = first; day < after; day = addDays(day, 1)) {
    const light = daylightOn(day, hours.place);
    if (light === null) continue;
    for (const { from, until } of goingOn(hours, day)) minutes += Math.max(0, Math.min(until, light.sunset) - Math.max(from, light.sunrise));
  }
  return minutes / 60;
}

function monthsBetween(from: Day, until: Day): { month: string; first: Day; after: Day }[] {
  const months: { month: string; first: Day; after: Day }[] = [];
  for (let first = from; first < until; ) {
    const month = first.slice(0, 7);
    const nextMonth = addDays(`${month}-28` as Day, 4);
    const border = `${nextMonth.slice(0, 7)}-01` as Day;
    const after = border < until ? border : until;
    months.push({ month, first, after });
    first = after;
  }
  return months;
}
