import { z } from 'zod';

const cell = z.union([z.number(), z.string(), z.null()]);

const dataset = z.object({ columns: z.record(z.string(), z.array(cell)) });

const goldenCase = z.object({
  id: z.string(),
  method: z.string(),
  dataset: z.string().nullish(),
  input: z.record(z.string(), z.unknown()),
  expected: z.unknown(),
});

const goldenFile = z.object({
  datasets: z.record(z.string(), dataset).default({}),
  cases: z.array(goldenCase),
});

/** Columns of a data set: numbers, text, or null for a missing value. */
export type Columns = Readonly<Record<string, readonly (number | string | null)[]>>;
export type GoldenCase = z.infer<typeof goldenCase>;
export type GoldenFile = z.infer<typeof goldenFile>;

/** Reads the text of a golden file; throws an Error whose sentence says what is wrong with it. */
export function parseGoldenFile(text: string): GoldenFile {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw new Error(`The file is not JSON: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
  }
  const parsed = goldenFile.safeParse(json);
  if (parsed.success) return parsed.data;
  throw new Error(`The file does not have the form of a golden file: ${z.prettifyError(parsed.error)}`);
}

/** The columns a case works on; throws if it names a data set the file does not have. */
export function columnsOf(file: GoldenFile, of: GoldenCase): Columns {
  if (of.dataset === undefined || of.dataset === null) return {};
  const found = file.datasets[of.dataset];
  if (found === undefined) throw new Error(`the file has no data set named ${of.dataset}`);
  return found.columns;
}
