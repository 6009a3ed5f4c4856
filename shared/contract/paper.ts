import { z } from 'zod';
import { groupingValue } from './lossSections.ts';
import { read } from './operation.ts';
import { dayValue, unitedValue } from './values.ts';

const count = z.number().int();

/**
 * A column's unit: shares are from 0 to 1 in a file and per cent on paper; a day is `YYYY-MM-DD`; a figure is words
 * made of numbers. `only`: on paper, where a rate stands with its count and range in one cell, or in the file, where
 * each number has a column of its own.
 */
export const paperColumn = z.object({ label: z.string(), unit: z.enum(['text', 'figure', 'count', 'share', 'day', 'number']), only: z.enum(['paper', 'file']).optional() });
export type PaperColumn = z.infer<typeof paperColumn>;
export type PaperCell = string | number | null;

export const paperTable = z.object({
  key: z.string(),
  title: z.string(),
  columns: z.array(paperColumn),
  rows: z.array(z.array(z.union([z.string(), z.number(), z.null()]))),
  /** The last row is the sum of the others, or stands for all of them. */
  totals: z.boolean(),
  /** False: in the file only; on paper a picture says it. */
  onPaper: z.boolean(),
  /** On paper the first column stands as a head above the rows that share it. */
  grouped: z.boolean().optional(),
});
export type PaperTable = z.infer<typeof paperTable>;

export const looks = ['axis', 'grid', 'band', 'line', 'line-dashed', 'line-dotted', 'line-dashdot', 'line-long', 'tick', 'dot', 'dot-all', 'label', 'name'] as const;

/** One mark of a drawing, in pixels from the upper left; paths as SVG writes them. Black on white wherever it is shown. */
export const paperMark = z.discriminatedUnion('tag', [
  z.object({ tag: z.literal('path'), d: z.string(), look: z.enum(looks) }),
  z.object({ tag: z.literal('circle'), cx: z.number(), cy: z.number(), r: z.number(), look: z.enum(looks) }),
  z.object({ tag: z.literal('text'), x: z.number(), y: z.number(), text: z.string(), anchor: z.enum(['start', 'middle', 'end']), look: z.enum(looks) }),
]);
export type PaperMark = z.infer<typeof paperMark>;

export const paperDrawing = z.object({
  /** What it shows, for those who do not see it. */
  name: z.string(),
  width: z.number(),
  height: z.number(),
  marks: z.array(paperMark),
});
export type PaperDrawing = z.infer<typeof paperDrawing>;

export const paperPart = z.object({
  key: z.string(),
  /** Empty where it follows the head of its section at once. */
  title: z.string(),
  sentences: z.array(z.string()),
  drawings: z.array(paperDrawing),
  tables: z.array(paperTable),
  /** How it was counted, in small print. */
  notes: z.array(z.string()),
});
export type PaperPart = z.infer<typeof paperPart>;

/** A numbered section of the review; `number` is its place there, as on the screen. */
export const paperSection = z.object({ key: z.string(), number: count, title: z.string(), parts: z.array(paperPart) });
export type PaperSection = z.infer<typeof paperSection>;

export const reviewPaper = z.object({
  asOf: dayValue,
  title: z.string(),
  seasons: z.array(z.object({ season: count, name: z.string() })),
  season: count,
  sections: z.array(paperSection),
});
export type ReviewPaper = z.infer<typeof reviewPaper>;

const asked = {
  season: count.min(1900).max(2200).optional(),
  united: unitedValue,
  /** A grouping whose curves are wanted beside the usual ones. */
  by: groupingValue.optional(),
};

export const paperOperations = {
  /** The season review as it goes on paper. */
  'losses.paper': read(z.strictObject(asked), reviewPaper),
  /** Each table of the review as a CSV file. */
  'losses.files': read(z.strictObject(asked), z.object({ files: z.array(z.object({ name: z.string(), title: z.string(), rows: count, text: z.string() })) })),
  /** The report of the open book: review, account and order, as the command line prints it. */
  'losses.report': read(
    z.strictObject({
      season: asked.season,
      united: unitedValue.optional(),
      by: asked.by,
      format: z.enum(['text', 'json', 'html']),
      asOf: dayValue.optional(),
      target: count.min(0).max(100_000).optional(),
      confidence: z.number().min(0.5).max(0.999).optional(),
    }),
    z.object({ name: z.string(), text: z.string() }),
  ),
} as const;
