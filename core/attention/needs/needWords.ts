import type { NeedRecord } from '#shared/contract/needs.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { roundTo } from '#shared/units.ts';
import type { TreatmentSpan } from '#core/mites/treatmentSpans.ts';
import type { MiteCount } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import type { ColonyFacts, NeedFacts } from './needRule.ts';

/** Mites in 100 bees, to one place. */
export function per100Words(per100: number): string {
  return roundTo(per100, 1).toFixed(1);
}

/** "10 in 320 bees, 3.1 in 100" */
export function countWords({ mites, bees }: Pick<MiteCount, 'mites' | 'bees'>): string {
  return `${mites} in ${bees} bees, ${per100Words((100 * mites) / bees)} in 100`;
}

/** The count that a need rests on. */
export function countRecord({ state, count }: ColonyFacts, { entryOf }: NeedFacts): NeedRecord[] {
  if (count === null) return [];
  return [{ day: count.day, words: `${count.mites} ${count.mites === 1 ? 'mite' : 'mites'} in ${count.bees} bees: ${per100Words(count.per100)} in 100.`, entry: entryOf(state.id, 'mites', count.day) }];
}

/** The look that counted the frames. */
export function strengthRecord({ state, strength }: ColonyFacts, { entryOf }: NeedFacts): NeedRecord[] {
  if (strength === null) return [];
  const brood = strength.framesBrood === null ? '' : `, ${strength.framesBrood} of brood`;
  return [{ day: strength.day, words: `${strength.framesBees} frames of bees${brood}.`, entry: entryOf(state.id, 'inspection', strength.day) }];
}

export function treatedRecord({ from, until, ingredient, entry }: TreatmentSpan): NeedRecord {
  return { day: from, words: `Treated with ${ingredient} from ${dayInWords(from)}${until === from ? '' : ` until ${dayInWords(until)}`}.`, entry };
}

/** "9 days ago", "today". */
export function ago(days: number): string {
  return days === 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;
}

export function latestOf(...days: (Day | null | undefined)[]): Day | null {
  return days.reduce<Day | null>((found, one) => (one != null && (found === null || one > found) ? one : found), null);
}

/** "64 in 100" of a chance, never quite none and never quite all. */
export function chanceWords(chance: number): string {
  return `${Math.min(99, Math.max(1, Math.round(100 * chance)))} in 100`;
}

/** The record that an answer of another room rests on, in that room's words. */
export function restRecord({ state }: ColonyFacts, { rests, reason }: { readonly rests: RestsOn | null; readonly reason: string }, { entryOf }: NeedFacts): NeedRecord[] {
  return rests === null ? [] : [{ day: rests.day, words: reason, entry: entryOf(state.id, rests.kind, rests.day) }];
}
