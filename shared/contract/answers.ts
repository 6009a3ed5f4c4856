import { z } from 'zod';
import { read } from './operation.ts';
import { dayValue } from './values.ts';

const count = z.number().int();

/** One answer: a count, or a line of text made of counts; where the record does not know, `text` is empty and `why` says so. */
export const answerCell = z.object({ value: count.nullable(), text: z.string(), why: z.string().nullable() });
export type AnswerCell = z.infer<typeof answerCell>;

export const answerRow = z.object({ key: z.string(), label: z.string(), definition: z.string(), cells: z.array(answerCell) });
export type AnswerRow = z.infer<typeof answerRow>;

export const answerSheet = z.object({
  key: z.enum(['turnover', 'wintering', 'quarter']),
  title: z.string(),
  /** Which published definition it follows, with its citation. */
  source: z.string(),
  /** The days it is about, in words, with “so far” while they run. */
  when: z.string(),
  running: z.boolean(),
  columns: z.array(z.string()),
  rows: z.array(answerRow),
  /** What stands behind the counts, and what the record does not know. */
  remarks: z.array(z.string()),
});
export type AnswerSheet = z.infer<typeof answerSheet>;

export const quarterValue = z.object({ year: count, quarter: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]) });

export const answerSheets = z.object({
  asOf: dayValue,
  seasons: z.array(z.object({ season: count, name: z.string(), complete: z.boolean() })),
  season: count,
  quarters: z.array(quarterValue.extend({ name: z.string(), complete: z.boolean() })),
  quarter: quarterValue,
  sheets: z.array(answerSheet),
});
export type AnswerSheets = z.infer<typeof answerSheets>;

export const answerOperations = {
  /** The counts that public loss surveys ask for. Without a season or quarter: the last ones that are over. */
  'losses.answers': read(z.strictObject({ season: count.min(1900).max(2200).optional(), quarter: quarterValue.optional() }), answerSheets),
} as const;
