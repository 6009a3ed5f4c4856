import type { YardId } from '#shared/brands.ts';
import type { PlanChoice } from '#shared/contract/work.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Paper, Store } from '#core/book/store.ts';
import type { DeskContext } from './desk.ts';
import { nextKey } from './offerPapers.ts';
import { choicePaper } from './workPapers.ts';

export type Said = Omit<PlanChoice, 'key'>;

/** Throws a fault where something cannot be said of a plan. */
export async function requireChoice(context: DeskContext, { kind, day, yard, task }: Said): Promise<void> {
  if (kind === 'drop' ? task === null : day === null || (yard === null && task === null)) {
    throw new FaultError(refuse('refused', kind === 'drop' ? 'No task was named to leave out.' : 'A visit or task is held with its day.', { mend: 'Choose it in the plan.' }));
  }
  if (yard !== null) await requireYards(context, [yard]);
}

export async function requireYards(context: DeskContext, ids: readonly YardId[]): Promise<void> {
  const yards = await context.open().store.yards();
  if (!ids.every((id) => yards.some((yard) => yard.id === id))) throw new FaultError(refuse('unknown', 'That yard is not in this book.', { field: 'yard' }));
}

export function sameChoice(one: Said, other: Said): boolean {
  return one.kind === other.kind && one.day === other.day && one.yard === other.yard && one.task === other.task;
}

export function choicePaperOf({ key, kind, day, yard, task }: PlanChoice): Paper {
  return { kind: choicePaper, key, body: JSON.stringify({ kind, day, yard, task }) };
}

export function withoutChoice(key: string): Paper {
  return { kind: choicePaper, key, body: null };
}

export function noLongerHeld(): FaultError {
  return new FaultError(refuse('unknown', 'That is no longer held.'));
}

/** A key that nothing taken away ever had either: the book’s position never comes back, so it counts with them. An Undo or a phone’s calendar may still hold the old one. */
export async function unusedKey(store: Store, letter: string, kept: readonly { readonly key: string }[]): Promise<string> {
  return nextKey(letter, [`${letter}${await store.position()}`, ...kept.map(({ key }) => key)]);
}
