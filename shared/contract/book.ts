import { z } from 'zod';
import { meantItems, newItem } from './nearItems.ts';
import { read, write } from './operation.ts';
import { dayValue, gestureId, kindValue, nothing, yardId } from './values.ts';

export const yardRow = z.object({
  id: yardId,
  code: z.string(),
  name: z.string(),
  /** Room for colonies, if known. */
  room: z.number().int().nullable(),
  /** Minutes from home, if known. */
  minutes: z.number().int().nullable(),
  living: z.number().int(),
});
export type YardRow = z.infer<typeof yardRow>;

export const openBook = z.object({
  path: z.string(),
  name: z.string(),
  /** Grows with every change; a screen that holds an older one refreshes. */
  position: z.number().int(),
  entries: z.number().int(),
  living: z.number().int(),
  yards: z.array(yardRow),
  firstDay: dayValue.nullable(),
  lastDay: dayValue.nullable(),
  dateOrder: z.enum(['month-first', 'day-first']),
  massUnit: z.enum(['lb', 'kg']),
  /** The invented demo: its "today" is the last day of its records. */
  demo: z.boolean(),
});
export type OpenBook = z.infer<typeof openBook>;

export const bookStatus = z.object({
  book: openBook.nullable(),
  /** The day records are judged by: the clock's, or the demo's own last day. */
  today: dayValue,
  folder: z.string(),
  books: z.array(z.object({ name: z.string(), path: z.string(), modified: z.string() })),
  program: z.string(),
});
export type BookStatus = z.infer<typeof bookStatus>;

/** A file handed over by a screen; at most 64 MiB of content as base64. */
export const file = z.strictObject({ name: z.string().max(300), base64: z.base64().max(90_000_000) });

const sortOut = z.object({ line: z.number().int(), column: z.string().nullable(), value: z.string(), sentence: z.string() });

export const importReport = z.object({
  file: z.string(),
  sha256: z.string(),
  read: z.number().int(),
  entered: z.number().int(),
  repeats: z.number().int(),
  /** Line numbers of the repeats, the first 1,000. */
  repeatLines: z.array(z.number().int()),
  toSortOut: z.array(sortOut),
  /** How many of them the book does not keep yet; entering the file keeps them. */
  toKeep: z.number().int(),
  /** The act that entered it; null while it is only looked at. */
  gesture: gestureId.nullable(),
  kinds: z.array(z.object({ kind: kindValue, rows: z.number().int() })),
  newYards: z.array(z.string()),
  firstDay: dayValue.nullable(),
  lastDay: dayValue.nullable(),
  /** Rows of days that are still to come, asked about before they are entered; at most 1,000 lines are named. */
  ahead: z.object({ rows: z.number().int(), lines: z.array(z.number().int()) }),
  /** Figures that are possible and out of the ordinary, the first 1,000; `rows` counts the rows that have one. */
  strange: z.object({ rows: z.number().int(), figures: z.array(z.object({ line: z.number().int(), sentence: z.string() })) }),
  /** New items that read almost like known ones; a screen asks which is meant before it enters the file. */
  newItems: z.array(newItem),
  /** Colonies alive after the last entry, with these rows in. */
  living: z.number().int(),
  /** The journal position that the preview was made at. */
  position: z.number().int(),
});
export type ImportReport = z.infer<typeof importReport>;

export const bookOperations = {
  'book.status': read(nothing, bookStatus),
  'book.create': write(z.strictObject({ name: z.string().trim().min(1).max(80) }), bookStatus, 'a new file; delete it to take it back'),
  'book.open': write(z.strictObject({ path: z.string().min(1).max(4096) }), bookStatus, 'changes no record'),
  'book.demo': write(z.strictObject({ which: z.enum(['ossar', 'tiny']) }), bookStatus, 'a new file of invented records'),
  'book.close': write(nothing, bookStatus, 'changes no record'),
  'book.check': read(
    nothing,
    z.object({
      sound: z.boolean(),
      findings: z.array(z.string()),
      entries: z.number().int(),
      refoldEqual: z.boolean(),
    }),
  ),
  'book.settings': write(
    z.strictObject({
      name: z.string().trim().min(1).max(80).optional(),
      dateOrder: z.enum(['month-first', 'day-first']).optional(),
      massUnit: z.enum(['lb', 'kg']).optional(),
    }),
    bookStatus,
    'set it back in the same place',
  ),
  'yard.keep': write(
    z.strictObject({
      /** Absent for a new yard. */
      id: yardId.optional(),
      code: z.string().trim().min(1).max(20),
      name: z.string().trim().min(1).max(80),
      room: z.number().int().min(0).max(10_000).nullable(),
      minutes: z.number().int().min(0).max(1440).nullable(),
    }),
    yardRow,
    'change it back in the same place',
  ),
  'import.preview': read(z.strictObject({ file, items: meantItems.optional() }), importReport),
  /** Items not spoken of in `items` are entered as they are written. Refused with `moved-on` when the file or the book is no longer the one previewed. */
  'import.enter': write(z.strictObject({ file, sha256: z.string(), position: z.number().int(), items: meantItems.optional() }), importReport, true),
  'export.journal': read(nothing, z.object({ fileName: z.string(), text: z.string(), rows: z.number().int() })),
} as const;
