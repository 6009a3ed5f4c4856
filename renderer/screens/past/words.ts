import { counted } from '../../parts/format.ts';

export const words = {
  title: 'Tonight',
  line: 'What the record had by that evening',
  resting: 'A round is entered today, so the sheet rests while you look at another day. What you typed on it is kept.',
  back: 'Back to today',
  entered: 'The last entries up to that evening',
  none: 'There are none.',
  act: (title: string, entries: number) => `${title} (${counted(entries, 'entry', 'entries')})`,
  days: (first: string, last: string) => (first === last ? first : `${first} to ${last}`),
  margin: 'What you see',
  marginText: 'Every screen shows the operation as it was at the end of that day: what has a later date is left out. What was entered late, mended or struck since counts as it stands in the book now.',
  marginNow: 'What has no date is as it is today: the house rules, what is written down of a yard, the order colonies stand in, and your units.',
} as const;
