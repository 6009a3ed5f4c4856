import type { Day } from '#shared/days.ts';
import type { PlannedSheet, TripTask } from '#shared/contract/trips.ts';
import { counted, dayShort, dayWithWeekday } from '../../parts/format.ts';
import { paperWords, sheetName } from '../tonight/paperWords.ts';

const sheetIs = (sheet: PlannedSheet) => `Round sheet: ${sheetName(sheet.kind, sheet)}.`;

/** What stands on the sheet for a day's trip. */
export const tripWords = {
  sheet: 'Trip sheet',
  title: (day: Day) => `Trip of ${dayWithWeekday(day)}`,
  line: (book: string, leave: string, back: string, people: readonly string[], driving: string) => `${book}. Leave at ${leave}, back at ${back}, ${driving} of driving; ${people.join(' and ')}.`,
  notKept: 'This plan is not kept yet.',
  none: 'The plan has no trip on this day.',
  nowhere: 'The address names no day.',
  back: 'Back to the plan',
  print: 'Print the trip sheet',
  load: 'To load',
  loadNone: 'Nothing is named to load.',
  inCase: (thing: string) => `in case: ${thing}`,
  order: 'Order of the yards',
  yard: (at: number, name: string, arrive: string, leave: string) => `${at}. ${name}, ${arrive} to ${leave}`,
  done: 'Done',
  task: 'Task',
  colonies: 'Colonies',
  minutes: 'Minutes',
  why: 'Why',
  some: (count: number, of: number, known: boolean) => (known ? `${count} of ${of}: ` : `${count} of these ${of}: `),
  allOf: (of: number) => `${counted(of, 'colony', 'colonies')}: `,
  box: '☐',
  enter: (yard: string) => `Enter the round of ${yard}`,
  weather: { any: 'In any weather', dry: 'Wants a dry day', flying: 'Wants a dry, calm day, warm enough for bees to fly' } as const,
  always: 'hive tool, veil, gloves, smoker and something to put it out with; telephone, water, the plan for a bad sting',
  whole: (of: number) => (of === 1 ? 'the one there' : `all ${of}`),
  someOf: (count: number, of: number) => (count === of ? counted(of, 'colony', 'colonies') : `${count} of ${of}`),
  ended: ({ day, how }: NonNullable<TripTask['colonies'][number]['ended']>) => `(${how} ${dayShort(day)})`,
  among: (share: string) => `${share}, as you choose`,
  withDetail: (what: string, detail: string) => `${what}: ${detail}`,
  todo: (what: string) => `☐ ${what}`,
  sheetIs,
  noSheet: 'Nothing of this is written down colony by colony, so there is no round sheet.',
  foot: paperWords.foot,
  lookOver: (label: string) => `Look over the dead-out ${label}`,
  deadOut: 'Dead-out',
  toDo: 'To do',
  deadFound: 'What was found: brood, stores, bees, damp, mice, smell',
} as const;
