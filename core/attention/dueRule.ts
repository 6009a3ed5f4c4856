import type { EntryId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import type { Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';

/** All that a rule may look at of one colony. */
export interface DueRecord {
  readonly state: ColonyState;
  /** The standing entries that name it, and the treatments of whole yards while it stood there; in the journal's order. */
  readonly entries: readonly Entry[];
  readonly said: (entry: Entry) => string;
  readonly borders: Borders;
}

/** Something that an entry made due. Without `done`, `overtaken` or `untold` it stays open. */
export interface Due {
  /** What is to be done, as a beekeeper would say it. */
  readonly what: string;
  /** The record it follows from. */
  readonly reason: string;
  readonly cause: EntryId;
  readonly earliest: Day;
  readonly latest: Day;
  readonly done: Entry | null;
  /** Why it no longer needs doing. */
  readonly overtaken: { readonly day: Day; readonly says: string } | null;
  /** Where the book has no entry for the act: what it can say instead. */
  readonly untold: string | null;
}

/** One rule: what it asks for, on what numbers, and what it finds in a colony's record. */
export interface DueRule {
  readonly key: DueItem['rule'];
  /** Keys of its house rules. */
  readonly numbers: readonly string[];
  readonly find: (record: DueRecord, rules: RuleValues) => Due[];
}

/** The first that ends the waiting before `done`: the colony's end, or another queen. */
export function overtakenBy({ state }: DueRecord, cause: Entry, done: Entry | null, queensCount: boolean): Due['overtaken'] {
  const found: NonNullable<Due['overtaken']>[] = [];
  if (state.end !== null) found.push({ day: state.end, says: endings[state.how] });
  if (queensCount) {
    const next = state.reigns.find(({ queen, since }) => queen !== cause.id && (since > cause.day || (since === cause.day && queen > cause.id)));
    if (next !== undefined) found.push({ day: next.since, says: 'Another queen was there before.' });
  }
  const first = found.toSorted((a, b) => (a.day < b.day ? -1 : 1))[0];
  return first === undefined || (done !== null && done.day <= first.day) ? null : first;
}

const endings: Readonly<Record<ColonyState['how'], string>> = {
  alive: '', lost: 'The colony was lost before.', sold: 'The colony was sold before.', given: 'The colony was given away before.', combined: 'The colony was united into another before.', absconded: 'The colony absconded before.',
};

/** The first entry from that day on that tells whether a queen lays: eggs looked for, or the queen herself seen. */
export function layingTold(entries: readonly Entry[], from: Day): Entry | null {
  return entries.find((entry) => entry.day >= from && ((entry.kind === 'inspection' && (entry.body.eggs !== undefined || entry.body.queenSeen === true)) || (entry.kind === 'queen' && (entry.body.what === 'seen' || entry.body.what === 'marked')))) ?? null;
}
