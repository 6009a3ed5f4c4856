import type { Grouping } from '#shared/contract/lossSections.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import type { WatchedRow } from './watchedRows.ts';
import { mitesClasses, queenAgeClasses, storesClasses, type CovariateRules } from './winterCovariates.ts';

export interface GroupRows {
  readonly key: string;
  readonly label: string;
  readonly rows: readonly WatchedRow[];
}

/** As many curves as colours and dashes keep apart; the smaller groups beyond are taken together. */
const mostGroups = 8;
export const othersKey = '…';

export interface GroupNames {
  readonly yards: readonly Yard[];
  readonly rules: CovariateRules;
  readonly massUnit: MassUnit;
}

/**
 * The rows by group, in the order of the classes where they have one, else the yards' own order or from the
 * largest down; groups beyond the eighth are taken together as the last.
 */
export function groupRows(rows: readonly WatchedRow[], by: Grouping, names: GroupNames): GroupRows[] {
  if (by === 'none') return [];
  const found = [...Map.groupBy(rows, ({ key }) => key)].map(([key, own]) => ({ key, label: labelOf(key, by, names), rows: own }));
  const order = orderOf(by, names);
  const place = (key: string) => order?.indexOf(key) ?? 0;
  const ordered = found.toSorted((a, b) => (order === null ? Number(a.key === '') - Number(b.key === '') || b.rows.length - a.rows.length || compare(a.key, b.key) : place(a.key) - place(b.key)));
  if (ordered.length <= mostGroups) return ordered;
  const largest = new Set(ordered.toSorted((a, b) => b.rows.length - a.rows.length || compare(a.key, b.key)).slice(0, mostGroups - 1));
  const rest = ordered.filter((group) => !largest.has(group));
  return [...ordered.filter((group) => largest.has(group)), { key: othersKey, label: `${rest.length} others together`, rows: rest.flatMap((group) => group.rows) }];
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function orderOf(by: Grouping, { yards }: GroupNames): readonly string[] | null {
  switch (by) {
    case 'yard':
      return yards.map(({ code }) => code);
    case 'source':
      return ['opening', 'split', 'package', 'nuc', 'bought colony', 'swarm'];
    case 'queenAge':
      return queenAgeClasses;
    case 'mites':
      return mitesClasses;
    case 'stores':
      return storesClasses;
    case 'line':
    case 'treated':
    case 'none':
      return null;
  }
}

const sources: Readonly<Record<string, string>> = { opening: 'in the book from the start', split: 'own split', package: 'package', nuc: 'nuc', 'bought colony': 'bought colony', swarm: 'swarm' };
const queens: Readonly<Record<string, string>> = { 'this year': 'queen of that year', 'last year': 'of the year before', older: 'older queen', unknown: 'year not known' };

function labelOf(key: string, by: Grouping, { yards, rules, massUnit }: GroupNames): string {
  switch (by) {
    case 'none':
      return key;
    case 'yard':
      return yards.find(({ code }) => code === key)?.name ?? key;
    case 'source':
      return sources[key] ?? key;
    case 'queenAge':
      return queens[key] ?? key;
    case 'line':
      return key === '' ? 'not written down' : key;
    case 'treated':
      return key === '' ? 'none written down' : key;
    case 'mites':
      return key === 'below' ? `under ${rules.mitesThreshold} mites` : key === 'at or above' ? `${rules.mitesThreshold} mites or more` : 'not counted';
    case 'stores':
      return key === 'light' ? `under ${storesText(rules, massUnit)}` : key === 'enough' ? `${storesText(rules, massUnit)} or more` : 'not weighed';
  }
}

function storesText({ storesPounds }: CovariateRules, unit: MassUnit): string {
  return unit === 'lb' ? `${storesPounds} lb` : `${Math.round((storesPounds * gramsPerPound) / 1000)} kg`;
}

/** Colonies (or colony winters) of a group: each counted by its last stretch, or once wherever it stood. */
export function coloniesIn(rows: readonly WatchedRow[], life: boolean): number {
  return life ? new Set(rows.map(({ id }) => id)).size : rows.reduce((count, { last }) => (last ? count + 1 : count), 0);
}
