import { z } from 'zod';
import { needSource } from './needs.ts';
import { read } from './operation.ts';
import { colonyName, restsOn } from './stores.ts';
import { dayValue, nothing, yardId } from './values.ts';

const count = z.number().int();

export const spaceColony = colonyName.extend({
  need: z.object({
    say: z.enum(['add', 'watch', 'enough', 'look first', 'not told', 'out of season']),
    add: z.object({ box: z.enum(['deep', 'medium']), count }).nullable(),
    bees: z.number().nullable(),
    /** All combs of the hive as deep frames. */
    room: z.number().nullable(),
    look: dayValue.nullable(),
    reason: z.string(),
    rests: restsOn.nullable(),
  }),
  /** Null outside swarm season. */
  risk: z
    .object({
      level: z.enum(['high', 'some', 'low']),
      points: z.number(),
      reasons: z.array(z.object({ words: z.string(), points: z.number(), rule: z.string(), rests: restsOn.nullable() })),
      unknown: z.array(z.string()),
      nextLook: dayValue,
      lastLook: dayValue.nullable(),
    })
    .nullable(),
  split: z.object({ bees: z.number(), brood: z.number(), look: dayValue, ways: z.array(z.enum(['mated', 'cell', 'walk-away'])), reason: z.string() }).nullable(),
});
export type SpaceColony = z.infer<typeof spaceColony>;

/** Boxes wanted, and where sound ones lie: in the yard, then in the shed; `lack`: neither, null where no stock row names the box. */
const boxCount = z.object({ box: z.enum(['deep', 'medium']), frames: z.union([z.literal(8), z.literal(10)]), wanted: count, inYard: count, fromShed: count, lack: count.nullable() });

export const spaceYard = z.object({ id: yardId, code: z.string(), name: z.string(), colonies: z.array(spaceColony), boxes: z.array(boxCount) });
export type SpaceYard = z.infer<typeof spaceYard>;

export const spaceList = z.object({
  asOf: dayValue,
  adding: z.object({ now: z.boolean(), from: dayValue, until: dayValue }),
  swarming: z.object({ now: z.boolean(), from: dayValue, until: dayValue }),
  splits: z.object({
    from: dayValue,
    frost: dayValue,
    latest: z.array(z.object({ way: z.enum(['mated', 'cell', 'walk-away']), day: dayValue, eggs: count, past: z.boolean() })),
  }),
  /** Those with colonies, by code. */
  yards: z.array(spaceYard),
  /** Sound boxes in the shed before anything is taken from it; null where no stock row names it yet. */
  shed: z.array(z.object({ box: z.enum(['deep', 'medium']), frames: z.union([z.literal(8), z.literal(10)]), free: count.nullable() })),
  sentence: z.string(),
  /** Before anybody lifts a box to put another below it. */
  lifting: z.string(),
  /** The house rules of room, swarm risk and splits, as they are set. */
  sources: z.array(needSource),
});
export type SpaceList = z.infer<typeof spaceList>;

export const spaceOperations = {
  /** Room, swarm risk and splits of every colony that lives, by yard. */
  'space.list': read(nothing, spaceList),
} as const;
