import type { YieldAnswer, YieldGrouping, YieldRow } from '#shared/contract/yields.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import { csvText } from '../../parts/csv.ts';
import { fixed, missing } from '../../parts/format.ts';
import { yieldWords as words } from './yieldWords.ts';

/** Pounds in the unit of the book. */
export function inUnit(pounds: number, unit: MassUnit): number {
  return unit === 'lb' ? pounds : (pounds * gramsPerPound) / 1000;
}

/** `74.7`, without the unit’s name. */
export function poundsText(pounds: number | null, unit: MassUnit): string {
  return pounds === null ? missing : fixed(inUnit(pounds, unit), 1);
}

/** `74.7 (68.6–80.9)`; from two values a range says nothing, and from one there is none. */
export function withRange(pounds: number | null, range: readonly [number, number] | null, n: number, unit: MassUnit): string {
  if (pounds === null) return missing;
  const said = n === 1 && range === null ? words.one : n === 2 && range === null ? words.few : range === null ? '' : `${poundsText(range[0], unit)}–${poundsText(range[1], unit)}`;
  return said === '' ? poundsText(pounds, unit) : `${poundsText(pounds, unit)}\u2002(${said})`;
}

export interface Compared {
  readonly value: number | null;
  readonly range: readonly [number, number] | null;
}

/** What a group is compared by; nothing where the others were evened out and it stands alone in its years. */
export function comparedOf({ estimate, interval, evened, pooled, n }: YieldRow, rows: readonly YieldRow[]): Compared {
  if (!evened && rows.some((row) => row.evened)) return { value: null, range: null };
  return { value: estimate, range: pooled ? interval : ownRange(n, interval) };
}

/** Limits from two values are nearly always wider than anything that is known. */
export function ownRange(n: number, range: readonly [number, number] | null): readonly [number, number] | null {
  return n < 3 ? null : range;
}

export function yieldsCsv({ rows, by }: { readonly rows: readonly YieldRow[]; readonly by: YieldGrouping }, unit: MassUnit): string {
  const cell = (pounds: number | null | undefined) => (pounds === null || pounds === undefined ? null : Math.round(inUnit(pounds, unit) * 1000) / 1000);
  return csvText(
    words.csvHead(unit),
    rows.map((row) => {
      const compared = by === 'season' ? { value: null, range: null } : comparedOf(row, rows);
      return [
        row.label, row.n, row.colonies, row.seasons, cell(row.mean), cell(row.meanInterval?.[0]), cell(row.meanInterval?.[1]), cell(compared.value), cell(compared.range?.[0]), cell(compared.range?.[1]),
        row.evened ? 'yes' : 'no', row.pooled ? 'yes' : 'no', cell(row.together?.lb), row.together?.colonySeasons ?? null,
      ];
    }),
  );
}

/** Whether there is enough to show figures by group. */
export function enough({ all, few, rows }: YieldAnswer): boolean {
  return all.n >= few || rows.some(({ together }) => together !== null);
}
