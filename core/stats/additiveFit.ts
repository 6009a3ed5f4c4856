import { cholesky, choleskySolve } from './symmetricMatrix.ts';
import type { FTest } from './analysisOfVariance.ts';
import { meanOf, squaresAround } from './meanInterval.ts';
import { fUpperTail } from './tailProbabilities.ts';

export interface TwoWayRow {
  readonly group: string;
  readonly block: string;
  readonly value: number;
}

export interface EvenedRow<Row extends TwoWayRow> {
  readonly row: Row;
  /** The value with the effect of its block taken out, at the level of all rows compared. */
  readonly value: number;
}

export interface AdditiveFit<Row extends TwoWayRow> {
  readonly rows: readonly EvenedRow<Row>[];
  /** By how much each block lies above the level of all; units of the values. */
  readonly blocks: ReadonlyMap<string, number>;
  /** Rows that no chain of shared blocks ties to the others, or whose block holds one group alone. */
  readonly left: readonly Row[];
  /** Groups beyond blocks: the extra sum of squares against the residual; null without degrees of freedom or spread. */
  readonly test: FTest | null;
}

/**
 * Takes out the effects of blocks (years) before groups (yards) are compared: least squares for value = group + block +
 * error, whatever is missing. Where every group stands in every block this is the value less its block's mean.
 *
 * Method: normal equations of the two-way model without interaction, groups eliminated (Searle, Linear Models, from memory).
 * A block with one group tells nothing of differences and is left out; of what does not hang together the largest part is
 * taken. Cost: rows, and the cube of the number of blocks.
 */
export function additiveFit<Row extends TwoWayRow>(rows: readonly Row[]): AdditiveFit<Row> {
  const shared = rowsOfSharedBlocks(rows);
  const used = largestPart(shared);
  const inUse = new Set(used);
  const left = rows.filter((row) => !inUse.has(row));
  if (used.length === 0) return { rows: [], blocks: new Map(), left, test: null };
  const blocks = [...new Set(used.map(({ block }) => block))];
  const place = new Map(blocks.map((block, at) => [block, at]));
  const sizes = blocks.map(() => 0);
  const sums = blocks.map(() => 0);
  const matrix = blocks.map(() => blocks.map(() => 0));
  for (const own of Map.groupBy(used, ({ group }) => group).values()) {
    const counts = new Map<number, number>();
    const mean = meanOf(own.map(({ value }) => value));
    for (const { block, value } of own) {
      const at = place.get(block) as number;
      counts.set(at, (counts.get(at) ?? 0) + 1);
      sizes[at] = (sizes[at] as number) + 1;
      sums[at] = (sums[at] as number) + value - mean;
    }
    for (const [a, na] of counts) for (const [b, nb] of counts) (matrix[a] as number[])[b] = ((matrix[a] as number[])[b] as number) - (na * nb) / own.length;
  }
  for (const [at, size] of sizes.entries()) (matrix[at] as number[])[at] = ((matrix[at] as number[])[at] as number) + size;
  // The first block is the one that the others are told from; the level is set afterwards.
  const factor = cholesky(matrix.slice(1).map((row) => row.slice(1)));
  const effects = [0, ...(factor === null ? [] : choleskySolve(factor, sums.slice(1)))];
  if (factor === null && blocks.length > 1) return { rows: [], blocks: new Map(), left: rows, test: null };
  const centre = meanOf(used.map(({ block }) => effects[place.get(block) as number] as number));
  const effect = (block: string) => (effects[place.get(block) as number] as number) - centre;
  const evened = used.map((row) => ({ row, value: row.value - effect(row.block) }));
  return { rows: evened, blocks: new Map(blocks.map((block) => [block, effect(block)])), left, test: testOf(used, evened) };
}

function testOf<Row extends TwoWayRow>(used: readonly Row[], evened: readonly EvenedRow<Row>[]): FTest | null {
  const around = (parts: Iterable<readonly number[]>) => [...parts].reduce((sum, values) => sum + squaresAround(values, meanOf(values)), 0);
  const byBlock = [...Map.groupBy(used, ({ block }) => block).values()].map((own) => own.map(({ value }) => value));
  const byGroup = [...Map.groupBy(evened, ({ row }) => row.group).values()].map((own) => own.map(({ value }) => value));
  const [withoutGroups, withGroups] = [around(byBlock), around(byGroup)];
  const [df1, df2] = [byGroup.length - 1, used.length - byGroup.length - byBlock.length + 1];
  if (df1 < 1 || df2 < 1 || !(withGroups > 1e-12 * withoutGroups)) return null;
  const F = Math.max(0, withoutGroups - withGroups) / df1 / (withGroups / df2);
  return { F, df1, df2, p: fUpperTail(F, df1, df2) };
}

function rowsOfSharedBlocks<Row extends TwoWayRow>(rows: readonly Row[]): Row[] {
  return [...Map.groupBy(rows, ({ block }) => block).values()].filter(([first, ...rest]) => rest.some(({ group }) => group !== first?.group)).flat();
}

/** Groups and blocks as a graph: the connected part with the most rows. */
function largestPart<Row extends TwoWayRow>(rows: readonly Row[]): Row[] {
  const byGroup = Map.groupBy(rows, ({ group }) => group);
  const byBlock = Map.groupBy(rows, ({ block }) => block);
  const seen = new Set<string>();
  let best: Row[] = [];
  for (const start of byBlock.keys()) {
    if (seen.has(start)) continue;
    const part: Row[] = [];
    const groups = new Set<string>();
    const queue = [start];
    seen.add(start);
    for (let block = queue.pop(); block !== undefined; block = queue.pop()) {
      for (const row of byBlock.get(block) ?? []) {
        part.push(row);
        if (groups.has(row.group)) continue;
        groups.add(row.group);
        for (const { block: next } of byGroup.get(row.group) ?? []) {
          if (seen.has(next)) continue;
          seen.add(next);
          queue.push(next);
        }
      }
    }
    if (part.length > best.length) best = part;
  }
  return best;
}
