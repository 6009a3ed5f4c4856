import type { YardId } from '#shared/brands.ts';
import type { YardDistance } from '#shared/contract/work.ts';
import type { Yard } from '#core/journal/yardBook.ts';

/** Minutes of driving from home to each yard and between yards; a yard without minutes from home cannot be planned for. */
export interface DrivingTimes {
  readonly fromHome: (yard: YardId) => number | null;
  /** As written down, else by way of home or along other ways that are written down, whichever is shorter. */
  readonly between: (a: YardId, b: YardId) => number | null;
}

export interface Tour {
  readonly yards: readonly YardId[];
  readonly out: number;
  /** Between the yards, in the order of driving. */
  readonly legs: readonly number[];
  readonly back: number;
  readonly minutes: number;
}

export function drivingTimes(yards: readonly Yard[], distances: readonly YardDistance[]): DrivingTimes {
  const home = new Map(yards.flatMap(({ id, minutes }) => (minutes === null ? [] : [[id, minutes] as const])));
  const known = new Map(distances.map(({ a, b, minutes }) => [pairKey(a, b), minutes]));
  const along = alongKnown(distances);
  return {
    fromHome: (yard) => home.get(yard) ?? null,
    between: (a, b) => {
      if (a === b) return 0;
      const written = known.get(pairKey(a, b));
      if (written !== undefined) return written;
      const [one, other] = [home.get(a), home.get(b)];
      return one === undefined || other === undefined ? null : Math.min(one + other, along.get(a)?.get(b) ?? Number.POSITIVE_INFINITY);
    },
  };
}

/** The shortest ways along those that are written down (Floyd 1962). */
function alongKnown(distances: readonly YardDistance[]): Map<YardId, Map<YardId, number>> {
  const ways = new Map<YardId, Map<YardId, number>>();
  const put = (a: YardId, b: YardId, minutes: number) => {
    const own = ways.get(a) ?? new Map<YardId, number>();
    ways.set(a, own.set(b, Math.min(minutes, own.get(b) ?? Number.POSITIVE_INFINITY)));
  };
  for (const { a, b, minutes } of distances) {
    put(a, b, minutes);
    put(b, a, minutes);
  }
  for (const through of ways.keys()) {
    for (const [from, own] of ways) {
      const first = own.get(through);
      if (first === undefined || from === through) continue;
      for (const [to, second] of ways.get(through) ?? []) if (to !== from) put(from, to, first + second);
    }
  }
  return ways;
}

/** The shortest way round from home through all of them, by trying every order; null where a way is not known. */
export function shortestTour(yards: readonly YardId[], { fromHome, between }: DrivingTimes): Tour | null {
  let best: Tour | null = null;
  for (const order of orders(yards)) {
    const [first, last] = [order[0], order.at(-1)];
    if (first === undefined || last === undefined) return null;
    const out = fromHome(first);
    const back = fromHome(last);
    const legs = order.slice(1).map((yard, at) => between(order[at] ?? yard, yard));
    if (out === null || back === null || legs.includes(null)) return null;
    const ways = legs as number[];
    const minutes = out + back + ways.reduce((sum, leg) => sum + leg, 0);
    if (best === null || minutes < best.minutes) best = { yards: order, out, legs: ways, back, minutes };
  }
  return best;
}

export function pairKey(a: YardId, b: YardId): string {
  return a < b ? `${a}-${b}` : `${b}-${a}`;
}

function* orders(yards: readonly YardId[]): Generator<YardId[]> {
  if (yards.length <= 1) {
    yield [...yards];
    return;
  }
  for (const first of yards) for (const rest of orders(yards.filter((yard) => yard !== first))) yield [first, ...rest];
}
