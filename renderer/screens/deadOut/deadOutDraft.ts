import { deadOutSignNames, type Cause, type DeadOutSign } from '#shared/deadOut.ts';
import { causes } from '#shared/entryForms.ts';
import { parsedDraft } from '../../parts/restoredParts.ts';

/** What is ticked and typed before it is written down. */
export interface DeadOutDraft {
  readonly day: string;
  readonly signs: readonly DeadOutSign[];
  readonly taken: readonly Cause[];
  readonly words: string;
}

/** A draft as it was kept, or null where it is none; signs and causes that are not known are left out. */
export function readDeadOutDraft(body: string): DeadOutDraft | null {
  const { day, signs, taken, words } = parsedDraft(body) ?? {};
  if (typeof day !== 'string' || typeof words !== 'string' || !Array.isArray(signs) || !Array.isArray(taken)) return null;
  return { day, words, signs: deadOutSignNames.filter((sign) => signs.includes(sign)), taken: causes.filter((cause) => taken.includes(cause)) };
}
