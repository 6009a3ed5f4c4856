import { expect, test } from 'vitest';
import { drivingTimes, shortestTour } from '#core/work/drivingTimes.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import type { YardId } from '#shared/brands.ts';

const [a, b, c] = [1, 2, 3] as YardId[];
const yards = [[a, 30], [b, 40], [c, 45]].map(([id, minutes]) => ({ id, minutes })) as unknown as Yard[];

test('what is not written down goes by home or along what is, whichever is shorter', () => {
  if (a === undefined || b === undefined || c === undefined) throw new Error('three yards');
  const bare = drivingTimes(yards, []);
  expect(bare.between(a, c)).toBe(75);
  const ways = drivingTimes(yards, [{ a, b, minutes: 12 }, { a: c, b, minutes: 20 }]);
  expect([ways.between(a, b), ways.between(b, c), ways.between(a, c), ways.between(c, a), ways.between(a, a)]).toEqual([12, 20, 32, 32, 0]);
  // A way that is written down holds, even where a detour would be shorter.
  expect(drivingTimes(yards, [{ a, b, minutes: 12 }, { a: b, b: c, minutes: 20 }, { a, b: c, minutes: 60 }]).between(a, c)).toBe(60);
  // So no round gets shorter by one yard more.
  expect(shortestTour([a, c], ways)?.minutes).toBe(30 + 32 + 45);
  expect(shortestTour([a, b, c], ways)?.minutes).toBe(30 + 12 + 20 + 45);
});
