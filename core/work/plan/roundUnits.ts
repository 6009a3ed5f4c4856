import type { Round } from './planProblem.ts';

/** A unit of a round as it comes due: by which day it was to be seen, and the day on which it is; null where it never is. */
export interface RoundUnit {
  readonly due: number;
  readonly on: number | null;
}

/** Every unit of a round in a plan, in the order in which they are seen; behind those, what is due at its end. */
export function roundUnits({ due, again }: Pick<Round, 'due' | 'again'>, done: ReadonlyMap<number, number>): RoundUnit[] {
  const queue = [...due];
  const seen: RoundUnit[] = [];
  for (const [day, many] of [...done].toSorted(([a], [b]) => a - b)) {
    for (let unit = 0; unit < many; unit += 1) {
      const first = queue.shift();
      if (first !== undefined) seen.push({ due: first, on: day });
      queue.push(again[day] ?? Number.POSITIVE_INFINITY);
    }
  }
  return [...seen, ...queue.map((last) => ({ due: last, on: null }))];
}
