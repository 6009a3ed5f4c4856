import type { SurvivalSpans } from '#core/stats/survivalSpans.ts';
import type { Columns } from './goldenFile.ts';

/** A column of numbers; throws if it is missing or a value is not a number. */
export function numbers(columns: Columns, name: string): readonly number[] {
  return column(columns, name).map((value, row) => {
    if (typeof value !== 'number') throw new Error(`column ${name}, row ${row}: ${String(value)} is not a number`);
    return value;
  });
}

export function column(columns: Columns, name: string): readonly (number | string | null)[] {
  const found = columns[name];
  if (found === undefined) throw new Error(`the data set has no column ${name}`);
  return found;
}

export function spansOf(columns: Columns): SurvivalSpans {
  return { entry: numbers(columns, 'entry'), exit: numbers(columns, 'exit'), status: numbers(columns, 'status') };
}
