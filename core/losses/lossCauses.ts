import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { chiSquareTable } from '#core/stats/chiSquareTable.ts';
import { fisherExactTable } from '#core/stats/fisherExactTable.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';
import type { ColonyId } from '#shared/brands.ts';
import { capital, colonies, listed } from './lossNumbers.ts';

/** A colony that was lost, with the causes that were written down. */
export interface LostColony {
  readonly id: ColonyId;
  readonly yard: string;
  readonly how: 'lost' | 'absconded';
  readonly causes: readonly string[];
}

type Causes = LossFactors['causes'];

/** How many winters the lost are of, and how many were lost outside them. */
export interface CausesWhen {
  readonly winters: number;
  readonly elsewhere: number;
}

export const unknownCause = 'unknown or not recorded';
const several = 'several causes';
/** Steps of the exact test before chi-square takes its place: about a tenth of a second. */
const mostSteps = 150_000;
/** Beyond so many colonies chi-square serves well enough. */
const mostForExact = 200;
/** Ways to fill one yard’s row that the exact test may have to list; with more it is not begun. */
const mostWays = 50_000;

/** The classes that a colony counts in; one that absconded, and one without a word, have their own. */
export function classesOf({ how, causes }: LostColony): string[] {
  if (how === 'absconded') return ['absconded'];
  const known = [...new Set(causes.filter((cause) => cause !== 'unknown'))];
  return known.length === 0 ? [unknownCause] : known;
}

/**
 * Causes as they were written down: opinions, several to a colony. Every share is of all that were lost, the unknown
 * among them, so shares may add up to more than one. Causes by yard are held against each other by one test of the
 * whole table in which each colony counts once; no single cell is tested.
 */
export function lossCauses(lost: readonly LostColony[], yards: readonly { code: string; name: string }[], fewest: number, when: CausesWhen): Causes {
  const byCause = Map.groupBy(lost.flatMap((colony) => classesOf(colony).map((cause) => ({ cause, id: colony.id }))), ({ cause }) => cause);
  const shares = [...byCause]
    .map(([cause, all]) => {
      const { lower, upper } = wilsonInterval(all.length, lost.length) ?? { lower: 0, upper: 1 };
      return { cause, count: all.length, of: lost.length, share: all.length / lost.length, range: [lower, upper] as [number, number] };
    })
    .toSorted((one, other) => Number(one.cause === unknownCause) - Number(other.cause === unknownCause) || other.count - one.count || one.cause.localeCompare(other.cause));
  return { lost: lost.length, sentence: causeSentence(lost, shares, when), shares, byYard: causesByYard(lost, yards, fewest) };
}

function causeSentence(lost: readonly LostColony[], shares: Causes['shares'], { winters, elsewhere }: CausesWhen): string {
  const inThem = winters > 1 ? `in these ${winters} winters` : 'in the winter';
  const others = elsewhere === 0 ? [] : [`The ${elsewhere === 1 ? 'one colony' : colonies(elsewhere)} lost ${winters > 1 ? 'outside these winters' : 'in the season’s summer'} ${elsewhere === 1 ? 'is' : 'are'} not counted here.`];
  if (lost.length === 0) return [winters === 0 ? 'No winter is on record, so there are no causes.' : `No colonies were lost ${inThem}, so there are no causes.`, ...others].join(' ');
  const named = shares.filter(({ cause }) => cause !== unknownCause);
  const unknown = shares.find(({ cause }) => cause === unknownCause)?.count ?? 0;
  const many = lost.filter((colony) => classesOf(colony).length > 1).length;
  const most = named.filter(({ count }) => count === named[0]?.count);
  const first = named.length === 0
    ? `No cause is on record for ${lost.length === 1 ? 'the one colony' : `any of the ${colonies(lost.length)}`} lost ${inThem}.`
    : `Of ${colonies(lost.length)} lost ${inThem}, ${most.length > 3 ? 'no cause was written down more often than the others' : `${listed(most.map(({ cause }) => `“${cause}”`))} ${most.length > 1 ? 'were each' : 'was'} written down for ${most[0]?.count ?? 0}${(most[0]?.count ?? 0) > 1 ? ', the most' : ''}`}.`;
  const rest = [
    ...(named.length > 0 && unknown > 0 ? [`For ${unknown} the cause is unknown or not recorded.`] : []),
    ...(many > 0 ? [`${capital(many === 1 ? 'one colony has' : `${many} have`)} more than one cause, so the shares add up to more than all.`] : []),
    ...others,
  ];
  return [first, ...rest].join(' ');
}

