import { z } from 'zod';
import { columns } from '../entryForms.ts';
import { written } from './journal.ts';
import { read, write } from './operation.ts';
import { cells } from './values.ts';

/** One row of an imported file that could not stand, kept until it is entered. */
export const waitingRow = z.object({
  key: z.string(),
  file: z.string(),
  line: z.number().int(),
  /** Under the file's own name; null where the row as a whole is meant. */
  column: z.string().nullable(),
  value: z.string(),
  /** What is against it now, and what would mend it. */
  sentence: z.string(),
  /** The entry it would make as it was typed, in words, where nothing is against it any more. */
  ready: z.string().nullable(),
  aside: z.object({ reason: z.string(), at: z.string() }).nullable(),
});
export type WaitingRow = z.infer<typeof waitingRow>;

export const sortOutCounts = z.object({ waiting: z.number().int(), ready: z.number().int(), aside: z.number().int(), entered: z.number().int() });
export type SortOutCounts = z.infer<typeof sortOutCounts>;

/** Whether cells would stand, found by the computation that then enters them. */
export const rowJudgement = z.object({
  /** The entry in words; null where it would be refused. */
  says: z.string().nullable(),
  refusals: z.array(z.object({ column: z.string().nullable(), sentence: z.string() })),
});
export type RowJudgement = z.infer<typeof rowJudgement>;

const key = z.string().min(1).max(80);

export const sortOutOperations = {
  'sortOut.counts': read(z.strictObject({}), sortOutCounts),
  /** Rows in the order of their files and lines, from a place on. */
  'sortOut.list': read(
    z.strictObject({ which: z.enum(['waiting', 'aside']), from: z.number().int().min(0), limit: z.number().int().min(1).max(500) }),
    z.object({ counts: sortOutCounts, total: z.number().int(), rows: z.array(waitingRow) }),
  ),
  'sortOut.row': read(
    z.strictObject({ key }),
    z.object({ row: waitingRow, cells: z.partialRecord(z.enum(columns), z.string()), typed: z.array(z.object({ column: z.string(), value: z.string() })) }),
  ),
  'sortOut.judge': read(z.strictObject({ key, cells }), rowJudgement),
  /** Enters a row as mended; it waits again when that is undone. */
  'sortOut.enter': write(z.strictObject({ key, cells }), written, true),
  /** Enters every row that can stand as it was typed, in one act. */
  'sortOut.enterReady': write(z.strictObject({}), written, true),
  'sortOut.setAside': write(z.strictObject({ key, reason: z.string().trim().min(1).max(500) }), sortOutCounts, 'bring it back in the same place'),
  'sortOut.bringBack': write(z.strictObject({ key }), sortOutCounts, 'set it aside in the same place'),
} as const;
