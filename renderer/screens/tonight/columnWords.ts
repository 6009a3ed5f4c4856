import { markMeanings, type MarkMeaning, type Marks } from '#shared/roundMarks.ts';
import type { RoundColumn } from '#shared/roundSheets.ts';
import type { MassUnit } from '#shared/units.ts';
import type { ActKey, ColumnKey } from './sheetColumns.ts';

/** Two lines above each column. */
export const heads: Readonly<Record<RoundColumn, readonly [string, string]>> = {
  bees: ['Bees', 'frames'],
  brood: ['Brood', 'frames'],
  stores: ['Stores', 'frames'],
  eggs: ['', 'Eggs'],
  queen: ['Queen', 'seen'],
  cells: ['Queen', 'cells'],
  temper: ['', 'Temper'],
  mites: ['Mites', 'count'],
  sample: ['in', 'bees'],
  feed: ['Fed', 'how much'],
  supersOn: ['Supers', 'on'],
  supersOff: ['Supers', 'off'],
  full: ['Full', 'weight'],
  empty: ['Empty', 'weight'],
  moisture: ['Water', '%'],
  lot: ['', 'Lot'],
  weight: ['Stores', 'weight'],
  treat: ['Treated', 'with'],
  act: ['Lost,', 'or act'],
  note: ['', 'Note'],
};

const weighed: ReadonlySet<RoundColumn> = new Set(['full', 'empty', 'weight']);

/** The lines above a column; weights stand in the book's unit. */
export function headOf(column: RoundColumn, massUnit: MassUnit): readonly string[] {
  const [first, second] = heads[column];
  return [first, weighed.has(column) ? massUnit : second].filter((line) => line !== '');
}

/** What stands beside a field under the row, where there is no room for its full name. */
export const fieldNames: Readonly<Record<ActKey, string>> = {
  newLabel: 'new colony', oldQueen: 'old queen', newQueen: 'new queen', splitBees: 'frames: bees', splitBrood: 'brood', splitStores: 'stores', toYard: 'to yard',
  queenYear: 'hatched', queenSource: 'queen from', supplier: 'seller', into: 'into colony',
};

/** Full names, for those who hear the sheet and for the margin. */
export const names: Readonly<Record<ColumnKey, string>> = {
  bees: 'frames of bees',
  brood: 'frames of brood',
  stores: 'frames of stores',
  eggs: 'eggs',
  queen: 'queen seen',
  cells: 'queen cells',
  temper: 'temper',
  mites: 'mites counted',
  sample: 'bees in the sample',
  feed: 'fed',
  supersOn: 'supers put on',
  supersOff: 'supers taken off',
  full: 'full weight',
  empty: 'empty weight',
  moisture: 'water in the honey',
  lot: 'lot',
  weight: 'stores weight',
  treat: 'treated with',
  act: 'lost, or act',
  note: 'note',
  newLabel: 'new colony',
  oldQueen: 'old queen',
  newQueen: 'new queen',
  splitBees: 'frames of bees moved',
  splitBrood: 'frames of brood moved',
  splitStores: 'frames of stores moved',
  toYard: 'to yard',
  queenYear: 'queen hatched in',
  queenSource: 'queen from',
  supplier: 'seller',
  into: 'combined into',
};

export const meaning: Readonly<Record<ColumnKey, string>> = {
  bees: 'Frames covered with bees on both sides; half frames count as 0.5.',
  brood: 'Full frames of brood, eggs to sealed, added up over the frames.',
  stores: 'Full frames of honey, nectar and bee bread, added up.',
  eggs: 'Whether you saw eggs: a queen laid here within three days.',
  queen: 'Whether you saw the queen herself.',
  cells: 'Queen cells with something in them, and why they were drawn.',
  temper: 'How the colony took being opened: 1 is gentle, 5 fierce.',
  mites: 'Mites counted in the sample. An empty cell is no count; 0 is a count.',
  sample: 'Bees in this colony’s sample, if other than the sheet says.',
  feed: 'Feed given: how much, and which if other than the sheet says.',
  supersOn: 'Boxes put on for honey.',
  supersOff: 'Boxes taken off; never more than are recorded on it.',
  full: 'What the full boxes weigh. Honey is the full weight less the empty weight.',
  empty: 'What the same boxes weigh empty, if other than the sheet says; 0 if honey alone was weighed.',
  moisture: 'Water in the honey, read off the refractometer.',
  lot: 'The lot that this honey goes into, if other than the sheet says.',
  weight: 'Stores weighed or hefted, in weight.',
  treat: 'A treatment by its active ingredient.',
  act: 'The colony is dead or gone, or was split, requeened or combined. The rest of the row is entered first.',
  note: 'Anything else worth finding again.',
  newLabel: 'The label of the colony that was made.',
  oldQueen: 'Whether the old queen stays here or moves with the new colony.',
  newQueen: 'How the queenless half gets its queen.',
  splitBees: 'Frames of bees that went into the new colony.',
  splitBrood: 'Frames of brood that went into the new colony.',
  splitStores: 'Frames of stores that went into the new colony.',
  toYard: 'Where the new colony stands; empty: in this yard.',
  queenYear: 'The year in which the new queen hatched.',
  queenSource: 'The line or the breeder the new queen comes from.',
  supplier: 'Who sold the queen.',
  into: 'The label of the colony that lives on.',
};

