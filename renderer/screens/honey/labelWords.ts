import { counted } from '../../parts/format.ts';

/** The words of the labels, and of the page on which they are chosen. */
export const labelWords = {
  title: (lot: string) => `Labels, lot ${lot}`,
  print: 'Print the labels',
  back: (lot: string) => `Back to lot ${lot}`,
  size: 'Jars',
  count: 'Labels',
  paper: 'Paper',
  papers: { letter: 'Letter', A4: 'A4' },
  who: 'Your name and place',
  whoHelp: 'As it should stand on each jar; kept for the next lot.',
  heading: 'Honey',
  weight: 'Net weight',
  lot: 'Lot',
  bestBefore: 'Best before',
  infants: 'Do not feed honey to infants under 12 months.',
  caution: 'Honey is not for infants under 12 months: it can carry spores of botulism. The sentence stands on every label.',
  line: (labels: number, sheets: number, perSheet: number) => `${counted(labels, 'label', 'labels')} on ${counted(sheets, 'sheet', 'sheets')} of ${perSheet}.`,
  holds: (text: string) => `Each code holds plain text that any scanner shows, such as “${text}”; typed or scanned on the Honey page it leads back to the hives.`,
  law: 'What else a label must say, and in what size, is the law of your place.',
  none: 'No jars were filled from this lot yet. Write them down on its page, and their labels stand here.',
  badCount: (most: number) => `Type a whole number of labels, up to ${most}.`,
  code: (lot: string) => `Code of lot ${lot}`,
  label: (at: number) => `Label ${at}`,
  sheet: (at: number, of: number) => `Sheet ${at} of ${of}`,
  noBest: 'These jars have no day of best before in the book.',
} as const;
