import { gramsPerPound } from '#shared/units.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import type { Day } from '#shared/days.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, houseRuleDefinitions, type RuleValues } from '#core/rules/houseRules.ts';
import { partialPooling } from '#core/stats/partialPooling.ts';

export const honeySources = ['package', 'nuc', 'split', 'established'] as const;
export type HoneySource = (typeof honeySources)[number];

/** Honey of a colony's first season (or, established, of any), in grams, with 95 % limits from the own record where it can give them. */
export interface FirstYearHoney {
  readonly source: HoneySource;
  readonly grams: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly colonies: number;
  readonly seasons: number;
  readonly own: boolean;
  readonly from: string;
  readonly confidence: string;
}

const leastColonies = 8;
const leastSeasons = 2;

/**
 * Honey by how a colony began. Only yards and seasons in which honey was weighed colony by colony count, and there a
 * colony without a harvest gave none. Good and bad seasons are evened out by the difference of the season's own mean
 * from the mean of all, then the groups are pooled partly (see `partialPooling`). Colonies begun after midsummer and the season
 * that is not over are left out. With fewer than 8 colonies or 2 seasons in a group, the house rule's figure is given.
 */
export function firstYearHoney(states: readonly ColonyState[], borders: Borders, asOf: Day, rules: RuleValues): FirstYearHoney[] {
  const weighed = new Set<string>();
  for (const state of states) for (const { day, yard } of state.harvests) weighed.add(`${seasonOf(day, borders)}|${yard}`);
  const seasons = [...new Set([...weighed].map((key) => Number(key.split('|')[0])))];
  const values: { source: HoneySource; season: number; grams: number }[] = [];
  for (const season of seasons) {
    const { from, until } = periodDays(season, 'summer', borders);
    if (until > asOf) continue;
    for (const state of states) {
      const old = aliveBefore(state, from);
      const source = old ? 'established' : sourceOf(state);
      if (source === null || (!old && (state.start < from || state.start > `${season}-06-30`))) continue;
      const yard = yardOn(state, `${season}-07-15` as Day);
      if (yard === null || !weighed.has(`${season}|${yard}`)) continue;
      if (state.end !== null && state.end < `${season}-07-15`) continue;
      values.push({ source, season, grams: state.harvests.filter(({ day }) => seasonOf(day, borders) === season).reduce((sum, one) => sum + one.grams, 0) });
    }
  }
  const mean = (of: readonly { grams: number }[]) => of.reduce((sum, one) => sum + one.grams, 0) / Math.max(1, of.length);
  const overall = mean(values.filter(({ source }) => source === 'established'));
  const standards = new Map(seasons.map((season) => [season, values.filter((one) => one.season === season && one.source === 'established')]));
  const means = new Map([...standards].map(([season, own]) => [season, mean(own)]));
  // Without wintered colonies beside it there is nothing to tell a good season from a good source.
  const evened = values.flatMap((one) => ((standards.get(one.season)?.length ?? 0) < 3 ? [] : [{ ...one, grams: one.grams - (means.get(one.season) ?? 0) + overall }]));
  const groups = honeySources.map((group) => ({ group, own: evened.filter(({ source }) => source === group) }));
  const enough = groups.filter(({ own }) => own.length >= leastColonies && new Set(own.map(({ season }) => season)).size >= leastSeasons);
  const pooling = partialPooling(enough.map(({ group, own }) => ({ group, values: own.map(({ grams }) => grams) })));
  return groups.map(({ group, own }): FirstYearHoney => {
    const pooled = pooling?.groups.find((one) => one.group === group);
    const counted = { source: group, colonies: own.length, seasons: new Set(own.map(({ season }) => season)).size };
    if (pooled !== undefined) return { ...counted, grams: Math.max(0, pooled.pooled), low: Math.max(0, pooled.limits.lower), high: Math.max(0, pooled.limits.upper), own: true, from: 'Own harvests, colony by colony.', confidence: 'own record' };
    const key = `decision.honey.${group}`;
    const rule = houseRuleDefinitions.find((one) => one.key === key);
    return { ...counted, grams: numberRule(rules, key) * gramsPerPound, low: null, high: null, own: false, from: rules.has(key) ? 'Your house rule.' : (rule?.source ?? ''), confidence: rule?.confidence ?? '' };
  });
}

function sourceOf(state: ColonyState): HoneySource | null {
  return state.origin === 'package' || state.origin === 'nuc' || state.origin === 'split' ? state.origin : null;
}

/** Pounds of each source, for the reckoning in money. */
export function cropInPounds(honey: readonly FirstYearHoney[]): Record<HoneySource, number> {
  const of = (source: HoneySource) => (honey.find((one) => one.source === source)?.grams ?? 0) / gramsPerPound;
  return { package: of('package'), nuc: of('nuc'), split: of('split'), established: of('established') };
}
