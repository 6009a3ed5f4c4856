import { tableMargins } from './chiSquareTable.ts';
import { compensatedSum } from './compensatedSum.ts';

const AS_UNLIKELY = 1e-7;
/** Products whose logarithms agree this far are one: what differs between them is rounding. */
const SAME = 1e-10;
/** Steps after which the exact test is given up: about a second. Chi-square is then the test to use. */
const MOST_STEPS = 8_000_000;

/** What is left of the row sums, and by which probabilities it was reached: log of product -> how often. */
interface Node {
  readonly left: readonly number[];
  /** Key: log of the product so far in steps of SAME. `log`: that logarithm; `weight`: number of ways. */
  readonly paths: Map<number, { readonly log: number; weight: number }>;
}

/**
 * Fisher's exact test of an r x c table, two-sided: the probabilities of all tables with the same margins that
 * are no likelier than the observed one (within a factor 1 + 1e-7), added up.
 *
 * Source: Freeman and Halton 1951, Biometrika 38:141-149 (from memory). Method: column by column through a
 * network of what is left of the rows, as Mehta and Patel 1983 do it (JASA 78:427-434, from memory): rows are
 * exchangeable, so what is left is kept sorted; paths of equal probability are kept as one; a path whose every
 * end is likelier than the observed table is dropped, one whose every end is not is counted at once.
 * Null if that takes more than `mostSteps` steps. Empty rows and columns do not matter. Broken cells: RangeError.
 */
export function fisherExactTable(table: readonly (readonly number[])[], mostSteps = MOST_STEPS): number | null {
  const { rowSums, columnSums, total } = tableMargins(table);
  const [rows, columns] = [rowSums.filter((sum) => sum > 0), columnSums.filter((sum) => sum > 0)];
  if (rows.length < 2 || columns.length < 2) return 1;
  // Fewer rows than columns: states are what is left of the rows.
  const [states, steps] = rows.length <= columns.length ? [rows, columns] : [columns, rows];
  const logFactorial = logFactorials(total);
  const of = (n: number): number => logFactorial[n] as number;
  const sumOf = (values: readonly number[]): number => values.reduce((sum, n) => sum + of(n), 0);

  // ln P(table) = constant - sum of ln(cell!).
  const constant = sumOf(rows) + sumOf(columns) - of(total);
  const observed = -sumOf(table.flat());
  const limit = observed + AS_UNLIKELY;
  const order = steps.toSorted((a, b) => b - a);
  let nodes = new Map<string, Node>([['', { left: states.toSorted((a, b) => a - b), paths: new Map([[0, { log: 0, weight: 1 }]]) }]]);
  let counted = 0;
  let lost = 0;
  const count = (probability: number): void => {
    // Neumaier's compensated sum, running: there may be too many terms to keep.
    const next = counted + probability;
    lost += counted >= probability ? counted - next + probability : probability - next + counted;
    counted = next;
  };
  let work = 0;

  for (const [at, column] of order.entries()) {
    const rest = order.slice(at + 1);
    const next = new Map<string, Node>();
    for (const { left, paths } of nodes.values()) {
      for (const { cells, remaining } of fillings(left, column)) {
        const log = -sumOf(cells);
        work += paths.size;
        if (work > mostSteps) return null;
        const bounds = futureBounds(remaining, rest, of);
        const mass = futureMass(remaining, rest, of);
        const key = remaining.join(' ');
        for (const path of paths.values()) {
          const reached = path.log + log;
          if (reached + bounds.least > limit) continue;
          if (reached + bounds.most <= limit) count(path.weight * Math.exp(constant + reached + mass));
          else addPath(next, key, remaining, reached, path.weight);
        }
      }
    }
    nodes = next;
  }
  return Math.min(1, counted + lost);
}

function addPath(nodes: Map<string, Node>, key: string, left: readonly number[], log: number, weight: number): void {
  let node = nodes.get(key);
  if (node === undefined) nodes.set(key, (node = { left, paths: new Map() }));
  const step = Math.round(log / SAME);
  const known = node.paths.get(step);
  if (known === undefined) node.paths.set(step, { log, weight });
  else known.weight += weight;
}

/** Every way to take `column` out of the rows, with what remains in ascending order. */
function fillings(
  left: readonly number[],
  column: number,
): readonly { readonly cells: readonly number[]; readonly remaining: readonly number[] }[] {
  const found: { cells: number[]; remaining: number[] }[] = [];
  const cells: number[] = [];
  const room = left.map((_, at) => left.slice(at + 1).reduce((sum, n) => sum + n, 0));
  const fill = (at: number, open: number): void => {
    if (at === left.length) {
      const remaining = left.map((n, row) => n - (cells[row] as number)).toSorted((a, b) => a - b);
      found.push({ cells: [...cells], remaining });
      return;
    }
    const most = Math.min(left[at] as number, open);
    for (let cell = Math.max(0, open - (room[at] as number)); cell <= most; cell++) {
      cells.push(cell);
      fill(at + 1, open - cell);
      cells.pop();
    }
  };
  fill(0, column);
  return found;
}

/** ln of the sum over all ways to fill the rest of the product of 1/cell!: multinomial theorem on both margins. */
function futureMass(left: readonly number[], rest: readonly number[], of: (n: number) => number): number {
  const total = rest.reduce((sum, n) => sum + n, 0);
  return of(total) - left.reduce((sum, n) => sum + of(n), 0) - rest.reduce((sum, n) => sum + of(n), 0);
}

/**
 * Bounds of ln(product of 1/cell!) over all ways to fill the rest. Since ln n! is convex, a sum is spread most
 * evenly for the most, and piled up for the least; each margin gives a bound and the tighter one holds.
 */
function futureBounds(
  left: readonly number[],
  rest: readonly number[],
  of: (n: number) => number,
): { readonly least: number; readonly most: number } {
  if (rest.length === 0) return { least: 0, most: 0 };
  const even = (n: number, parts: number): number => {
    const whole = Math.floor(n / parts);
    const over = n - whole * parts;
    return over * of(whole + 1) + (parts - over) * of(whole);
  };
  const evenRows = left.reduce((sum, n) => sum + even(n, rest.length), 0);
  const evenColumns = rest.reduce((sum, n) => sum + even(n, left.length), 0);
  const piled = (values: readonly number[]): number => values.reduce((sum, n) => sum + of(n), 0);
  if (rest.length === 1) return { least: -piled(left), most: -piled(left) };
  return { least: -Math.min(piled(left), piled(rest)), most: -Math.max(evenRows, evenColumns) };
}

function logFactorials(n: number): readonly number[] {
  return [0, ...compensatedSum(Array.from({ length: n }, (_, k) => Math.log(k + 1)))];
}
