import type { YieldAnswer, YieldGrouping, YieldRow } from '#shared/contract/yields.ts';
import { additiveFit } from '#core/stats/additiveFit.ts';
import { analysisOfVariance } from '#core/stats/analysisOfVariance.ts';
import type { Interval } from '#core/stats/interval.ts';
import { meanInterval } from '#core/stats/meanInterval.ts';
import { partialPooling } from '#core/stats/partialPooling.ts';
import type { ColonySeason, YardSeason } from './colonySeasons.ts';

export interface YieldNames {
  readonly yard: (id: ColonySeason['yard']) => string;
  readonly order: readonly string[];
}

const ages = ['this year', 'last year', 'older', 'unknown'] as const;
const ageLabels: Readonly<Record<ColonySeason['queenAge'], string>> = { 'this year': 'Queens of that year', 'last year': 'Queens of the year before', older: 'Older queens', unknown: 'Queens of no known year' };
const sources = ['opening', 'split', 'package', 'nuc', 'bought colony', 'swarm'] as const;
const sourceLabels: Readonly<Record<ColonySeason['source'], string>> = { opening: 'Colonies in the book from the start', split: 'Own splits', package: 'Packages', nuc: 'Nucs', 'bought colony': 'Bought colonies', swarm: 'Swarms' };

/** The group that a colony's season counts for. */
export function yieldKey({ yard, line, queenAge, source, season }: ColonySeason, by: YieldGrouping): string {
  switch (by) {
    case 'yard':
      return String(yard);
    case 'line':
      return line ?? '';
    case 'queenAge':
      return queenAge;
    case 'source':
      return source;
    case 'season':
      return String(season);
  }
}

export type YieldParts = Pick<YieldAnswer, 'rows' | 'all' | 'apart' | 'test' | 'between' | 'within'>;

/**
 * Pounds per colony and season by group. The years are evened out first (`additiveFit`: yards are compared in the years that
 * they share; each year but one costs a degree of freedom), then small groups are pulled towards the whole (`partialPooling`). By season nothing is evened out or pulled:
 * each has its own mean and 95 % t interval. With fewer than three groups, or one value in each, the same. Yards weighed
 * together have a total and no spread.
 */
export function yieldTable(rows: readonly ColonySeason[], whole: readonly YardSeason[], by: YieldGrouping, names: YieldNames): YieldParts {
  const tagged = rows.map((one) => ({ group: yieldKey(one, by), block: String(one.season), value: one.lb, one }));
  const years = new Set(tagged.map(({ block }) => block)).size;
  const fit = by === 'season' || years < 2 ? null : additiveFit(tagged);
  const compared = fit === null ? tagged.map((row) => ({ row, value: row.value })) : fit.rows;
  const byGroup = [...Map.groupBy(compared, ({ row }) => row.group)].map(([group, own]) => ({ group, values: own.map(({ value }) => value) }));
  const pooling = by === 'season' ? null : partialPooling(byGroup, fit === null ? 0 : Math.max(0, fit.blocks.size - 1));
  const pooledBy = new Map(pooling?.groups.map((one) => [one.group, one]));
  const ownBy = new Map(byGroup.map(({ group, values }) => [group, meanInterval(values)]));
  const together = by === 'yard' ? Map.groupBy(whole, ({ yard }) => String(yard)) : new Map<string, YardSeason[]>();
  const rawBy = Map.groupBy(tagged, ({ group }) => group);
  const listed = [...new Set([...rawBy.keys(), ...together.keys()])].map((key): YieldRow => {
    const own = rawBy.get(key) ?? [];
    const raw = meanInterval(own.map(({ value }) => value));
    const pooled = pooledBy.get(key);
    const evened = ownBy.get(key);
    const yards = together.get(key) ?? [];
    return {
      key, label: labelOf(key, by, names), n: own.length, colonies: new Set(own.map(({ one }) => one.colony)).size, seasons: new Set([...own.map(({ block }) => block), ...yards.map(({ season }) => String(season))]).size,
      mean: raw.mean, meanInterval: shown(raw.limits), estimate: pooled?.pooled ?? evened?.mean ?? raw.mean, interval: shown(pooled?.limits ?? (evened ?? raw).limits),
      pooled: pooled !== undefined, evened: fit !== null && evened !== undefined, shrinkage: pooled?.shrinkage ?? null,
      together: yards.length === 0 ? null : { lb: yards.reduce((sum, { lb }) => sum + lb, 0), colonySeasons: yards.reduce((sum, { colonies }) => sum + colonies.length, 0) },
    };
  });
  const all = meanInterval(rows.map(({ lb }) => lb));
  return {
    rows: inOrder(listed, by, names), all: { n: all.n, mean: all.mean, interval: shown(all.limits) }, apart: fit?.left.length ?? 0,
    test: fit !== null ? fit.test : byGroup.length < 2 ? null : analysisOfVariance(byGroup), between: pooling === null ? null : Math.sqrt(pooling.tau2), within: pooling?.components.msWithin == null ? null : Math.sqrt(pooling.components.msWithin),
  };
}

function shown(limits: Interval | null): [number, number] | null {
  return limits === null ? null : [Math.max(0, limits.lower), Math.max(0, limits.upper)];
}

function labelOf(key: string, by: YieldGrouping, names: YieldNames): string {
  switch (by) {
    case 'yard':
      return names.yard(Number(key) as ColonySeason['yard']);
    case 'line':
      return key === '' ? 'No line written down' : key;
    case 'queenAge':
      return ageLabels[key as ColonySeason['queenAge']];
    case 'source':
      return sourceLabels[key as ColonySeason['source']];
    case 'season':
      return key;
  }
}

/** Classes in their own order, yards and lines from the most down, seasons as they came. */
function inOrder(rows: readonly YieldRow[], by: YieldGrouping, { order }: YieldNames): YieldRow[] {
  const place = (key: string) => (by === 'queenAge' ? ages.findIndex((one) => one === key) : by === 'source' ? sources.findIndex((one) => one === key) : by === 'yard' ? order.indexOf(key) : 0);
  return rows.toSorted((a, b) => {
    if (by === 'season') return Number(a.key) - Number(b.key);
    if (by === 'queenAge' || by === 'source') return place(a.key) - place(b.key);
    return (b.estimate ?? -1) - (a.estimate ?? -1) || place(a.key) - place(b.key) || (a.key < b.key ? -1 : 1);
  });
}