/** The one class of a colony in the causes by yard. */
export function classOf(colony: LostColony): string {
  const classes = classesOf(colony);
  return classes.length > 1 ? several : (classes[0] ?? unknownCause);
}

function causesByYard(lost: readonly LostColony[], yards: readonly { code: string; name: string }[], fewest: number): Causes['byYard'] {
  const causes = [...new Set(lost.map(classOf))].toSorted((one, other) => last(one) - last(other) || one.localeCompare(other));
  const byYard = Map.groupBy(lost, ({ yard }) => yard);
  const rows = yards.flatMap(({ code, name }) => {
    const own = byYard.get(code)?.map(classOf) ?? [];
    return own.length === 0 ? [] : [{ yard: code, name, counts: causes.map((cause) => own.filter((one) => one === cause).length) }];
  });
  const { p, sentence } = yardTest(rows.map(({ counts }) => counts), lost.length, causes.length, fewest);
  return { causes, rows, p, sentence };
}

function last(cause: string): number {
  return cause === unknownCause ? 2 : cause === several ? 1 : 0;
}

function yardTest(table: readonly (readonly number[])[], lost: number, causes: number, fewest: number): { p: number | null; sentence: string } {
  if (lost === 0) return { p: null, sentence: '' };
  if (lost < fewest) return { p: null, sentence: `Too few to tell whether causes differ between yards: ${colonies(lost)} lost.` };
  if (table.length < 2) return { p: null, sentence: 'All were lost in one yard, so there are no yards to compare.' };
  if (causes < 2) return { p: null, sentence: 'All have the same recorded cause, so yards do not differ in it.' };
  const exact = lost > mostForExact || waysToFill(table) > mostWays ? null : fisherExactTable(table, mostSteps);
  const rough = exact === null ? chiSquareTable(table) : null;
  const p = exact ?? rough?.p ?? null;
  if (p === null) return { p, sentence: 'Whether causes differ between yards cannot be worked out here.' };
  const how = exact !== null ? '' : (rough?.smallestExpected ?? 0) < 5 ? ', by a test that is only rough with counts so small' : '';
  const size = p < 0.001 ? 'p below 0.001' : `p = ${p.toFixed(p < 0.1 ? 3 : 2)}`;
  return { p, sentence: p < 0.05 ? `Taken as a whole, the recorded causes differ between yards more than chance makes likely (${size}${how}); which cause in which yard, this test does not say.` : `Taken as a whole, the recorded causes do not differ between yards more than chance would have it (${size}${how}).` };
}

/** In how many ways the largest row (or column, if there are fewer rows than columns) can be spread over the others' places. */
function waysToFill(table: readonly (readonly number[])[]): number {
  const columns = table[0]?.length ?? 0;
  const byColumn = Array.from({ length: columns }, (_, at) => table.reduce((sum, row) => sum + (row[at] ?? 0), 0));
  const byRow = table.map((row) => row.reduce((sum, cell) => sum + cell, 0));
  const [places, sums] = byRow.length <= columns ? [byRow.length, byColumn] : [columns, byRow];
  const largest = Math.max(0, ...sums);
  let ways = 1;
  for (let at = 1; at < places; at += 1) ways *= (largest + at) / at;
  return ways;
}
