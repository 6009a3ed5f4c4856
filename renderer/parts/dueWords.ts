import type { DueItem } from '#shared/contract/due.ts';

/** What is said of things that are due, on a colony's page and a yard's. */
export const dueWords = {
  heading: 'What was due and done',
  yardHeading: 'What is due here',
  none: 'Nothing of this colony asks for anything, by the rules there are.',
  yardNone: 'Nothing is due here now that follows from what was entered of the colonies.',
  yardNeeds: (acts: readonly string[]) => `Needed here now: ${acts.join('; ')}.`,
  toNeeds: 'What needs doing',
  what: 'What',
  days: (value: number) => (value === 1 ? '1 day' : `${value} days`),
  when: 'When',
  state: 'How it stands',
  on: (day: string) => `On ${day}.`,
  between: (first: string, last: string) => `From ${first} to ${last}.`,
  range: (first: string, last: string) => (first === last ? first : `${first} – ${last}`),
  status: { coming: 'not yet', due: 'due now', overdue: 'overdue', missed: 'not in the book', done: 'done', overtaken: 'no longer needed', 'not told': 'not told' } as Readonly<Record<DueItem['status'], string>>,
  done: (day: string, sentence: string) => `${day}. ${sentence}`,
  late: (days: number) => (days === 1 ? '1 day late' : `${days} days late`),
  all: (count: number) => `Show all ${count}`,
  more: (count: number) => `and ${count} more`,
  confidence: { read: '', 'read-weak': ' (read, weak source)', 'from memory': ' (from memory)', 'common practice, no source': ' (common practice, no source)', arithmetic: ' (arithmetic)' },
  label: 'The label of the product says when it must be off, and what to wear.',
  rules: 'The numbers behind it',
  marginHeading: 'What was due',
  marginText: 'Each line follows from an entry by a rule of the house. Move over a line, or to it with Tab, and its record, days and source stand here.',
} as const;
