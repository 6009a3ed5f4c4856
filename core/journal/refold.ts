import { dayInWords } from '#shared/days.ts';
import type { ColonyId } from '#shared/brands.ts';
import { yardBefore, type ColonyState } from './colonyState.ts';
import { byOrder, foldColony } from './foldColony.ts';
import type { FoldContext, Refusal } from './kindRules.ts';
import type { Entry } from './kinds.ts';

export interface Refolded {
  /** New states; null where nothing brings the colony into being any more. */
  readonly states: ReadonlyMap<ColonyId, ColonyState | null>;
  readonly refused: readonly { readonly entry: Entry; readonly refusal: Refusal }[];
}

/**
 * Folds a set of colonies anew from their standing entries. Mothers come before their daughters, because a
 * split's new colony takes its yard, and sometimes its queen, from the mother; mothers outside the set are
 * looked up in the states as they stand.
 */
export function refold(
  entriesOf: ReadonlyMap<ColonyId, readonly Entry[]>,
  stateOutside: (colony: ColonyId) => ColonyState | null,
): Refolded {
  const states = new Map<ColonyId, ColonyState | null>();
  const refused: { entry: Entry; refusal: Refusal }[] = [];
  const context = foldContext((colony) => (entriesOf.has(colony) ? (states.get(colony) ?? null) : stateOutside(colony)));
  const ordered = [...entriesOf].sort(([, a], [, b]) => {
    const [first, second] = [a[0], b[0]];
    if (first === undefined || second === undefined) return first === second ? 0 : first === undefined ? -1 : 1;
    return byOrder(first, second);
  });
  for (const [colony, entries] of ordered) {
    const [first] = entries;
    if (first?.kind === 'split' && first.body.child === colony && entriesOf.has(first.body.colony) && (states.get(first.body.colony) ?? null) === null) {
      // Its mother is not there to be split; the mother's own fold refuses the entry, so it is named once.
      states.set(colony, null);
      continue;
    }
    const result = foldColony(colony, entries, context);
    states.set(colony, result.state);
    refused.push(...result.refused);
  }
  return { states, refused };
}

export function foldContext(stateOf: (colony: ColonyId) => ColonyState | null): FoldContext {
  return {
    reignEndedBy: (colony, entry) => stateOf(colony)?.reigns.find((reign) => reign.endEntry === entry) ?? null,
    yardBefore: (colony, entry) => {
      const state = stateOf(colony);
      if (state === null) throw new Error(`colony ${colony} is not there to be split`);
      return yardBefore(state, entry);
    },
  };
}

/**
 * The first two colonies among those given, all of one label, that carry it at the same time; the label of a
 * colony that has ended is free again from the entry that ended it.
 */
export function labelClash(states: readonly ColonyState[]): { earlier: ColonyState; later: ColonyState } | null {
  const ordered = states.toSorted((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : a.startPlace - b.startPlace));
  for (let at = 1; at < ordered.length; at += 1) {
    const [earlier, later] = [ordered[at - 1], ordered[at]];
    if (earlier === undefined || later === undefined) continue;
    const free = earlier.end !== null && (earlier.end < later.start || (earlier.end === later.start && (earlier.endPlace ?? 0) < later.startPlace));
    if (!free) return { earlier, later };
  }
  return null;
}

export function labelClashSentence({ earlier, later }: { earlier: ColonyState; later: ColonyState }): string {
  return `The label ${later.label} is carried by a colony that began on ${dayInWords(earlier.start)} and ${earlier.end === null ? 'has not ended' : `ended on ${dayInWords(earlier.end)}`}, so another cannot take it on ${dayInWords(later.start)}. Give another label, or enter how the first one ended.`;
}
