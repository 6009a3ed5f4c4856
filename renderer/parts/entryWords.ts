import type { Column, Kind } from '#shared/entryForms.ts';

/** What the form for one record says. */
export const entryWords = {
  heading: 'Enter a record',
  kind: 'What happened',
  day: 'Day',
  dayHelp: 'Arrow keys change the day, t is today.',
  ahead: (day: string, today: string) => `${day} is still to come; today is ${today}. If it is so, enter it again.`,
  ifSo: 'If it is so, enter it again.',
  notADay: 'not a day yet',
  note: 'Note',
  choose: 'not written down',
  chooseMust: 'choose',
  yes: 'yes',
  no: 'no',
  needed: 'needed',
  allColonies: 'Without a colony it is every colony in the yard.',
  yardTogether: 'Without a colony it is the yard’s honey together.',
  yardHelp: 'Code or name.',
  noSuchYard: (typed: string) => `No yard is called ${typed} yet.`,
  addYard: (typed: string) => `Add the yard ${typed}`,
  yardAdded: (name: string) => `The yard ${name} is in the book. Its name, room and distance can be written down under Book.`,
  temper: '1 gentle to 5 fierce.',
  places: 'shed, supplier, scrap, or a yard',
  several: 'Several: LB-01, LB-02, or LB-01..LB-06.',
  names: (count: string, labels: string) => `${count}: ${labels}`,
  enter: 'Enter the record',
  enterMany: (count: number) => `Enter ${count} records`,
  close: 'Close the form',
  back: 'What you had typed is back.',
  clear: 'Clear it',
  atColony: (label: string, sentence: string) => `${label}: ${sentence}`,
  treatmentCaution:
    'The label is the law: dose, temperature and waiting time stand there. Wear gloves, and eye and breathing protection. Take honey supers off where the label says so.',
  deadOut: 'Look at the dead-out first: a minute, and the cause with its reasons',
  diseaseCaution:
    'If you suspect foulbrood: it is notifiable. Leave the hive closed, move nothing, and call your local bee inspector before doing anything.',
} as const;

/** Kinds where one act is often done to several colonies at once, each with its own record. */
export const severalAtOnce: ReadonlySet<Kind> = new Set<Kind>([
  'install', 'requeen', 'queen', 'move', 'treatment', 'feed', 'supers on', 'supers off', 'loss', 'sale', 'gift', 'absconded', 'note',
]);

/** A sentence under a field, where its meaning depends on the kind. */
export function helpFor(kind: Kind, column: Column): string | null {
  if (column === 'yard' && kind === 'install') return entryWords.yardHelp;
  if (column === 'yard' && kind === 'treatment') return entryWords.allColonies;
  if (column === 'yard' && kind === 'harvest') return entryWords.yardTogether;
  if (column === 'colony' && severalAtOnce.has(kind)) return entryWords.several;
  if (column === 'temper') return entryWords.temper;
  if (column === 'from' || column === 'to') return entryWords.places;
  return null;
}