const weights = 'A number: 45, 45.5 or 45,5; lb or kg behind it if other than the book’s.';
const boxes = ({ deep, medium, shallow }: Marks) => `How many of which: 2${medium}, 1${deep}, 1${shallow}; several: 2${medium} 1${shallow}.`;
const few = 'Words, up to 80 characters.';

/** What can be typed in a cell. */
export const typing: Readonly<Record<ColumnKey, (marks: Marks) => string>> = {
  bees: () => 'A number: 8, 5.5 or 5,5.',
  brood: () => 'A number: 6, 5.5 or 5,5.',
  stores: () => 'A number: 2, 1.5 or 1,5.',
  eggs: ({ yes, no }) => `${yes} yes, ${no} no.`,
  queen: (marks) => `${marks['queen seen']} or ${marks.yes} seen, ${marks.no} not seen.`,
  cells: ({ swarm, supersedure, emergency, none }) => `${swarm} or sw swarm, ${supersedure} supersedure, ${emergency} emergency, ${none} none.`,
  temper: () => '1 to 5.',
  mites: () => 'A whole number.',
  sample: () => 'A whole number; leave it empty for the sheet’s own.',
  feed: (marks) => `1 gal, 2 l, 5 lb or 2 kg; ${marks.yes} for the sheet’s amount. Another feed than the sheet’s: ${marks['syrup 1:1']}, ${marks['syrup 2:1']}, ${marks.fondant} fondant, ${marks['pollen substitute']} pollen substitute, as “1 gal ${marks['syrup 1:1']}”.`,
  supersOn: boxes,
  supersOff: boxes,
  full: () => weights,
  empty: () => weights,
  moisture: () => 'Per cent: 17.5 or 17,5.',
  lot: () => few,
  weight: () => weights,
  treat: ({ yes }) => `${yes} for the sheet’s own; or formic, oxalic, thymol, amitraz, hop, or another written out.`,
  act: ({ lost, split, requeened, combined }) =>
    `${lost} lost, cause unknown; or the first letters of a cause, several with ; between: starv; queen; mites; weak; cold; moist; rob; pest; bear; flood; dis. ${split} split, ${requeened} requeened, ${combined} combined; Enter goes on to their few fields.`,
  note: () => 'Words, up to 4,000 characters.',
  newLabel: () => few,
  oldQueen: () => 's stays, m moves.',
  newQueen: () => 'w walk-away, c cell, v virgin, m mated.',
  splitBees: () => 'A number.',
  splitBrood: () => 'A number.',
  splitStores: () => 'A number.',
  toYard: () => 'A yard’s code or name.',
  queenYear: () => 'Four digits.',
  queenSource: () => few,
  supplier: () => few,
  into: () => 'A living colony’s label.',
};

const legends: readonly { readonly of: readonly RoundColumn[]; readonly meanings: readonly MarkMeaning[]; readonly means: string }[] = [
  { of: ['eggs', 'queen'], meanings: ['yes', 'no'], means: 'yes, no' },
  { of: ['queen'], meanings: ['queen seen'], means: 'queen seen' },
  { of: ['cells'], meanings: ['swarm', 'supersedure', 'emergency', 'none'], means: 'swarm, supersedure, emergency, no cells' },
  { of: ['feed'], meanings: ['yes'], means: 'the sheet’s feed' },
  { of: ['feed'], meanings: ['syrup 1:1', 'syrup 2:1', 'fondant', 'pollen substitute'], means: 'syrup, fondant, pollen substitute' },
  { of: ['supersOn', 'supersOff'], meanings: ['deep', 'medium', 'shallow'], means: 'deep, medium, shallow, as 2 and the mark' },
  { of: ['treat'], meanings: ['yes'], means: 'the sheet’s ingredient' },
  { of: ['act'], meanings: ['lost'], means: 'lost, or type a cause' },
  { of: ['act'], meanings: ['split', 'requeened', 'combined'], means: 'split, requeened, combined' },
];

/** The short marks of the columns that are on the sheet. */
export function legendOf(columns: readonly RoundColumn[], marks: Marks): (readonly [string, string])[] {
  return [
    ...legends.filter(({ of }) => of.some((column) => columns.includes(column))).map(({ meanings, means }) => [meanings.map((one) => marks[one]).join(' '), means] as const),
    ['empty', 'not recorded'] as const,
  ];
}

/** What each mark is called where it can be changed. */
export const markNames: Readonly<Record<MarkMeaning, string>> = {
  ...(Object.fromEntries(markMeanings.map((one) => [one, one])) as Record<MarkMeaning, string>),
  none: 'no queen cells', swarm: 'swarm cells', supersedure: 'supersedure cells', emergency: 'emergency cells', lost: 'lost, cause unknown',
  deep: 'deep box', medium: 'medium box', shallow: 'shallow box',
};
