import { z } from 'zod';
import { read, write } from './operation.ts';
import { houseRule } from './order.ts';
import { nothing } from './values.ts';

/** A house rule as a line of the page that holds them all. */
export const ruleLine = houseRule.extend({
  /** What it changes in the program, in a short sentence. */
  affects: z.string(),
  changed: z.boolean(),
  /** True for a rule about treatments: the product's label goes before it. */
  treatment: z.boolean(),
});
export type RuleLine = z.infer<typeof ruleLine>;

export const ruleRoom = z.object({ key: z.string(), heading: z.string(), line: z.string(), rules: z.array(ruleLine) });
export type RuleRoom = z.infer<typeof ruleRoom>;

export const ruleBook = z.object({ rooms: z.array(ruleRoom) });
export type RuleBook = z.infer<typeof ruleBook>;

export const ruleOperations = {
  'rules.book': read(nothing, ruleBook),
  /** Sets every changed rule under a heading back to its default; answers their keys. */
  'rules.reset': write(z.strictObject({ room: z.string() }), z.object({ reset: z.array(z.string()) }), 'type the numbers again; each says its default'),
} as const;
