import { z } from 'zod';
import { markMeanings } from '../roundMarks.ts';
import { roundColumns, roundKinds } from '../roundSheets.ts';
import { queenView } from './journal.ts';
import { read, write } from './operation.ts';
import { plannedSheet } from './trips.ts';
import { colonyId, dayValue, nothing, yardId } from './values.ts';

const kind = z.enum(roundKinds);
export const roundMarks = z.partialRecord(z.enum(markMeanings), z.string().max(40));

export const roundSetting = z.object({
  season: z.number().int(),
  /** The kind that was chosen for this day, else the planned one, else that of the round that was open last in this yard. */
  kind,
  /** The columns of each kind, in the sheet's order: the person's own for this yard and season, else those of the last season that has some, else the standard ones. */
  columns: z.record(kind, z.array(z.enum(roundColumns))),
  /** Only the marks that the person changed. */
  marks: roundMarks,
  /** The sheet for what is planned there that day; null where nothing is that belongs on one. */
  planned: plannedSheet.nullable(),
  /** What is planned for the yard as a whole that day, and how the round’s work says that it was done. */
  yardWork: z.array(z.object({ what: z.string(), task: z.string() })),
  massUnit: z.enum(['lb', 'kg']),
});
export type RoundSetting = z.infer<typeof roundSetting>;

export const paperRow = z.object({
  colony: colonyId,
  label: z.string(),
  queen: queenView.nullable(),
  /** Whole years since the year she hatched; null if it is not known. */
  queenAge: z.number().int().nullable(),
  /** What was found last, in words; null if nothing is recorded. */
  last: z.object({ day: dayValue, sentence: z.string() }).nullable(),
  /** What to look for, each with the record it rests on. */
  cues: z.array(z.string()),
});
export type PaperRow = z.infer<typeof paperRow>;

export const roundOperations = {
  'rounds.setting': read(z.strictObject({ yard: yardId, day: dayValue }), roundSetting),
  /** Keeps which kind of round was open, and with `columns` what it asks in this yard and season (null: the standard ones again). */
  'rounds.layout': write(z.strictObject({ yard: yardId, day: dayValue, kind, columns: z.array(z.enum(roundColumns)).min(1).nullable().optional() }), nothing, 'choose again'),
  /** The marks that differ from the standard ones; none restores those. Refused when two would mean the same cell's text. */
  'rounds.marks': write(z.strictObject({ marks: roundMarks }), nothing, 'change them back in the same place'),
  /** What stands on the sheet that goes into the yard. */
  'rounds.paper': read(
    z.strictObject({ yard: yardId, day: dayValue }),
    z.object({ yard: z.object({ id: yardId, code: z.string(), name: z.string() }), day: dayValue, rows: z.array(paperRow) }),
  ),
} as const;
