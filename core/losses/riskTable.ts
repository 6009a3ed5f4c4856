import type { RiskFactor, RiskGroup } from '#shared/contract/lossFactors.ts';
import { compareNames } from '#shared/nameOrder.ts';
import { exactStratified } from '#core/stats/exactStratified.ts';
import { fisherExactTwoByTwo } from '#core/stats/fisherExactTwoByTwo.ts';
import { holm } from '#core/stats/holm.ts';
import type { Interval } from '#core/stats/interval.ts';
import { mantelHaenszel } from '#core/stats/mantelHaenszel.ts';
import { relativeRisk } from '#core/stats/relativeRisk.ts';
import { riskDifference } from '#core/stats/riskDifference.ts';
import type { TwoByTwo } from '#core/stats/twoByTwo.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';
import type { Factor } from './factors.ts';
import type { WinterRow } from './winterRows.ts';

export interface RiskRules {
  /** Fewer losses in all: nothing is tested. */
  readonly fewestLosses: number;
  /** Fewer at risk on either side: that comparison is not made. */
  readonly few: number;
}

/** Odds ratios are roots of long sums; beyond this many colonies the difference in words says enough. */
const mostForOdds = 2000;

interface Counted {
  readonly group: string;
  readonly atRisk: number;
  readonly lost: number;
  /** The group against all others with this on record, one table a winter. */
  readonly tables: readonly TwoByTwo[];
}

/**
 * Losses by what colonies went into the winter with, each group against all others that have the same on record.
 * One winter: Katz's relative risk, Newcombe's difference, Fisher's exact test. Several: Mantel-Haenszel over the
 * winters and the exact test with the margins of every winter fixed, so that a bad winter is not read as a bad
 * group. p adjusted after Holm over every test of the whole table. Which groups are tested hangs on how many were
 * at risk and how many were lost in all, never on how many were lost in the group, so the promise of the tests holds.
 * Of two groups only the first is tested: the second is the same comparison. Colonies that left alive during the
 * winter are in no count.
 */
export function riskTable(all: readonly WinterRow[], factors: readonly Factor[], rules: RiskRules): RiskFactor[] {
  const rows = all.filter(({ fate }) => fate !== 'left');
  const seasons = new Set(rows.map(({ season }) => season)).size;
  const table = factors.map((factor) => factorOf(rows, factor, rules, seasons > 1));
  const tested = table.flatMap(({ groups }) => groups).filter(({ p }) => p !== null);
  const adjusted = holm(tested.map(({ p }) => p ?? 1));
  const of = new Map(tested.map((group, at) => [group, adjusted[at] ?? 1]));
  return table.map((factor) => ({ ...factor, groups: factor.groups.map((group) => ({ ...group, pHolm: of.get(group) ?? null })) }));
}

function factorOf(rows: readonly WinterRow[], factor: Factor, rules: RiskRules, pooled: boolean): RiskFactor {
  const groups = countGroups(rows, factor);
  const known = { atRisk: groups.reduce((sum, one) => sum + one.atRisk, 0), lost: groups.reduce((sum, one) => sum + one.lost, 0) };
  const unknown = rows.filter((row) => factor.groupOf(row) === null);
  return {
    key: factor.key, name: factor.name,
    groups: groups.map((counted, at) => groupOf(counted, factor.nameOf(counted.group), whyNot(counted, at, groups, known, rules), known, pooled)),
    unknown: unknown.length === 0 ? null : { name: factor.without, ...rateOf(unknown.length, unknown.filter(({ fate }) => fate === 'lost').length) },
  };
}

function countGroups(rows: readonly WinterRow[], { groupOf: of, order, nameOf }: Factor): Counted[] {
  const perSeason = new Map<number, { atRisk: number; lost: number }>();
  const perGroup = new Map<string, Map<number, { atRisk: number; lost: number }>>();
  for (const row of rows) {
    const group = of(row);
    if (group === null) continue;
    const own = getOr(perGroup, group, () => new Map<number, { atRisk: number; lost: number }>());
    for (const cell of [getOr(own, row.season, noCount), getOr(perSeason, row.season, noCount)]) {
      cell.atRisk += 1;
      if (row.fate === 'lost') cell.lost += 1;
    }
  }
  const place = (group: string) => (order.includes(group) ? order.indexOf(group) : order.length);
  return [...perGroup]
    .map(([group, seasons]) => ({
      group,
      atRisk: [...seasons.values()].reduce((sum, one) => sum + one.atRisk, 0),
      lost: [...seasons.values()].reduce((sum, one) => sum + one.lost, 0),
      tables: [...perSeason].map(([season, whole]) => {
        const own = seasons.get(season) ?? noCount();
        return { a: own.lost, b: own.atRisk - own.lost, c: whole.lost - own.lost, d: whole.atRisk - whole.lost - own.atRisk + own.lost };
      }),
    }))
    .toSorted((one, other) => place(one.group) - place(other.group) || compareNames(nameOf(one.group), nameOf(other.group)));
}

function noCount(): { atRisk: number; lost: number } {
  return { atRisk: 0, lost: 0 };
}

function getOr<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = make()));
  return found;
}

