import { z } from 'zod';
import { amountUnits, columns } from '../entryForms.ts';
import { rowFault } from '../faults.ts';
import { file, importReport } from './book.ts';
import { meantItems } from './nearItems.ts';
import { read, write } from './operation.ts';
import { cells, kindValue } from './values.ts';

/** What a column of somebody's sheet becomes: a column of the exchange form (`entry`: it names the kind), or it is left out by choice. */
export const leftOut = 'left out';
const target = z.enum([...columns, leftOut]);
export type Target = z.infer<typeof target>;

export const mappedColumn = z.strictObject({
  header: z.string().max(400),
  /** Null as long as nobody has decided; such a column is asked about, never dropped. */
  becomes: target.nullable(),
  /** The unit of its figures, where they have one. */
  unit: z.enum(amountUnits).nullable(),
});
export type MappedColumn = z.infer<typeof mappedColumn>;

/** How one sheet is read as rows of the exchange form. */
export const sheetMapping = z.strictObject({
  /** The kind of every row; null while undecided, and where a column names it. */
  kind: kindValue.nullable(),
  columns: z.array(mappedColumn).max(1000),
  /** What is the same for every row because no column says it. */
  fixed: z.partialRecord(z.enum(columns), z.string().max(4000)),
  dateOrder: z.enum(['month-first', 'day-first']).nullable(),
  decimal: z.enum(['point', 'comma']).nullable(),
});
export type SheetMapping = z.infer<typeof sheetMapping>;

export const sheetQuestion = z.object({
  about: z.enum(['kind', 'column', 'twice', 'missing', 'dates', 'decimal', 'unit']),
  /** The header asked about, or the exchange column that nothing fills. */
  header: z.string().nullable(),
  column: z.enum(columns).nullable(),
  sentence: z.string(),
});
export type SheetQuestion = z.infer<typeof sheetQuestion>;

/** What the data say about an order of days or a decimal sign; `either` and `mixed` are asked. */
const dayFinding = z.enum(['none', 'clear', 'month-first', 'day-first', 'either', 'mixed']);
const decimalFinding = z.enum(['none', 'point', 'comma', 'either', 'mixed']);

export const sheetLook = z.object({
  sha256: z.string(),
  sheets: z.array(z.object({ name: z.string(), rows: z.number().int(), problem: z.string().nullable() })),
  sheet: z.string(),
  headerLine: z.number().int(),
  /** Texts that stand above the header and are not read. */
  above: z.array(z.string()),
  columns: z.array(z.object({ header: z.string(), filled: z.number().int(), samples: z.array(z.string()) })),
  mapping: sheetMapping,
  origin: z.enum(['guessed', 'saved', 'given']),
  days: dayFinding,
  /** Cells with a time of day, which the journal does not keep. */
  times: z.number().int(),
  decimal: decimalFinding,
  questions: z.array(sheetQuestion),
  /** The first ten rows as they will be read. */
  sample: z.array(z.object({ line: z.number().int(), cells, trouble: rowFault.nullable() })),
});
export type SheetLook = z.infer<typeof sheetLook>;

const choice = { file, sheet: z.string().max(200), mapping: sheetMapping, items: meantItems.optional() };

export const sheetOperations = {
  /** Looks at a spreadsheet: its sheets, and one of them by the mapping given, else by the one kept for its headers (unless `afresh`), else by a guess; with a `kind`, by a guess for that kind. */
  'sheets.look': read(z.strictObject({ file, sheet: z.string().max(200).optional(), mapping: sheetMapping.optional(), afresh: z.boolean().optional(), kind: kindValue.optional() }), sheetLook),
  /** Refused as long as a question is open. */
  'sheets.preview': read(z.strictObject(choice), importReport),
  /** Keeps the mapping in the book, too. Refused with `moved-on` when the file or the book is no longer the one previewed. */
  'sheets.enter': write(z.strictObject({ ...choice, sha256: z.string(), position: z.number().int() }), importReport, true),
} as const;

