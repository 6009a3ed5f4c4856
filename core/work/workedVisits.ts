import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { whole, type Slices } from '#shared/slices.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';

/** A yard on a day of which something was entered, or (`yard` null) a day’s work that names no yard. */
export interface WorkedVisit {
  readonly day: Day;
  readonly yard: YardId | null;
  /** Hours by the clock times people (one where they are not said); null where no hours are written down. */
  readonly hours: number | null;
  readonly people: number | null;
  readonly miles: number | null;
}

/** What is entered of bees that somebody stood beside. */
export const visitKinds: readonly Kind[] = [
  'install', 'split', 'combine', 'requeen', 'queen', 'move', 'inspection', 'mites', 'treatment', 'feed', 'supers on', 'supers off', 'harvest', 'stores', 'loss', 'work',
];

type Counted = { -readonly [Part in keyof WorkedVisit]: WorkedVisit[Part] };

/** One visit for each yard and day, in the order of days; several entries of work on one day add up. */
export function visitsOf(entries: readonly Entry[], states: ReadonlyMap<ColonyId, ColonyState>): WorkedVisit[] {
  return whole(visitsInSlices(entries, states));
}

/** The same, some entries at a time. */
export function* visitsInSlices(entries: readonly Entry[], states: ReadonlyMap<ColonyId, ColonyState>): Slices<WorkedVisit[]> {
  const visits = new Map<Day, Map<YardId | null, Counted>>();
  for (const [count, entry] of entries.entries()) {
    if (count % 5000 === 0) yield;
    const yard = yardOf(entry, states);
    if (yard === null && entry.kind !== 'work') continue;
    const there = visits.get(entry.day) ?? new Map<YardId | null, Counted>();
    if (there.size === 0) visits.set(entry.day, there);
    const visit = there.get(yard) ?? { day: entry.day, yard, hours: null, people: null, miles: null };
    there.set(yard, visit);
    if (entry.kind !== 'work') continue;
    const { hours, people, miles } = entry.body;
    if (hours !== undefined) visit.hours = (visit.hours ?? 0) + hours * (people ?? 1);
    if (people !== undefined) visit.people = Math.max(visit.people ?? 0, people);
    if (miles !== undefined) visit.miles = (visit.miles ?? 0) + miles;
  }
  return [...visits.values()].flatMap((there) => [...there.values()]).toSorted(inOrder);
}

export function inOrder(a: WorkedVisit, b: WorkedVisit): number {
  return a.day < b.day ? -1 : a.day > b.day ? 1 : (a.yard ?? 0) - (b.yard ?? 0);
}

/** Where it was done: as written, else where the colony stood. */
function yardOf({ body, day }: Entry, states: ReadonlyMap<ColonyId, ColonyState>): YardId | null {
  if ('yard' in body && body.yard !== undefined) return body.yard;
  const colony = 'colony' in body && body.colony !== undefined ? states.get(body.colony) : undefined;
  return colony === undefined ? null : yardOn(colony, day);
}
