import { dayFromIso, type Day } from '#shared/days.ts';

/** Kept under one key of its own: which sheet was open last, and which sheets hold typing that is not entered. */
export interface RoundIndex {
  readonly last: { readonly yard: number; readonly day: Day } | null;
  readonly open: readonly OpenRound[];
}

export interface OpenRound {
  readonly yard: number;
  readonly day: Day;
  readonly filled: number;
}

export const indexKey = 'rounds';
export const noRounds: RoundIndex = { last: null, open: [] };

/** The index with one sheet's number of filled rows noted; none filled takes it out. */
export function noteRound(index: RoundIndex, yard: number, day: Day, filled: number): RoundIndex {
  const others = index.open.filter((round) => round.yard !== yard || round.day !== day);
  const open = filled > 0 ? [...others, { yard, day, filled }] : others;
  return { last: { yard, day }, open: open.toSorted((one, other) => (one.day < other.day ? 1 : one.day > other.day ? -1 : one.yard - other.yard)) };
}

export function writeIndex(index: RoundIndex): string {
  return JSON.stringify(index);
}

/** An index that cannot be read costs only the list: the drafts themselves are found again by yard and day. */
export function readIndex(text: string): RoundIndex {
  try {
    const found = JSON.parse(text) as { last?: unknown; open?: unknown } | null;
    const open = Array.isArray(found?.open) ? found.open.map(asRound).filter((round) => round !== null) : [];
    const last = asRound(found?.last);
    return { last: last ? { yard: last.yard, day: last.day } : null, open };
  } catch {
    return noRounds;
  }
}

function asRound(value: unknown): OpenRound | null {
  if (typeof value !== 'object' || value === null) return null;
  const { yard, day, filled } = value as Record<string, unknown>;
  const found = typeof day === 'string' ? dayFromIso(day) : null;
  return typeof yard === 'number' && found !== null ? { yard, day: found, filled: typeof filled === 'number' ? filled : 0 } : null;
}
