import { z } from 'zod';
import { colonyId, dayValue, kindValue, nothing, yardId } from './values.ts';
import { read } from './operation.ts';
import { houseRule } from './order.ts';

const count = z.number().int();
/** Grams and millilitres, as everywhere on the wire. */
const grams = z.number();
const millilitres = z.number();

export const restsOn = z.object({ kind: kindValue, day: dayValue });
export const colonyName = z.object({ id: colonyId, label: z.string() });

const supersToTake = z.object({
  count,
  /** "2 mediums" */
  words: z.string(),
  say: z.enum(['take', 'take and feed', 'leave', 'look first']),
  leaveInstead: count,
  reason: z.string(),
});

export const storesColony = colonyName.extend({
  told: z.object({ grams, day: dayValue, from: z.enum(['weight', 'frames']), age: count }).nullable(),
  /** Syrup given since, as stores; `notReckoned`: feedings that are in no figure. */
  fed: z.object({ times: count, grams, notReckoned: count }),
  /** What is reckoned to be there; null where nothing that holds was told. */
  reckoned: grams.nullable(),
  /** What it is judged against: the winter's target, or what its combs hold if that is less; null outside autumn. */
  target: grams.nullable(),
  say: z.enum(['take', 'leave', 'feed', 'look first', 'not told']),
  /** To take or short; 0 if neither. */
  amount: grams,
  /** In winter: what it lacked of its winter stores by the last word told; null where it lacked nothing. */
  wentShort: grams.nullable(),
  feed: z.object({ mix: z.enum(['heavy', 'light']), volume: millilitres, sugar: grams }).nullable(),
  reason: z.string(),
  rests: restsOn.nullable(),
  supers: supersToTake.nullable(),
});
export type StoresColony = z.infer<typeof storesColony>;

const storesTotals = z.object({
  colonies: count,
  /** Of how many something that holds was told. */
  told: count,
  take: count,
  leave: count,
  feed: count,
  /** Looked into first, or never told. */
  unknown: count,
  short: grams,
  /** In winter: how many lacked something of their winter stores by the last word told, low by now or not. */
  wentShort: count,
  heavy: millilitres,
  light: millilitres,
  sugar: grams,
  /** Boxes that may be taken off, with or without feeding. */
  supers: count,
});
export type StoresTotals = z.infer<typeof storesTotals>;

const uniteView = z.object({
  colony: colonyName,
  queenless: z.boolean(),
  reason: z.string(),
  partner: colonyName.extend({ reason: z.string() }).nullable(),
});

export const storesYard = z.object({ id: yardId, code: z.string(), name: z.string(), totals: storesTotals, colonies: z.array(storesColony), unite: z.array(uniteView) });
export type StoresYard = z.infer<typeof storesYard>;

export const storesList = z.object({
  asOf: dayValue,
  phase: z.enum(['summer', 'autumn', 'winter']),
  place: z.enum(['south', 'middle', 'north']),
  /** The winter's target of the place. */
  target: grams,
  /** The last day for heavy syrup, in the season of the day, and the days there are until then; below 0 once it is past. */
  feedBy: dayValue,
  daysLeft: count,
  /** The next day on which stores are set against the target, where they are not now. */
  autumnFrom: dayValue,
  /** From when, and until when, weak colonies are named. */
  uniteFrom: dayValue,
  uniteUntil: dayValue,
  takeFrom: dayValue,
  totals: storesTotals,
  /** Those with colonies, by code. */
  yards: z.array(storesYard),
  sentence: z.string(),
  lifting: z.string(),
  rules: z.array(houseRule),
});
export type StoresList = z.infer<typeof storesList>;

export const winterItemValue = z.enum(['fed', 'mites', 'queen', 'strength', 'reduce', 'wrap', 'dry']);
const winterLine = z.object({ item: winterItemValue, state: z.enum(['done', 'to do', 'short', 'not told']), words: z.string(), rests: restsOn.nullable() });
export type WinterLineView = z.infer<typeof winterLine>;

export const winterYard = z.object({ id: yardId, code: z.string(), name: z.string(), colonies: z.array(colonyName.extend({ lines: z.array(winterLine) })) });

export const storesOperations = {
  /** Stores of every colony that lives, by yard, with what is short, may be taken, or is not told. */
  'stores.list': read(nothing, storesList),
  /** What every colony is made ready with for the winter of the season, by yard. `from`: nothing told before that day counts; `began`: whether it is here; `feedBy`: the last day for heavy syrup. */
  'stores.winter': read(nothing, z.object({ asOf: dayValue, from: dayValue, feedBy: dayValue, began: z.boolean(), yards: z.array(winterYard) })),
} as const;
