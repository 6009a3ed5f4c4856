import type { NeedItem, NeedWeather } from '#shared/contract/needs.ts';
import { countedItems } from '#shared/itemWords.ts';
import { number } from '../../parts/format.ts';

const measures = ['gal', 'l', 'lb', 'kg'];
/** "3 blocks of fondant", "12.5 gal of heavy syrup (2:1)", "19 winter wraps" */
function things(count: number, unit: string, item: string): string {
  if (unit === '') return countedItems(count, item);
  return `${measures.includes(unit) ? `${number(count, 1)} ${unit}` : countedItems(count, unit)} of ${item}`;
}

/** What the list of needs says. */
export const words = {
  title: 'What needs doing',
  line: 'Which colonies and yards need something, by when, and why; the most urgent first.',
  list: 'The list',
  yard: 'Yard',
  allYards: 'all',
  yardLines: (name: string, lines: number) => `${name}: ${lines}`,
  sentence: (now: number, overdue: number, minutes: string) => `${now === 1 ? '1 thing is' : `${now} things are`} to be done now${overdue === 0 ? '' : now === 1 ? ', and it is overdue' : `, ${overdue} of them overdue`}; about ${minutes} of work, without the way.`,
  nothing: 'Nothing is asked for now, by the rules there are.',
  nothingYet: 'What colonies need will stand here, from what you write down.',
  nothingYetNext: 'Enter a round',
  optional: 'If you want to',
  coming: 'Soon',
  by: (day: string) => `by ${day}`,
  late: 'overdue',
  overdue: (day: string) => `overdue since ${day}`,
  from: (day: string) => `from ${day}`,
  hours: (minutes: number) => (minutes < 90 ? `${Math.round(minutes)} min` : `${Math.round(minutes / 30) / 2} h`),
  colonies: (count: number) => (count === 1 ? '1 colony' : `${count} colonies`),
  yards: (count: number) => (count === 1 ? '1 yard' : `${count} yards`),
  wholeYard: 'the whole yard',
  someLate: (count: number) => `${count} of them overdue`,
  show: (act: string, who: string) => `${who}: ${act}`,
  more: (count: number) => `and ${count} more`,
  moreOf: (count: number) => `and ${count} more that are not listed here`,
  openPage: 'Open the page for this',
  later: 'Put off',
  laterOf: (act: string) => `Put off: ${act}`,
  until: 'Until',
  most: (day: string) => `${day} at the most`,
  reason: 'Why',
  reasonHelp: 'needed when it is dismissed for good',
  putOff: 'Put off until then',
  dismiss: 'Dismiss for good',
  leave: 'Leave it',
  noDay: 'That is no day. Write it as 12/31/2026 or 2026-12-31.',
  saidOff: (act: string, day: string) => `Put off until ${day}: ${act}.`,
  saidGone: (act: string) => `Dismissed: ${act}.`,
  saidBack: (act: string) => `Asked for again: ${act}.`,
  offHeading: (count: number) => `Put off or dismissed: ${count}`,
  offUntil: (day: string) => `until ${day}`,
  offGone: 'dismissed',
  offAsks: 'the record still asks for it',
  again: 'Ask again',
  againOf: (act: string, about: string) => `Ask again: ${act}, ${about}`,
  why: 'Why',
  records: 'The records behind it',
  take: 'Take along',
  item: ({ item, count, unit }: Pick<NeedItem, 'item' | 'count' | 'unit'>) => things(count, unit, item),
  rank: 'Its place in the list',
  numbers: 'The numbers behind it',
  people: (count: number) => `${count} people are needed.`,
  weather: {
    open: 'Weather to open hives in.', quick: 'Weather for a quick look.', top: 'Only the lid is lifted.', label: 'The label says which weather.', any: '',
  } satisfies Record<NeedWeather, string>,
  how: 'How the list is ordered',
  howText: 'How grave a thing is, by the house rule, and how late it is. The same act for the same reason is one line. Point at a line, or go to it with Tab, and its records, numbers and sources stand here.',
  howMore: 'The rules go by what is written down. What was done and not entered is still asked for: enter it, or dismiss it with a reason.',
} as const;
