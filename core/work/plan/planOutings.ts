import type { YardId } from '#shared/brands.ts';
import type { WorkHours, WorkSlot, Worker } from '#shared/contract/work.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { daylightOn } from '../daylight.ts';
import { shortestTour, type DrivingTimes, type Tour } from '../drivingTimes.ts';
import { slotOn } from '../workHours.ts';
import type { OutingChoice } from './planProblem.ts';

interface Wanted {
  readonly today: Day;
  readonly days: number;
  readonly yards: readonly Yard[];
  readonly ways: DrivingTimes;
  readonly hours: WorkHours;
  readonly setUp: number;
  /** Day and yard, as `3/1`, where nobody is to go. */
  readonly shut: ReadonlySet<string>;
  readonly crewMost: number;
}

/** An outing with less at the hives than this is none. */
const fewest = 5;
/** From so many yards on, only near neighbours are driven together. */
const manyYards = 8;
const neighbours = 3;

/** Every outing that the hours, the daylight and the ways leave, and when the bees can be worked on it. */
export function outingsOf({ today, days, yards, ways, hours, setUp, shut, crewMost }: Wanted): { outings: OutingChoice[]; times: WorkSlot[]; remarks: string[] } {
  const tours = toursOf(yards, ways);
  const place = new Map(yards.map(({ id }, at) => [id, at]));
  const outings: OutingChoice[] = [];
  const times: WorkSlot[] = [];
  let [dark, free] = [0, 0];
  for (let day = 0; day < days; day += 1) {
    const on = addDays(today, day);
    const crews = crewsOn(hours.people, on, crewMost);
    if (crews.length === 0) continue;
    free += 1;
    const light = daylightOn(on, hours.place);
    const before = outings.length;
    for (const { crew, slot } of light === null ? [] : crews) {
      for (const tour of tours) {
        const own = tour.yards.map((yard) => place.get(yard) ?? 0);
        if (own.some((yard) => shut.has(`${day}/${yard}`))) continue;
        const [from, until] = [Math.max(slot.from + tour.out, light?.sunrise ?? 0), Math.min(slot.until - tour.back, light?.sunset ?? 0)];
        const room = crew.length * (until - from - tour.legs.reduce((sum, leg) => sum + leg, 0) - setUp * own.length);
        if (room < fewest) continue;
        outings.push({ day, yards: own, crew, driving: tour.minutes, room });
        times.push({ from, until });
      }
    }
    if (outings.length === before) dark += 1;
  }
  const remarks: string[] = [];
  if (free === 0) remarks.push('Nobody has hours in these weeks. Write down when you can work.');
  else if (dark > 0) remarks.push(`On ${dark} of ${free} days with hours they do not reach for driving and for work by daylight.`);
  return { outings, times, remarks };
}

/** One person who may go alone, two together, and all of them where so many are asked for. */
function crewsOn(people: readonly Worker[], day: Day, most: number): { crew: number[]; slot: WorkSlot }[] {
  const here = people.flatMap((worker, at) => {
    const slot = slotOn(worker, day);
    return slot === null ? [] : [{ at, alone: worker.alone, slot }];
  });
  const sets = [...here.filter(({ alone }) => alone).map((one) => [one])];
  if (here.length > 1) for (const [at, one] of here.entries()) for (const other of here.slice(at + 1)) sets.push([one, other]);
  if (here.length > 2 && most > 2) sets.push(here);
  return sets.flatMap((set) => {
    const slot = { from: Math.max(...set.map((one) => one.slot.from)), until: Math.min(...set.map((one) => one.slot.until)) };
    return slot.from < slot.until ? [{ crew: set.map(({ at }) => at), slot }] : [];
  });
}

function toursOf(yards: readonly Yard[], ways: DrivingTimes): Tour[] {
  const near = new Map(yards.map(({ id }) => [id, new Set(yards.filter((other) => other.id !== id)
    .toSorted((a, b) => (ways.between(id, a.id) ?? 0) - (ways.between(id, b.id) ?? 0)).slice(0, yards.length > manyYards ? neighbours : yards.length).map((other) => other.id))]));
  const close = (a: YardId, b: YardId) => near.get(a)?.has(b) === true || near.get(b)?.has(a) === true;
  const sets: YardId[][] = [];
  yards.forEach(({ id: a }, at) => {
    sets.push([a]);
    yards.slice(at + 1).forEach(({ id: b }, next) => {
      if (!close(a, b)) return;
      sets.push([a, b]);
      for (const { id: c } of yards.slice(at + next + 2)) if (close(a, c) && close(b, c)) sets.push([a, b, c]);
    });
  });
  return sets.flatMap((set) => shortestTour(set, ways) ?? []);
}
