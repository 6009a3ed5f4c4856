import { counted } from '../../parts/format.ts';

export const words = {
  title: 'Tags',
  titleOf: (yard: string) => `Tags, ${yard}`,
  line: (tags: number, sheets: number) => `${counted(tags, 'tag', 'tags')} on ${counted(sheets, 'sheet', 'sheets')} of ten.`,
  print: 'Print the tags',
  back: 'Back to Colonies',
  yard: 'Yard',
  allYards: 'all living colonies',
  paper: 'Paper',
  papers: { letter: 'Letter', A4: 'A4' },
  choose: 'choose',
  noYard: 'That yard is not in this book. Choose another.',
  none: 'No colony stands there now.',
  many: (most: number) => `That is more than ${most} tags. Pick a yard, and print its tags.`,
  holds: (text: string, on: string | null) => `Each code holds plain text that any scanner shows: the colony’s number in this book and its label, such as “${text}”. It stays right when the colony moves; the yard and the queen are printed as they ${on === null ? 'are today' : `were on ${on}`}.`,
  queen: (mark: string) => `queen ${mark}`,
  queenUnknown: 'queen not known',
  code: (label: string) => `Code of ${label}`,
  sheet: (at: number, of: number) => `Sheet ${at} of ${of}`,
} as const;
