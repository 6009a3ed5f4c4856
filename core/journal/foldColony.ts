import { dayInWords } from '#shared/days.ts';
import type { ColonyId } from '#shared/brands.ts';
import type { ColonyState } from './colonyState.ts';
import type { FoldContext, Part, Refusal } from './kindRules.ts';
import { rulesOf, type Entry } from './kinds.ts';

export interface FoldResult {
  /** Null when no entry brings the colony into being. */
  readonly state: ColonyState | null;
  /** The entries that cannot stand, each with the reason; the fold goes on without them. */
  readonly refused: readonly { readonly entry: Entry; readonly refusal: Refusal }[];
}

export function partIn(entry: Entry, colony: ColonyId): Part {
  const touch = rulesOf(entry.kind).touches(entry.body).find((one) => one.colony === colony);
  if (touch === undefined) throw new Error(`entry ${entry.id} does not touch colony ${colony}`);
  return touch.part;
}

/** Why the entry cannot follow on the state, or null. Changes nothing. */
export function checkStep(state: ColonyState | null, entry: Entry, part: Part): Refusal | null {
  if (part === 'created') return null;
  const column = part === 'into' ? 'into' : 'colony';
  if (state === null) return { column, sentence: `The colony is not there on ${dayInWords(entry.day)}. Correct the day, or enter how it began first.` };
  if (state.end !== null) return { column, sentence: endedSentence(state, entry) };
  return rulesOf(entry.kind).check?.(state, entry, part) ?? null;
}

/** "G62 was recorded lost on 14 February 2025 …" with what would mend it. */
export function endedSentence(state: ColonyState, entry: Pick<Entry, 'day' | 'kind'>): string {
  const ended: Record<ColonyState['how'], string> = {
    alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'combined into another', absconded: 'absconded',
  };
  return `${state.label} was recorded ${ended[state.how]} on ${dayInWords(state.end ?? state.lastDay)}, so an entry of kind “${entry.kind}” on ${dayInWords(entry.day)} cannot stand. Correct the day, or strike the earlier record.`;
}

/** The state after the entry; `state` itself is changed where it exists. Call `checkStep` first. */
export function applyStep(state: ColonyState | null, entry: Entry, part: Part, context: FoldContext): ColonyState {
  const rules = rulesOf(entry.kind);
  if (part === 'created') {
    if (rules.create === undefined) throw new Error(`entries of kind ${entry.kind} create no colony`);
    return rules.create(entry, context);
  }
  if (state === null) throw new Error(`entry ${entry.id} has no colony to change`);
  rules.effect?.(state, entry, part);
  state.lastDay = entry.day;
  return state;
}

/** Folds the standing entries that name one colony, given in the journal's order. */
export function foldColony(colony: ColonyId, entries: readonly Entry[], context: FoldContext): FoldResult {
  let state: ColonyState | null = null;
  const refused: { entry: Entry; refusal: Refusal }[] = [];
  for (const entry of entries) {
    const part = partIn(entry, colony);
    const refusal = checkStep(state, entry, part);
    if (refusal === null) state = applyStep(state, entry, part, context);
    else refused.push({ entry, refusal });
  }
  return { state, refused };
}

/** The journal's order: by day, then by place within all entries. */
export function byOrder(a: Pick<Entry, 'day' | 'place'>, b: Pick<Entry, 'day' | 'place'>): number {
  return a.day < b.day ? -1 : a.day > b.day ? 1 : a.place - b.place;
}
