import type { PlannedSheet } from '#shared/contract/trips.ts';
import type { Day } from '#shared/days.ts';
import type { RoundKind } from '#shared/roundSheets.ts';
import { dayWithWeekday } from '../../parts/format.ts';
import { headOf, names } from './columnWords.ts';
import { words } from './words.ts';

const colonies = (count: number) => (count === 1 ? '1 colony' : `${count} colonies`);

const list = (all: readonly string[]) => (all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`);

/** “Stores, and for “Count mites” also: mites counted, bees in the sample”: the sheet, and what stands on it for planned work beside its own. */
export function sheetName(kind: RoundKind, planned: PlannedSheet | null): string {
  const more = (planned?.works ?? []).flatMap(({ what, columns }) => (columns.length === 0 ? [] : [`, and for ${list(what.map((one) => `“${one}”`))} also: ${columns.map((column) => names[column]).join(', ')}`]));
  return `${words.kinds[kind]}${more.join(';')}`;
}

/** What stands on the sheet that goes into the yard. */
export const paperWords = {
  headOf,
  sheetName,
  sheet: 'Field sheet',
  title: (yard: string, day: Day) => `${yard}, ${dayWithWeekday(day)}`,
  line: (book: string, code: string, kind: string, count: number) => `${book}, yard ${code}. ${kind}: ${colonies(count)} in stand order.`,
  running: (book: string, yard: string, day: string) => `${book}, ${yard}, ${day}`,
  colony: 'Colony',
  queen: 'Queen',
  told: 'Found last, and what to look for',
  noLook: 'Not looked at yet.',
  last: (day: string, sentence: string) => `${day}: ${sentence}.`,
  queenIs: (colour: string, year: number, age: number | null, marked: boolean) => `${colour} ${year}${age === null ? '' : `, ${age === 0 ? 'this year’s' : `year ${age + 1}`}`}${marked ? ', marked' : ''}`,
  queenUnknown: (marked: boolean) => (marked ? 'year not known, marked' : 'year not known'),
  todo: (what: string) => `☐ ${what}`,
  empty: 'No colony is recorded alive in this yard on this day.',
  foot: 'From: ________  to: ________   People: __________   Miles: __________   Weather: ______________________________',
  print: 'Print the field sheet',
  back: 'Back to Tonight',
  nowhere: 'The address names no yard and day of this book.',
} as const;
