import { z } from 'zod';
import { causes } from '../entryForms.ts';
import { deadOutSignNames } from '../deadOut.ts';
import { read } from './operation.ts';
import { cells, colonyId, dayValue, endingValue, entryId } from './values.ts';

const sign = z.enum(deadOutSignNames);
const cause = z.enum(causes);

export const deadOutPlace = z.object({
  id: colonyId,
  label: z.string(),
  yardName: z.string(),
  how: endingValue,
  end: dayValue.nullable(),
  /** The loss that is recorded, as the exchange form writes it; null while it lives. */
  loss: z.object({ entry: entryId, cells, causes: z.array(cause), words: z.string(), signs: z.array(sign) }).nullable(),
  /** Why a look can not be written down: it was sold, united and so on; null where it can. */
  closed: z.string().nullable(),
  /** What the book knows of its last months. */
  record: z.array(z.string()),
});
export type DeadOutPlace = z.infer<typeof deadOutPlace>;

export const deadOutJudgement = z.object({
  stop: z.object({ caution: z.string(), why: z.string(), seen: z.array(sign) }).nullable(),
  suggestions: z.array(
    z.object({
      cause,
      weight: z.enum(['strong', 'weak']),
      reasons: z.array(z.object({ sentence: z.string(), seen: z.array(sign), source: z.string().nullable(), footing: z.string() })),
    }),
  ),
  remarks: z.array(z.string()),
});
export type DeadOutJudgement = z.infer<typeof deadOutJudgement>;

export const deadOutOperations = {
  /** The colony whose dead-out is looked at, with what an earlier look saw. */
  'deadOut.open': read(z.strictObject({ id: colonyId }), deadOutPlace),
  /** What signs speak for. Decides and writes nothing. */
  'deadOut.judge': read(z.strictObject({ signs: z.array(sign).max(deadOutSignNames.length) }), deadOutJudgement),
} as const;
