import { splitsFrom, type OrderProblem } from './orderProblem.ts';

/** Where splits and bought colonies stand in a middling spring, yard by yard. */
export interface Placement {
  readonly splits: readonly number[];
  readonly placed: readonly number[];
  readonly out: readonly number[];
  readonly into: readonly number[];
}

/** What the yards allow: places for new colonies, and splits that can stay where they are made. Infinity: no limit. */
export interface YardLimits {
  readonly places: number;
  readonly staying: number;
}

/** A yard that is over-full already need not be emptied. */
function freePlaces({ survivors, room }: OrderProblem['yards'][number]): number {
  return room === null ? Infinity : Math.max(0, room - survivors);
}

/**
 * Splits and bought colonies may go to any yard, so only two sums matter: all of them find room while they are no more
 * than the free places, and a split is moved only where more are made than can stay, each in a yard that gives it.
 */
export function yardLimits({ yards, splits }: OrderProblem): YardLimits {
  return yards.reduce<YardLimits>((sum, yard) => ({
    places: sum.places + freePlaces(yard), staying: sum.staying + Math.min(freePlaces(yard), splitsFrom(yard.survivors, splits.perSurvivor)),
  }), { places: 0, staying: 0 });
}

/** One way to place so many with the fewest moves: splits stay first, spread evenly; the rest goes where most room is left. */
export function placeColonies(problem: OrderProblem, splits: number, bought: number): Placement {
  const yards = problem.yards.map((yard) => ({ free: freePlaces(yard), cap: splitsFrom(yard.survivors, problem.splits.perSurvivor), splits: 0, placed: 0, out: 0, into: 0 }));
  const best = (worth: (yard: (typeof yards)[number]) => number) => yards.reduce<(typeof yards)[number] | null>((found, yard) => (worth(yard) > 0 && (found === null || worth(yard) > worth(found)) ? yard : found), null);
  const free = (yard: (typeof yards)[number]) => yard.free - (yard.splits - yard.out) - yard.placed - yard.into;
  for (let made = 0; made < splits; made += 1) {
    const stays = best((yard) => Math.min(yard.cap - yard.splits, free(yard)));
    if (stays !== null) {
      stays.splits += 1;
      continue;
    }
    const [from, to] = [best((yard) => yard.cap - yard.splits), best(free)];
    if (from === null || to === null) throw new Error('more splits than the yards hold');
    from.splits += 1;
    from.out += 1;
    to.into += 1;
  }
  for (let came = 0; came < bought; came += 1) {
    const yard = best(free);
    if (yard === null) throw new Error('more colonies than the yards hold');
    yard.placed += 1;
  }
  return { splits: yards.map((yard) => yard.splits), placed: yards.map(({ placed }) => placed), out: yards.map(({ out }) => out), into: yards.map(({ into }) => into) };
}
