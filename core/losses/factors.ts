import type { WinterRow } from './winterRows.ts';

export const factorKeys = ['yard', 'source', 'queenAge', 'line', 'treated', 'mites', 'stores', 'strength'] as const;
export type FactorKey = (typeof factorKeys)[number];

/** Numbers of the house by which colonies are put into groups, for their names. */
export interface FactorRules {
  readonly mitesThreshold: number;
  readonly storesPounds: number;
  readonly strengthFrames: number;
}

export interface Factor {
  readonly key: FactorKey;
  readonly name: string;
  /** What a colony without this on record is called. */
  readonly without: string;
  /** The colony's group; null where it is not on record. */
  readonly groupOf: (row: WinterRow) => string | null;
  readonly nameOf: (group: string) => string;
  /** The order groups are shown in; others follow by name. */
  readonly order: readonly string[];
}

const sources: Readonly<Record<string, string>> = { package: 'Packages', nuc: 'Nucs', swarm: 'Swarms', split: 'Splits', 'bought colony': 'Bought colonies', opening: 'In the book from the start' };

/** What colonies are grouped by, in the order of the table. */
export function factorsOf(rules: FactorRules, yardName: (code: string) => string): Factor[] {
  const named = (names: Readonly<Record<string, string>>) => (group: string) => names[group] ?? group;
  const some = <Value extends string>(value: Value, none: Value) => (value === none ? null : value);
  const [mites, pounds, frames] = [plain(rules.mitesThreshold), plain(rules.storesPounds), plain(rules.strengthFrames)];
  return [
    { key: 'yard', name: 'Yard', without: 'no yard', groupOf: (row) => row.yard, nameOf: yardName, order: [] },
    { key: 'source', name: 'Came as', without: 'not recorded', groupOf: (row) => row.colony.source, nameOf: named(sources), order: Object.keys(sources) },
    {
      key: 'queenAge', name: 'Queen hatched', without: 'year not recorded', groupOf: (row) => some(row.colony.queenAgeClass, 'unknown'),
      nameOf: named({ 'this year': 'The same year', 'last year': 'The year before', older: 'Two years before or more' }), order: ['this year', 'last year', 'older'],
    },
    { key: 'line', name: 'Queen’s line', without: 'not recorded', groupOf: (row) => row.colony.line, nameOf: (group) => group, order: [] },
    {
      key: 'treated', name: 'Treated before winter', without: 'not recorded', groupOf: (row) => (row.colony.treated.length > 0 ? 'treated' : 'not treated'),
      nameOf: named({ treated: 'Treated', 'not treated': 'No treatment on record' }), order: ['treated', 'not treated'],
    },
    {
      key: 'mites', name: 'Late-summer mites', without: 'not counted', groupOf: (row) => some(row.colony.mitesClass, 'not counted'),
      nameOf: named({ 'at or above': `${mites} per 100 or more`, below: `Below ${mites} per 100` }), order: ['at or above', 'below'],
    },
    {
      key: 'stores', name: 'Autumn stores', without: 'not weighed', groupOf: (row) => some(row.colony.storesClass, 'not weighed'),
      nameOf: named({ light: `Below ${pounds} lb`, enough: `${pounds} lb or more` }), order: ['light', 'enough'],
    },
    {
      key: 'strength', name: 'Autumn strength', without: 'not looked at', groupOf: ({ colony: { strength } }) => (strength === null ? null : strength.frames >= rules.strengthFrames ? 'strong' : 'weak'),
      nameOf: named({ weak: `Below ${frames} frames of bees`, strong: `${frames} frames of bees or more` }), order: ['weak', 'strong'],
    },
  ];
}

function plain(value: number): string {
  return String(Math.round(value * 100) / 100);
}
