import type { Day } from '#shared/days.ts';
import { dayWithWeekday, fixed } from '../../parts/format.ts';

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
  item: (count: number, item: string) => `${fixed(count, Number.isInteger(count) ? 0 : 1)} ${item}`,
  order: 'Order of the yards',
  yard: (at: number, name: string, arrive: string, leave: string) => `${at}. ${name}, ${arrive} to ${leave}`,
  done: 'Done',
  task: 'Task',
  colonies: 'Colonies',
  minutes: 'Minutes of work',
  why: 'Why',
  some: (count: number, of: number, known: boolean) => (known ? `${count} of ${of}: ` : `${count} of these ${of}: `),
  allOf: (of: number) => `all ${of}: `,
  box: '☐',
  enter: (yard: string) => `Enter the round of ${yard}`,
  weather: { any: 'In any weather', dry: 'Wants a dry day', flying: 'Wants a dry, calm day, warm enough for bees to fly' } as const,
  caution: 'Telephone, water, veil, smoker and something to put it out with; the plan for a bad sting.',
} as const;
