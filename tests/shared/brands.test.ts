import { expect, test } from 'vitest';
import type { ColonyId, EntryId, Grams, Millilitres, Minor, YardId } from '#shared/brands.ts';
import { day, daysBetween, type Day } from '#shared/days.ts';

// The compiler is the test here: each line below it must not compile, and `npm run types` fails if one does.
const colony = 1 as ColonyId;
const mass = 2 as Grams;

test('what must not be mixed cannot be', () => {
  // @ts-expect-error a colony's id is no yard's id
  const yard: YardId = colony;
  // @ts-expect-error a colony's id is no entry's id
  const entry: EntryId = colony;
  // @ts-expect-error a bare number is no id
  const bare: ColonyId = 3;
  // @ts-expect-error grams are no millilitres
  const volume: Millilitres = mass;
  // @ts-expect-error grams are no money
  const money: Minor = mass;
  // @ts-expect-error any text is no day
  const of: Day = '2025-04-19';
  // @ts-expect-error nor is a Date
  expect(() => daysBetween(day('2025-04-19'), new Date(0))).toThrow(TypeError);
  expect([yard, entry, bare, volume, money, of]).toHaveLength(6);
});
