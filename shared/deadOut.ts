import type { Cells } from './entryForms.ts';
import { causes as knownCauses } from './entryForms.ts';

export type Cause = (typeof knownCauses)[number];

/**
 * What can be seen in and at a dead hive: a closed list. The words are what stands in the loss entry's note, so a
 * sign is found again in a book that went out and in as a file; words once used are never changed, only added to.
 */
export const deadOutSigns = {
  'bees-none': 'no bees left in the hive',
  'bees-few': 'only a handful of dead bees',
  'cluster-small': 'dead cluster no bigger than a fist',
  'cluster-large': 'large dead cluster',
  'heads-in-cells': 'bees head first in empty cells',
  'stores-none': 'no stores left',
  'stores-away': 'stores left, none where the cluster was',
  'stores-beside': 'stores beside the cluster',
  'brood-none': 'no brood',
  'brood-spotty': 'a few scattered capped cells',
  'brood-solid': 'a solid patch of dead brood',
  'brood-drone': 'drone brood in worker cells',
  'mite-frass': 'white specks of mite droppings in the brood cells',
  'mites-seen': 'mites on dead bees or on the floor',
  'wings-deformed': 'bees with deformed wings',
  'queen-found': 'dead queen found',
  'queen-missing': 'looked for the queen and found none',
  'queen-cells': 'emergency or supersedure cells',
  'eggs-many': 'several eggs in one cell',
  dysentery: 'brown streaks on combs, hive or front',
  wet: 'wet bees or water under the lid',
  mould: 'mould on bees and combs',
  'robbed-combs': 'cappings torn ragged, crumbs of wax on the floor',
  'front-heap': 'a heap of dead bees in front, tongues out',
  'front-fight': 'bees seen fighting or robbing before it died',
  upset: 'hive thrown over or broken open',
  gnawed: 'combs gnawed or a mouse nest',
  'under-water': 'mud or a water line in the hive',
  'moths-after': 'wax moth or hive beetle in the combs',
  'brood-ropy': 'dead brood that draws out in a thread',
  'brood-sunken': 'sunken or pierced brood cappings',
  'brood-scale': 'dark scales stuck in brood cells',
  'brood-smell': 'foul smell from the brood',
} as const;
export type DeadOutSign = keyof typeof deadOutSigns;
export const deadOutSignNames = Object.keys(deadOutSigns) as [DeadOutSign, ...DeadOutSign[]];

/** The look in the order in which a hive is opened; of the signs of one `one` step at most one is true. */
export const deadOutSteps: readonly { readonly heading: string; readonly one?: true; readonly signs: readonly DeadOutSign[] }[] = [
  { heading: 'In front, and the hive from outside', signs: ['front-heap', 'front-fight', 'upset', 'under-water', 'dysentery'] },
  { heading: 'The dead bees', one: true, signs: ['bees-none', 'bees-few', 'cluster-small', 'cluster-large'] },
  { heading: 'On and among the bees', signs: ['heads-in-cells', 'mites-seen', 'wings-deformed', 'wet', 'mould'] },
  { heading: 'Stores', one: true, signs: ['stores-none', 'stores-away', 'stores-beside'] },
  { heading: 'Brood', one: true, signs: ['brood-none', 'brood-spotty', 'brood-solid', 'brood-drone'] },
  { heading: 'In the brood cells and combs', signs: ['mite-frass', 'eggs-many', 'robbed-combs', 'gnawed', 'moths-after'] },
  { heading: 'Queen', signs: ['queen-found', 'queen-missing', 'queen-cells'] },
  { heading: 'Signs of foulbrood', signs: ['brood-ropy', 'brood-sunken', 'brood-scale', 'brood-smell'] },
];

/** Each of these alone is enough to stop and call the inspector. */
export const foulbroodSigns: readonly DeadOutSign[] = ['brood-ropy', 'brood-sunken', 'brood-scale', 'brood-smell'];

const opening = 'Dead-out: ';
const bySaying = new Map<string, DeadOutSign>(deadOutSignNames.map((sign) => [deadOutSigns[sign], sign]));

/** A note parted into the person's own words and the signs of an earlier look; signs of no known saying stay words. */
export function readDeadOutNote(note: string): { words: string; signs: DeadOutSign[] } {
  const at = note.lastIndexOf(opening);
  if (at < 0 || (at > 0 && !/\s/.test(note[at - 1] ?? ''))) return { words: note, signs: [] };
  const end = note.indexOf('.', at);
  const sayings = note.slice(at + opening.length, end < 0 ? undefined : end).split('; ');
  const signs = sayings.map((saying) => bySaying.get(saying));
  if (end < 0 || signs.includes(undefined)) return { words: note, signs: [] };
  const words = [note.slice(0, at).trimEnd(), note.slice(end + 1).trimStart()].filter((part) => part !== '').join(' ');
  return { words, signs: deadOutSignNames.filter((sign) => signs.includes(sign)) };
}

/** The note of the loss entry: the person's own words, then the signs in words. */
export function writeDeadOutNote(words: string, signs: readonly DeadOutSign[]): string {
  const seen = deadOutSignNames.filter((sign) => signs.includes(sign)).map((sign) => deadOutSigns[sign]);
  return [words.trim(), seen.length === 0 ? '' : `${opening}${seen.join('; ')}.`].filter((part) => part !== '').join(' ');
}

/** The loss as a row of the exchange form. Without a cause that was taken up, the cause is `unknown`. */
export function deadOutRow(base: Cells, taken: readonly Cause[], words: string, signs: readonly DeadOutSign[]): Cells {
  const { note: _, ...rest } = base;
  const chosen = knownCauses.filter((cause) => taken.includes(cause));
  const known = chosen.length > 1 ? chosen.filter((cause) => cause !== 'unknown') : chosen;
  const note = writeDeadOutNote(words, signs);
  return { ...rest, entry: 'loss', cause: known.length === 0 ? 'unknown' : known.join(';'), ...(note === '' ? {} : { note }) };
}
