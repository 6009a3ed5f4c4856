import type { YardId } from '#shared/brands.ts';
import type { WorkedRow, WorkedSeason } from '#shared/contract/worked.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import type { Slices } from '#shared/slices.ts';
import { periodDays, seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { meanInterval } from '#core/stats/meanInterval.ts';
import { studentTQuantile } from '#core/stats/studentTQuantile.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { weekdayOf } from './workHours.ts';
import type { WorkedVisit } from './workedVisits.ts';

/** Visits with hours below which nothing is said of those without. */
export const leastWritten = 5;

export interface WorkedFacts {
  readonly visits: readonly WorkedVisit[];
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly harvests: readonly Entry[];
  readonly borders: Borders;
  readonly today: Day;
}

/** Hours of each season by yard, newest first, with colonies and honey beside them. */
export function* workedSeasons(facts: WorkedFacts): Slices<WorkedSeason[]> {
  const { visits, borders, today } = facts;
  const honeyOf = honeyByYard(facts);
  const found: WorkedSeason[] = [];
  yield;
  for (const [season, own] of [...Map.groupBy(visits, ({ day }) => seasonOf(day, borders))].toSorted(([a], [b]) => b - a)) {
    const honey = honeyOf.get(season) ?? new Map<YardId, number>();
    const byYard = Map.groupBy(own, ({ yard }) => yard);
    const { from, until } = periodDays(season, 'year', borders);
    const alive = aliveByYard(facts.states, from, until > today ? addDays(today, 1) : until);
    const rows = facts.yards.flatMap((yard): WorkedRow[] => {
      const there = byYard.get(yard.id) ?? [];
      const colonies = alive(yard.id);
      if (there.length === 0 && (colonies ?? 0) === 0) return [];
      return [{ yard: { id: yard.id, code: yard.code, name: yard.name }, ...done(there), ...perColony(there, colonies), honey: honey.get(yard.id) ?? null }];
    });
    const home = byYard.get(null) ?? [];
    const all = alive(null);
    const grams = [...honey.values()].reduce((sum, one) => sum + one, 0);
    found.push({
      season,
      rows: home.length === 0 ? rows : [...rows, { yard: null, ...done(home), colonies: null, perColony: null, honey: null }],
      total: { ...doneTogether(own), ...perColony(own, all), honey: honey.size === 0 ? null : grams },
      busiest: busiestWeeks(own),
    });
    yield;
  }
  return found;
}

/**
 * Hours written down, and what they come to where the visits without hours took as long as the others: n written of m,
 * mean h and spread s give n·h + (m - n)·h. Its 95 % range is Student’s t for the sum of m - n further visits:
 * standard error sqrt((m - n)² s²/n + (m - n) s²) (prediction of new values of a normal sample; from memory).
 */
export function done(visits: readonly WorkedVisit[]): Pick<WorkedRow, 'visits' | 'written' | 'hours' | 'estimate' | 'miles'> {
  const written = visits.flatMap(({ hours }) => (hours === null ? [] : [hours]));
  const driven = visits.flatMap(({ miles }) => (miles === null ? [] : [miles]));
  const hours = written.reduce((sum, one) => sum + one, 0);
  return { visits: visits.length, written: written.length, hours, estimate: estimateOf(visits.length, written, hours), miles: driven.length === 0 ? null : driven.reduce((sum, one) => sum + one, 0) };
}

/**
 * The same of several yards and the work at home together: each is reckoned by itself, as a day of extracting at home tells nothing of
 * an evening in a yard, and the parts are added, their ranges as of independent errors. Where a yard has too few visits with hours,
 * the visits to all yards are reckoned as one.
 */
export function doneTogether(visits: readonly WorkedVisit[]): ReturnType<typeof done> {
  const parts = (keyOf: (visit: WorkedVisit) => YardId | null | 'yards') => [...Map.groupBy(visits, keyOf).values()].map(done);
  const whole = done(visits);
  const found = [parts(({ yard }) => yard), parts(({ yard }) => (yard === null ? null : 'yards'))].find((own) => own.every(({ estimate }) => estimate !== null));
  if (found === undefined || visits.length === 0) return { ...whole, estimate: null };
  const hours = found.reduce((sum, { estimate }) => sum + (estimate?.hours ?? 0), 0);
  const half = Math.sqrt(found.reduce((sum, { estimate }) => sum + (estimate === null ? 0 : estimate.range[1] - estimate.hours) ** 2, 0));
  return { ...whole, estimate: { hours, range: [Math.max(whole.hours, hours - half), hours + half] } };
}

function estimateOf(visits: number, written: readonly number[], hours: number): WorkedRow['estimate'] {
  const missing = visits - written.length;
  if (missing === 0 && written.length > 0) return { hours, range: [hours, hours] };
  const { n, mean, sd } = meanInterval(written);
  if (n < leastWritten || mean === null || sd === null) return null;
  const half = studentTQuantile(0.975, n - 1) * Math.sqrt((missing ** 2 * sd ** 2) / n + missing * sd ** 2);
  const whole = hours + missing * mean;
  return { hours: whole, range: [Math.max(hours, whole - half), whole + half] };
}

function perColony(visits: readonly WorkedVisit[], colonies: number | null): Pick<WorkedRow, 'colonies' | 'perColony'> {
  const whole = doneTogether(visits).estimate;
  return { colonies, perColony: whole === null || colonies === null || colonies === 0 ? null : whole.hours / colonies };
}

/** Colonies alive in each yard (null: anywhere), as a mean over the days between two, the second not included; null where there is no day between. */
export function aliveByYard(states: readonly ColonyState[], from: Day, until: Day): (yard: YardId | null) => number | null {
  const days = daysBetween(from, until);
  if (days <= 0) return () => null;
  const lived = new Map<YardId, number>();
  for (const state of states) {
    if (state.start >= until || (state.end !== null && state.end <= from)) continue;
    for (const stay of state.stays) lived.set(stay.yard, (lived.get(stay.yard) ?? 0) + daysWithin(stay.from, stay.until ?? state.end, from, until));
  }
  const anywhere = meanAlive(states, from, until);
  return (yard) => (yard === null ? anywhere : (lived.get(yard) ?? 0) / days);
}

/** The same anywhere. */
export function meanAlive(states: readonly ColonyState[], from: Day, until: Day): number | null {
  const days = daysBetween(from, until);
  if (days <= 0) return null;
  return states.reduce((sum, { start, end }) => sum + daysWithin(start, end, from, until), 0) / days;
}

/** Days of a stretch, open where `end` is null, that lie between two others. */
function daysWithin(start: Day, end: Day | null, from: Day, until: Day): number {
  const [first, after] = [start > from ? start : from, end !== null && end < until ? end : until];
  return first < after ? daysBetween(first, after) : 0;
}

function honeyByYard({ harvests, states, borders }: WorkedFacts): Map<Season, Map<YardId, number>> {
  const byId = new Map(states.map((state) => [state.id, state]));
  const seasons = new Map<Season, Map<YardId, number>>();
  for (const entry of harvests) {
    if (entry.kind !== 'harvest') continue;
    const season = seasonOf(entry.day, borders);
    const honey = seasons.get(season) ?? new Map<YardId, number>();
    seasons.set(season, honey);
    const colony = entry.body.colony === undefined ? undefined : byId.get(entry.body.colony);
    const yard = entry.body.yard ?? (colony === undefined ? null : yardOn(colony, entry.day));
    if (yard !== null) honey.set(yard, (honey.get(yard) ?? 0) + entry.body.gross - entry.body.tare);
  }
  return seasons;
}

function busiestWeeks(visits: readonly WorkedVisit[]): WorkedSeason['busiest'] {
  const weeks = Map.groupBy(visits, ({ day }) => addDays(day, -weekdayOf(day)));
  return [...weeks]
    .map(([monday, own]) => ({ monday, hours: done(own).hours, visits: own.length, without: own.filter(({ hours }) => hours === null).length }))
    .filter(({ hours }) => hours > 0)
    .toSorted((a, b) => b.hours - a.hours || (a.monday < b.monday ? 1 : -1))
    .slice(0, 5);
}
