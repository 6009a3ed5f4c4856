import type { YardId } from '#shared/brands.ts';
import type { WorkHours, WorkSlot } from '#shared/contract/work.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { daylightOn, type Daylight } from '../daylight.ts';
import { shortestTour, type DrivingTimes, type Tour } from '../drivingTimes.ts';
import { slotOn } from '../workHours.ts';
import type { OutingChoice } from './planProblem.ts';

/** Less than this at a yard is not worth the way there. */
const leastStay = 20;
/** An outing leads to at most so many yards; of each number of yards so many sets are looked at, each grown by the yards nearest to one of it. */
const mostYards = 6;
const mostSets = 20;
const nearest = 6;

export interface Crew {
  /** By their place in the list of people; the first goes alone if need be. */
  readonly people: readonly number[];
  readonly slot: WorkSlot;
}

export interface YardSet {
  readonly yards: readonly number[];
  readonly tour: Tour;
}

export interface PossibleOuting extends OutingChoice {
  readonly tour: Tour;
  /** Minutes of the clock: leaving home, and the first and last minute at the hives. */
  readonly slot: WorkSlot;
  readonly begin: number;
  readonly end: number;
}

/** Who can go on a day: one who goes alone, and that one with everybody else whose hours lie together for as long. */
export function crewsOn({ people }: WorkHours, day: Day): Crew[] {
  const slots = people.map((person) => slotOn(person, day));
  const crews: Crew[] = [];
  people.forEach(({ alone }, at) => {
    const own = slots[at] ?? null;
    if (!alone || own === null) return;
    let slot: WorkSlot = own;
    const crew = [at];
    slots.forEach((other, one) => {
      if (one === at || other === null) return;
      const both = { from: Math.max(slot.from, other.from), until: Math.min(slot.until, other.until) };
      if (both.until - both.from < 60) return;
      crew.push(one);
      slot = both;
    });
    // Somebody who is there all the time need not be left at home to have the whole day.
    if (crew.length === 1 || slot.from > own.from || slot.until < own.until) crews.push({ people: [at], slot: own });
    if (crew.length > 1) crews.push({ people: crew, slot });
  });
  const seen = new Set<string>();
  return crews.filter(({ people: crew, slot }) => {
    const key = `${[...crew].sort((a, b) => a - b).join(',')}|${slot.from}|${slot.until}`;
    return seen.size < seen.add(key).size;
  });
}

/**
 * Sets of yards that can be gone to in one outing, by their place in the list: each alone, and step by step one yard more on the
 * sets before, of each size those that save most of the driving of each yard by itself.
 */
export function yardSets(yards: readonly Yard[], driving: DrivingTimes): YardSet[] {
  const alone = new Map<number, number>();
  let size: YardSet[] = [];
  yards.forEach(({ id }, at) => {
    const tour = shortestTour([id], driving);
    if (tour === null) return;
    alone.set(at, tour.minutes);
    size.push({ yards: [at], tour });
  });
  const near = new Map([...alone.keys()].map((at) => [at, [...alone.keys()].filter((other) => other !== at)
    .map((other) => ({ other, way: driving.between(yards[at]?.id ?? -1 as YardId, yards[other]?.id ?? -1 as YardId) ?? Number.POSITIVE_INFINITY }))
    .toSorted((a, b) => a.way - b.way || a.other - b.other).slice(0, nearest).map(({ other }) => other)]));
  const sets = [...size];
  for (let many = 2; many <= mostYards; many += 1) {
    const next = new Map<string, YardSet & { readonly share: number }>();
    for (const { yards: set } of size) {
      for (const yard of new Set(set.flatMap((at) => near.get(at) ?? []))) {
        if (set.includes(yard)) continue;
        const grown = [...set, yard].toSorted((a, b) => a - b);
        const key = grown.join(',');
        if (next.has(key)) continue;
        const tour = shortestTour(grown.flatMap((at) => yards[at]?.id ?? []), driving);
        if (tour !== null) next.set(key, { yards: grown, tour, share: tour.minutes / Math.max(1, grown.reduce((sum, at) => sum + (alone.get(at) ?? 0), 0)) });
      }
    }
    size = [...next.values()].toSorted((a, b) => a.share - b.share || a.tour.minutes - b.tour.minutes).slice(0, many === 2 ? Math.max(mostSets, 2 * alone.size) : mostSets).map(({ yards: set, tour }) => ({ yards: set, tour }));
    sets.push(...size);
  }
  return sets;
}

/** Every outing that hours and daylight allow; `setUp`: minutes at each yard before the work begins. */
export function possibleOutings(yards: readonly Yard[], driving: DrivingTimes, hours: WorkHours, from: Day, days: number, setUp: number): PossibleOuting[] {
  const sets = yardSets(yards, driving);
  return Array.from({ length: days }, (_, at) => addDays(from, at)).flatMap((day, at) => {
    const light = daylightOn(day, hours.place);
    if (light === null) return [];
    return crewsOn(hours, day).flatMap((crew) => sets.flatMap((set) => {
      const made = outingOf(set, crew, light, at, yards, setUp);
      return made === null ? [] : [made];
    }));
  });
}

function outingOf(set: YardSet, { people, slot }: Crew, light: Daylight, day: number, yards: readonly Yard[], setUp: number): PossibleOuting | null {
  const { tour } = set;
  const begin = Math.max(slot.from + tour.out, light.sunrise);
  const end = Math.min(slot.until - tour.back, light.sunset);
  const stay = end - begin - tour.legs.reduce((sum, leg) => sum + leg, 0) - setUp * set.yards.length;
  if (stay < leastStay * set.yards.length) return null;
  const order = tour.yards.map((id) => set.yards.find((at) => yards[at]?.id === id) ?? -1);
  return { day, yards: order, crew: people, driving: tour.minutes, room: Math.floor(stay * people.length), tour, slot, begin, end };
}
