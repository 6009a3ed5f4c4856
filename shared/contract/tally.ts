import { z } from 'zod';
import { needKeys, needSource } from './needs.ts';
import { read } from './operation.ts';
import { dayValue, interval, nothing } from './values.ts';

const count = z.number().int();

/** So many of so many, with the 95 % interval of the share; none where there is nothing to take a share of. */
export const tallyShare = z.object({ count, of: count, interval: interval.nullable() });
export type TallyShare = z.infer<typeof tallyShare>;

/** What the past seasons say of a rule; `words` alone where they say too little. */
export const tallyVerdicts = ['bore out', 'against', 'nothing came', 'open', 'few', 'no harm looked for', 'never asked'] as const;
export type TallyVerdict = (typeof tallyVerdicts)[number];

export const ruleTally = z.object({
  rule: z.enum(needKeys),
  title: z.string(),
  why: z.string(),
  /** `colony`: each colony once a season; `time`: each time that it asked. */
  per: z.enum(['colony', 'time']),
  asked: count,
  /** In time, of those that were not let fall by a later record. */
  answered: tallyShare,
  /** After its last day, within a month. */
  late: count,
  /** Not answered, and a later record asked for it no more. */
  fell: count,
  /** What answers it: kinds of entries. */
  answers: z.array(z.string()),
  /** The harm that was looked for afterwards, in words. */
  harm: z.string().nullable(),
  /** Of those answered in time, and of those not, how many came to harm; where what became of them is known. */
  done: tallyShare.nullable(),
  left: tallyShare.nullable(),
  /** Of the colonies that it did not ask for in a season, how many were lost in its winter; where that is the harm. */
  others: tallyShare.nullable(),
  /** Of all that came to that harm, for how many it had asked before. */
  foretold: tallyShare.nullable(),
  verdict: z.enum(tallyVerdicts),
  says: z.string(),
  /** The house rules that it goes by. */
  sources: z.array(needSource),
  /** Where they stand on the page of house rules. */
  rooms: z.array(z.object({ key: z.string(), heading: z.string() })),
});
export type RuleTally = z.infer<typeof ruleTally>;

export const needsTally = z.object({
  /** `running`: ask again; `moved`: the book was changed meanwhile, ask again. */
  state: z.enum(['running', 'done', 'moved', 'nothing']),
  /** Weeks gone through, of so many. */
  weeks: count,
  of: count,
  /** The seasons that are over and were gone through, as people write them. */
  seasons: z.array(z.string()),
  from: dayValue.nullable(),
  until: dayValue.nullable(),
  /** Said once: what the comparison cannot tell. */
  caveat: z.string(),
  rules: z.array(ruleTally),
});
export type NeedsTally = z.infer<typeof needsTally>;

export const tallyOperations = {
  /** How the rules have done in the seasons that are over. Works in the background: the first answer comes at once. */
  'needs.tally': read(nothing, needsTally),
} as const;
