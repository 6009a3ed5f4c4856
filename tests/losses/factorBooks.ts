import type { Cells } from '#shared/entryForms.ts';
import { day, type Day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { seasonsFrom } from '#core/desk/lossFactorHandlers.ts';
import { chosenRows, lossFactors, type FactorFacts } from '#core/losses/lossFactors.ts';
import { covariateRules, yardTreatmentsOf } from '#core/losses/winterCovariates.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { recorded, yards } from './recorded.ts';

const noRules: RuleValues = new Map();

/** The comparison of a book written row by row, as of a day. */
export function factorsOfBook(rows: readonly Cells[], options: { season?: number; scope?: 'season' | 'all'; asOf?: Day; kept?: RuleValues } = {}): LossFactors {
  const facts = factsOfBook(rows, options.asOf ?? day('2026-05-01'), options.kept ?? noRules);
  return lossFactors(facts, chosenRows(facts, options.season, options.scope ?? 'season', seasonsFrom(facts)));
}

function factsOfBook(rows: readonly Cells[], asOf: Day, kept: RuleValues): FactorFacts {
  const { states, entries } = recorded(rows.toSorted((one, other) => ((one.date ?? '') < (other.date ?? '') ? -1 : 1)));
  return {
    states, byId: new Map(states.map((state) => [state.id, state])), borders: defaultBorders, yardList: yards, today: asOf, asOf, kept, rules: covariateRules(kept),
    yardTreatments: yardTreatmentsOf(entries), codeOf: (yard) => yards.find(({ id }) => id === yard)?.code ?? '',
  };
}

export interface Hive {
  readonly yard?: string;
  readonly queen?: string;
  /** Mites of 300 bees on 20 August. */
  readonly mites?: number;
  /** Pounds on 5 October. */
  readonly stores?: number;
  readonly treated?: boolean;
  /** Day of the loss. */
  readonly lost?: string;
  readonly cause?: string;
}

/** So many colonies of the 2025 season, each as told by its place. */
export function hives(count: number, of: (at: number) => Hive): Cells[] {
  return Array.from({ length: count }, (_, at): Cells[] => {
    const { yard = 'QY', queen, mites, stores, treated, lost, cause } = of(at);
    const colony = `H${at + 1}`;
    return [
      { date: '2025-05-01', entry: 'install', yard, colony, origin: 'package', ...(queen === undefined ? {} : { queen_year: queen }) },
      ...(mites === undefined ? [] : [{ date: '2025-08-20', entry: 'mites', colony, mites: String(mites), bees: '300' }]),
      ...(treated ? [{ date: '2025-09-01', entry: 'treatment', colony, active_ingredient: 'formic acid' }] : []),
      ...(stores === undefined ? [] : [{ date: '2025-10-05', entry: 'stores', colony, weight: String(stores), unit: 'lb' }]),
      ...(lost === undefined ? [] : [{ date: lost, entry: 'loss', colony, ...(cause === undefined ? {} : { cause }) }]),
    ] as Cells[];
  }).flat();
}