/** Why a group is not tested, in words; null where it is. */
function whyNot(counted: Counted, at: number, groups: readonly Counted[], known: { atRisk: number; lost: number }, rules: RiskRules): string | null {
  const rest = known.atRisk - counted.atRisk;
  if (rest === 0) return 'All that have this on record are in this group; there is nothing to compare with.';
  if (known.lost === 0) return 'Nothing was lost among those that have this on record.';
  if (known.lost === known.atRisk) return 'Everything was lost, whatever the group.';
  if (known.lost < rules.fewestLosses) return `Too few to tell: ${known.lost} lost in all, and comparing begins at ${rules.fewestLosses}.`;
  if (counted.atRisk < rules.few) return `Too few to tell: ${counted.atRisk} at risk, and comparing begins at ${rules.few}.`;
  if (rest < rules.few) return `Too few to tell: ${rest} at risk in all other groups, and comparing begins at ${rules.few}.`;
  const apart = counted.tables.some(({ a, b, c, d }) => a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);
  if (!apart) return 'Too few to tell: in no winter were this group and another there together with some lost and some not.';
  return at === 1 && groups.length === 2 && groups[0] !== undefined && groups[0].atRisk >= rules.few ? 'The other side of the line above.' : null;
}

function groupOf(counted: Counted, name: string, why: string | null, known: { atRisk: number; lost: number }, pooled: boolean): RiskGroup {
  const base = {
    key: counted.group, name, ...rateOf(counted.atRisk, counted.lost), why, restAtRisk: known.atRisk - counted.atRisk, restLost: known.lost - counted.lost,
    ratio: null, difference: null, differenceWords: null, p: null, approximate: false, pHolm: null, odds: null,
  };
  if (why !== null) return base;
  const tested = pooled ? overSeasons(counted.tables) : oneSeason(counted.tables[0] ?? { a: 0, b: 0, c: 0, d: 0 });
  return { ...base, ...tested, differenceWords: tested.difference === null ? null : differenceWords(tested.difference.value, tested.difference.range) };
}

type Tested = Pick<RiskGroup, 'ratio' | 'difference' | 'p' | 'approximate' | 'odds'>;

function oneSeason(table: TwoByTwo): Tested {
  const { value, limits, correctedByHalf } = relativeRisk(table);
  const difference = riskDifference(table);
  const { a, b, c, d } = table;
  const small = a + b + c + d <= mostForOdds;
  const exact = small ? fisherExactTwoByTwo(table) : null;
  return {
    ratio: { value, range: pair(limits), half: correctedByHalf },
    difference: difference === null ? null : { value: difference.value, range: pair(difference.newcombe) },
    odds: exact === null || exact.oddsRatio === null ? null : { value: ends(exact.oddsRatio), range: [exact.limits.lower, ends(exact.limits.upper)] },
    ...testOf([table], exact?.p ?? null),
  };
}

function overSeasons(tables: readonly TwoByTwo[]): Tested {
  const common = mantelHaenszel(tables);
  return {
    ratio: common.limits === null || common.relativeRisk === null ? halved(tables) : { value: common.relativeRisk, range: pair(common.limits), half: false },
    difference: common.riskDifference === null || common.differenceLimits === null ? null : { value: common.riskDifference, range: pair(common.differenceLimits) },
    odds: null,
    ...testOf(tables, null),
  };
}

/** Nobody lost on one side in any winter: half a colony is put into every cell, and the ratio is flagged. */
function halved(tables: readonly TwoByTwo[]): RiskGroup['ratio'] {
  const sum = tables.reduce((total, { a, b, c, d }) => ({ a: total.a + a, b: total.b + b, c: total.c + c, d: total.d + d }), { a: 0, b: 0, c: 0, d: 0 });
  const { value, limits } = relativeRisk(sum);
  return { value, range: pair(limits), half: true };
}

function testOf(tables: readonly TwoByTwo[], known: number | null): Pick<RiskGroup, 'p' | 'approximate'> {
  const exact = known ?? exactStratified(tables);
  return exact === null ? { p: mantelHaenszel(tables).p, approximate: true } : { p: exact, approximate: false };
}

/** An odds ratio without end cannot be carried as a number. */
function ends(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function rateOf(atRisk: number, lost: number): Pick<RiskGroup, 'atRisk' | 'lost' | 'rate' | 'wilson'> {
  const range = wilsonInterval(lost, atRisk);
  return { atRisk, lost, rate: atRisk === 0 ? null : lost / atRisk, wilson: range === null ? null : pair(range) };
}

function pair({ lower, upper }: Interval): [number, number] {
  return [lower, upper];
}

/** "of 100 colonies, about 12 more lost (3 to 21)" */
export function differenceWords(value: number, [low, high]: readonly [number, number]): string {
  const [at, from, to] = [value, low, high].map((share) => Math.round(share * 100)) as [number, number, number];
  const lead = at === 0 ? 'as many lost' : `about ${Math.abs(at)} ${at > 0 ? 'more' : 'fewer'} lost`;
  const range = from >= 0 ? `${from} to ${to}${at === 0 ? ' more' : ''}` : to <= 0 ? `${-to} to ${-from}${at === 0 ? ' fewer' : ''}` : `${-from} fewer to ${to} more`;
  return `of 100 colonies, ${lead} (${range})`;
}
