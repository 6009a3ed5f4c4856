import type { GestureRow } from '#shared/contract/journal.ts';
import { counted, dayText } from '../../parts/format.ts';
import { dayFromIso } from '#shared/days.ts';

const did: Record<GestureRow['kind'], string> = {
  enter: 'Entered', import: 'Brought in', strike: 'Struck', replace: 'Replaced', undo: 'Taken back', redo: 'Brought back',
};

/** What the page of one act says. */
export const words = {
  noSuch: 'There is no such act',
  when: ({ kind, at }: GestureRow) => `${did[kind]} on ${dayText(dayFromIso(at.slice(0, 10)))} at ${at.slice(11)}.`,
  holds: (total: number) => (total === 0 ? 'It holds no entries.' : `${counted(total, 'entry', 'entries')}.`),
  undone: 'This was taken back and no longer counts.',
  about: 'It is about:',
  entries: 'Its entries',
  what: { entered: '', struck: 'struck: ', 'brought back': 'brought back: ' },
  day: 'Day',
  colonies: 'Colonies',
  entry: 'Entry',
  noLonger: 'no longer counts',
  shown: (first: string, last: string, total: string) => `${first} to ${last} of ${total}`,
  earlier: 'Earlier entries',
  later: 'Later entries',
  unsorted: (count: number) => `${counted(count, 'row', 'rows')} of its file could not be entered with it.`,
  toSortOut: 'To sort out',
  listTitle: 'What was entered',
  listLine: 'Everything done at the desk, the last first. Open one to see its entries or take it back.',
  listNone: 'Nothing has been entered yet.',
  listWhen: 'When',
  listWhat: 'What',
  listEntries: 'Entries',
  listUndone: 'taken back',
  listMost: (count: number) => `These are the last ${count}. Older entries are in the colonies’ stories, and Find finds them.`,
  margin: 'One act',
  marginText: 'What was entered, struck or brought in together is one act. It is taken back as a whole; nothing is ever removed from the journal, so it can be brought back.',
} as const;
