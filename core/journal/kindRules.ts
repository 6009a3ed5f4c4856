import type { z } from 'zod';
import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Column, Kind } from '#shared/entryForms.ts';
import type { MassUnit } from '#shared/units.ts';
import type { ColonyState, Reign } from './colonyState.ts';

/** An entry as the fold sees it: its day, its place among all entries, and its body. */
export interface EntryOf<Body> {
  readonly id: EntryId;
  readonly place: number;
  readonly day: Day;
  readonly kind: Kind;
  readonly body: Body;
}

/** In what part a colony is touched by an entry. */
export type Part = 'itself' | 'created' | 'mother' | 'into';

export interface Touch {
  readonly colony: ColonyId;
  readonly part: Part;
}

/** What an effect may look at beside the colony's own state. */
export interface FoldContext {
  /** The reign that the given entry ended in another colony; null if it ended none. */
  readonly reignEndedBy: (colony: ColonyId, entry: EntryId) => Reign | null;
  /** The yard another colony stands in just before the entry. */
  readonly yardBefore: (colony: ColonyId, entry: EntryOf<unknown>) => YardId;
}

/** How ids are called in sentences and cells. */
export interface Names {
  readonly colony: (id: ColonyId) => string;
  readonly yard: (id: YardId) => { code: string; name: string };
  readonly massUnit: MassUnit;
}

/** Why an entry cannot stand against the record of that day. */
export interface Refusal {
  readonly column: Column | null;
  readonly sentence: string;
}

/**
 * One kind of entry: the shape of its body, which colonies it touches, what it is checked against, what it
 * does to a colony's state, and the sentence that describes it. The general check (the colony lives on that
 * day) is the fold's; `check` adds what is particular to the kind.
 */
export interface KindRules<Body> {
  readonly body: z.ZodType<Body>;
  readonly touches: (body: Body) => readonly Touch[];
  readonly check?: (state: ColonyState, entry: EntryOf<Body>, part: Part) => Refusal | null;
  readonly create?: (entry: EntryOf<Body>, context: FoldContext) => ColonyState;
  readonly effect?: (state: ColonyState, entry: EntryOf<Body>, part: Part) => void;
  /** The colony whose page the sentence stands on may be named, so that it need not be repeated. */
  readonly sentence: (body: Body, names: Names) => string;
}

export function defineKind<Body>(rules: KindRules<Body>): KindRules<Body> {
  return rules;
}

/** Most kinds are about one colony or none. */
export function touchesItself(body: { readonly colony?: ColonyId | undefined }): readonly Touch[] {
  return body.colony === undefined ? [] : [{ colony: body.colony, part: 'itself' }];
}
