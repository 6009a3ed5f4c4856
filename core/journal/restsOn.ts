import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';

/** The entry that an answer about a colony rests on: the colony's own of that kind and day. */
export interface RestsOn {
  readonly kind: Kind;
  readonly day: Day;
}
