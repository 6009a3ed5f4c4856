import { answersAsOf } from '#shared/contract/asOf.ts';
import type { OperationName } from '#shared/contract/contract.ts';
import { dayValue } from '#shared/contract/values.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { FaultError, refuse, type Answer, type Fault } from '#shared/faults.ts';
import type { DeskContext } from './desk.ts';

/*
 * A day to look at is asked for beside an operation's own input, and answered in one place: the handler is given a book
 * that holds only what was recorded up to that day, and whose today is that day. No handler knows of it.
 */

/** Parts the day from what the operation itself is asked. */
export function takeAsOf(name: OperationName, input: unknown): Answer<{ readonly asOf: Day | null; readonly own: unknown }> {
  if (!answersAsOf(name) || typeof input !== 'object' || input === null || !('asOf' in input)) return { ok: true, value: { asOf: null, own: input } };
  const { asOf, ...own } = input;
  if (asOf === undefined) return { ok: true, value: { asOf: null, own } };
  const parsed = dayValue.safeParse(asOf);
  if (!parsed.success) return refuse('bad-input', 'What was typed is no day.', { field: 'asOf', mend: 'Write a day such as 2025-02-14.' });
  return { ok: true, value: { asOf: parsed.data, own } };
}

/** The desk as it stood on that evening; throws a fault for a day that has nothing to show. */
export async function lookingBack(context: DeskContext, asOf: Day): Promise<DeskContext> {
  const book = context.book();
  if (book === null) return context;
  const today = await book.today(context.options.now().day);
  if (asOf > today) throw new FaultError(refuse('refused', `${dayInWords(asOf)} is still to come; today is ${dayInWords(today)}.`, { field: 'asOf', mend: 'Choose today or a day before it.' }));
  const { firstDay } = await book.store.counts();
  if (firstDay === null) throw new FaultError(refuse('refused', 'This book has no record yet, so there is no earlier day to look at.', { field: 'asOf', mend: 'Enter a record, or bring records in.' }));
  if (asOf < firstDay) throw new FaultError(refuse('refused', `The first record in this book is of ${dayInWords(firstDay)}; there is nothing to see on ${dayInWords(asOf)}.`, { field: 'asOf', mend: 'Choose that day or a later one.' }));
  const past = book.asOf(asOf);
  return { ...context, book: () => past, open: () => past };
}

/** What is not known on the day that is looked at may be in the book all the same. */
export function lateComer(fault: Fault, asOf: Day): Fault {
  if (fault.code !== 'unknown') return fault;
  return { ...fault, sentence: `What you ask for was not in the book on ${dayInWords(asOf)}.`, mend: 'It may have come later: go back to today to see it.' };
}
