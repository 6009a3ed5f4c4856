import type { CurveSet } from '#shared/contract/losses.ts';
import { dayFromIso, type Day } from '#shared/days.ts';
import type { SurvivalLine } from '../../charts/survivalGeometry.ts';
import { words } from './words.ts';

/** A yard's curve needs this many colonies to be shown unasked. */
const enough = 5;

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** The yard shown beside all yards until others are chosen: the one with the fewest left alive among those with enough colonies. */
export function worstYard(set: CurveSet): string | null {
  const candidates = set.byYard
    .filter(({ curve }) => curve.colonies >= enough && curve.losses > 0)
    .sort((a, b) => (a.curve.survival.at(-1) ?? 1) - (b.curve.survival.at(-1) ?? 1));
  return set.byYard.length > 1 ? (candidates[0]?.yard ?? null) : null;
}

/** All yards together, then the chosen ones; each yard keeps its place in the order of the book's yards whatever else is shown. */
export function survivalLines(set: CurveSet, chosen: ReadonlySet<string>, order: readonly string[]): SurvivalLine[] {
  return [
    { key: 'all', label: words.all, place: 0, curve: set.all },
    ...set.byYard
      .map(({ yard, yardName, curve }) => ({ key: yard, label: yardName, place: 1 + Math.max(0, order.indexOf(yard)), curve }))
      .filter(({ key }) => chosen.has(key)),
  ];
}

/** The day the axis counts from, out of its words ("days since 1 October 2025"); null when they name none. */
export function originOf(axis: string): Day | null {
  const found = /(\d{1,2})\s([A-Z][a-z]+)\s(\d{4})/.exec(axis);
  const month = months.indexOf(found?.[2] ?? '') + 1;
  if (!found || month === 0) return null;
  return dayFromIso(`${found[3]}-${String(month).padStart(2, '0')}-${(found[1] ?? '').padStart(2, '0')}`);
}
