export const words = {
  title: (kind: string, day: string) => `${kind}, ${day}`,
  line: 'One entry of the journal.',
  noSuch: 'There is no such entry',
  says: 'Entry',
  note: 'Note',
  day: 'Day',
  yard: 'Yard',
  colonies: 'Colonies',
  none: 'none',
  struck: (reason: string | null) => (reason === null ? 'Struck; it no longer counts.' : `Struck; it no longer counts: ${reason}`),
} as const;
