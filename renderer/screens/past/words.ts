import { counted } from '../../parts/format.ts';

export const words = {
  title: 'Tonight',
  line: 'What the record had by that evening',
  resting: 'A round is entered today, so the sheet rests while you look at another day. What you typed on it is kept.',
  back: 'Back to today',
  entered: 'Entered last by then',
  none: 'Nothing of that time was entered yet.',
  act: (title: string, entries: number) => `${title} (${counted(entries, 'entry', 'entries')})`,
  days: (first: string, last: string) => (first === last ? first : `${first} to ${last}`),
} as const;
