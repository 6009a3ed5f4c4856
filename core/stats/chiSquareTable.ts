import { chiSquareUpperTail } from './tailProbabilities.ts';

/** Pearson chi-square of a table; `smallestExpected` below 5 means that the p-value is only rough. */
export interface ChiSquareTable {
  readonly chiSquare: number;
  readonly df: number;
  readonly p: number;
  readonly smallestExpected: number;
}

/**
 * Pearson chi-square test of independence of rows and columns; `continuity` takes up to 0.5 off each
 * difference (Yates 1934), as is custom for 2x2 tables only.
 * Null if a row or column is empty (nothing expected there) or the table has fewer than two of either.
 * Cells are whole numbers from 0 up and rows equally long, else RangeError.
 */
export function chiSquareTable(table: readonly (readonly number[])[], continuity = false): ChiSquareTable | null {
  const { rowSums, columnSums, total } = tableMargins(table);
  if (rowSums.length < 2 || columnSums.length < 2) return null;
  const expected = rowSums.map((row) => columnSums.map((column) => (row * column) / total));
  const smallestExpected = Math.min(...expected.flat());
  if (!(smallestExpected > 0)) return null;
  const differences = table.flatMap((row, i) => row.map((cell, j) => Math.abs(cell - ((expected[i] as number[])[j] as number))));
  const correction = continuity ? Math.min(0.5, ...differences) : 0;
  const chiSquare = expected.flat().reduce((sum, want, at) => sum + ((differences[at] as number) - correction) ** 2 / want, 0);
  const df = (rowSums.length - 1) * (columnSums.length - 1);
  return { chiSquare, df, p: chiSquareUpperTail(chiSquare, df), smallestExpected };
}

/** Sums of a table; RangeError for ragged rows and for cells that are not whole numbers from 0 up. */
export function tableMargins(table: readonly (readonly number[])[]): {
  readonly rowSums: readonly number[];
  readonly columnSums: readonly number[];
  readonly total: number;
} {
  const columns = table[0]?.length ?? 0;
  for (const row of table) {
    if (row.length !== columns) throw new RangeError(`every row of a table is equally long, not ${columns} and ${row.length}`);
    for (const cell of row) {
      if (!Number.isSafeInteger(cell) || cell < 0) throw new RangeError(`a table holds whole numbers from 0 up, not ${cell}`);
    }
  }
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const rowSums = table.map(sum);
  const columnSums = Array.from({ length: columns }, (_, j) => sum(table.map((row) => row[j] as number)));
  return { rowSums, columnSums, total: sum(rowSums) };
}
