import type { Column, Kind } from '#shared/entryForms.ts';

/** Words that people write above a column, for each column of the exchange form; without signs, accents and units. */
export const headerWords: Readonly<Record<Column, readonly string[]>> = {
  date: ['date', 'day', 'when', 'visit date', 'date of visit', 'inspected', 'inspected on', 'checked', 'checked on', 'inspection date', 'date died', 'date lost', 'installed', 'installed on', 'start date', 'datum', 'tag', 'fecha', 'jour'],
  entry: ['entry', 'kind', 'type', 'activity', 'event', 'action', 'record', 'record type', 'what was done', 'art'],
  yard: ['yard', 'apiary', 'site', 'location', 'bee yard', 'apiary name', 'place', 'stand', 'standort', 'bienenstand', 'rucher', 'apiario'],
  colony: ['colony', 'hive', 'hive no', 'hive number', 'hive id', 'hive name', 'colony no', 'colony number', 'colony id', 'colony name', 'hive nr', 'label', 'tag no', 'volk', 'beute', 'stocknummer', 'ruche', 'colmena'],
  origin: ['origin', 'came as', 'source type', 'started as', 'herkunft'],
  supplier: ['supplier', 'bought from', 'seller', 'vendor', 'breeder', 'from whom'],
  queen_year: ['queen year', 'year of queen', 'queen hatched', 'queen hatched in', 'queen born', 'queen age year', 'year queen', 'konigin jahr', 'jahr konigin'],
  queen_source: ['queen source', 'queen from', 'queen line', 'queen origin', 'line', 'stock line', 'strain', 'zuchtlinie'],
  new_colony: ['new colony', 'new hive', 'split to', 'split into', 'nuc made', 'daughter colony', 'ableger'],
  to_yard: ['to yard', 'moved to', 'destination', 'new yard', 'to apiary', 'new location'],
  queen: ['old queen', 'queen stays', 'queen goes'],
  new_queen: ['new queen', 'queen raised', 'requeened with'],
  into: ['into', 'combined into', 'combined with', 'united with', 'merged into', 'joined to'],
  what: ['queen event', 'what', 'queen status change'],
  frames_bees: ['frames of bees', 'frames bees', 'bees frames', 'bee frames', 'seams of bees', 'seams', 'frames covered', 'waben bienen', 'bienen', 'wabengassen', 'cadres abeilles'],
  frames_brood: ['frames of brood', 'frames brood', 'brood frames', 'brood', 'waben brut', 'brut', 'brutwaben', 'cadres couvain', 'couvain'],
  frames_stores: ['frames of stores', 'frames stores', 'stores frames', 'frames of honey', 'frames honey', 'honey frames', 'food frames', 'stores', 'waben futter', 'futterwaben', 'futter'],
  eggs: ['eggs', 'eggs seen', 'eier', 'stifte'],
  queen_seen: ['queen seen', 'saw queen', 'queen sighted', 'q seen', 'queen spotted', 'queen found', 'konigin gesehen', 'reine vue'],
  queen_cells: ['queen cells', 'cells', 'qc', 'q cells', 'weiselzellen'],
  temper: ['temper', 'temperament', 'mood', 'gentleness', 'aggression', 'sanftmut', 'sanftmut 1 5'],
  mites: ['mites', 'mites counted', 'mite count', 'varroa', 'varroa count', 'number of mites', 'mites in sample', 'milben'],
  bees: ['bees in sample', 'bees', 'sample size', 'bees sampled', 'number of bees', 'sample', 'bees washed', 'bienen in probe'],
  method: ['method', 'test method', 'mite method', 'test', 'wash method', 'methode'],
  active_ingredient: ['active ingredient', 'treatment', 'treated with', 'substance', 'ingredient', 'acid', 'wirkstoff', 'traitement'],
  end_date: ['end date', 'until', 'removed', 'removed on', 'treatment end', 'taken out', 'date out', 'bis'],
  feed: ['feed', 'food', 'feed type', 'kind of feed', 'fed with', 'type of feed', 'futterart'],
  amount: ['amount', 'amount fed', 'quantity fed', 'volume', 'fed', 'feed amount', 'syrup', 'menge'],
  unit: ['unit', 'units', 'einheit', 'uom'],
  box: ['box', 'box size', 'super size', 'kind of box', 'super type', 'super'],
  count: ['count', 'how many', 'number of supers', 'supers', 'boxes', 'supers added', 'supers removed'],
  gross: ['gross', 'gross weight', 'full weight', 'full', 'weight full', 'honey', 'honey weight', 'honey yield', 'honey harvested', 'net', 'net weight', 'net honey', 'yield', 'harvest', 'extracted', 'brutto', 'honig', 'ertrag', 'ernte', 'miel'],
  tare: ['tare', 'empty', 'empty weight', 'weight empty', 'tara', 'bucket weight'],
  moisture: ['moisture', 'water', 'water content', 'humidity', 'wassergehalt'],
  lot: ['lot', 'batch', 'lot no', 'batch no', 'lot number', 'charge'],
  weight: ['weight', 'hive weight', 'stores weight', 'weight of stores', 'stores', 'heft', 'gewicht'],
  cause: ['cause', 'reason', 'cause of loss', 'cause of death', 'why', 'reason for loss', 'died of', 'suspected cause', 'ursache'],
  price: ['price', 'cost', 'paid', 'price paid', 'total', 'value', 'preis'],
  item: ['item', 'product', 'article', 'equipment', 'description', 'artikel'],
  quantity: ['quantity', 'qty', 'number', 'how many', 'amount', 'anzahl'],
  from: ['from', 'from place', 'taken from', 'von'],
  to: ['to', 'to place', 'put to', 'nach'],
  hours: ['hours', 'hrs', 'time spent', 'hours worked', 'stunden'],
  people: ['people', 'persons', 'helpers', 'workers', 'crew'],
  miles: ['miles', 'mileage', 'distance', 'miles driven'],
  task: ['task', 'job', 'work', 'work done', 'what was done', 'arbeit'],
  note: ['note', 'notes', 'remark', 'remarks', 'comment', 'comments', 'observations', 'memo', 'bemerkung', 'bemerkungen', 'notiz', 'remarques', 'notas'],
};

/** Words for a kind of record: in a column that names it, in the name of a sheet or file, and in headers. */
export const kindWords: Readonly<Record<Kind, readonly string[]>> = {
  install: ['install', 'installed', 'installs', 'new hive', 'hive list', 'colony list', 'hives', 'colonies', 'inventory of hives', 'volker'],
  split: ['split', 'splits', 'nuc made', 'nucs made', 'ableger'],
  combine: ['combine', 'combined', 'combines', 'united', 'merge', 'merged', 'unite'],
  requeen: ['requeen', 'requeened', 'requeening', 'new queen', 'queen introduced', 'queen replaced'],
  queen: ['queen', 'queen event', 'queen events'],
  move: ['move', 'moved', 'moves', 'relocated', 'transport'],
  inspection: ['inspection', 'inspections', 'inspected', 'inspect', 'hive check', 'check', 'visit', 'visits', 'durchsicht', 'kontrolle'],
  mites: ['mites', 'mite count', 'mite counts', 'mite wash', 'varroa', 'alcohol wash', 'sugar roll', 'milben'],
  treatment: ['treatment', 'treatments', 'treated', 'treat', 'behandlung', 'behandlungen'],
  feed: ['feed', 'fed', 'feeding', 'feedings', 'futterung'],
  'supers on': ['supers on', 'supered', 'super added', 'supers added', 'super on'],
  'supers off': ['supers off', 'super removed', 'supers removed', 'super off', 'pulled supers'],
  harvest: ['harvest', 'harvests', 'harvested', 'honey harvest', 'honey', 'extraction', 'extracted', 'ernte', 'honigernte'],
  stores: ['stores', 'stores weight', 'weighed', 'weighing', 'hive weights', 'heft'],
  loss: ['loss', 'losses', 'lost', 'died', 'dead', 'deadout', 'dead outs', 'deadouts', 'winter loss', 'winter losses', 'verlust', 'verluste'],
  sale: ['sale', 'sales', 'sold', 'verkauf'],
  gift: ['gift', 'given', 'given away', 'gifts'],
  absconded: ['absconded', 'abscond'],
  stock: ['stock', 'stock movement', 'stock movements', 'shed'],
  purchase: ['purchase', 'purchases', 'bought', 'expense', 'expenses', 'kauf'],
  work: ['work', 'labor', 'labour', 'hours', 'work log'],
  note: ['note', 'notes', 'remark', 'comment', 'notiz'],
};

/** Other words for what the exchange form writes one way. A word that is not here is never guessed. */
export const valueWords: Readonly<Partial<Record<Column, Readonly<Record<string, readonly string[]>>>>> = {
  origin: { package: ['pkg', 'packages', 'package bees'], nuc: ['nucleus', 'nuke', 'nucs'], swarm: ['caught swarm', 'swarm caught'], 'bought colony': ['bought', 'bought hive', 'full hive'], opening: ['existing', 'already there'] },
  queen: { stays: ['stay', 'stayed', 'stays put'], moves: ['move', 'moved', 'goes'] },
  new_queen: { 'walk-away': ['walkaway', 'walk away'], cell: ['queen cell'], virgin: ['virgin queen'], mated: ['mated queen'] },
  what: { superseded: ['supersedure'], swarmed: ['swarm'], missing: ['gone', 'queenless'] },
  queen_cells: { none: ['no', 'n', '0', 'nil', 'keine'], swarm: ['swarm cells', 'swarm cell'], supersedure: ['supersedure cells', 'supersedure cell'], emergency: ['emergency cells', 'emergency cell'] },
  method: { 'alcohol wash': ['alcohol', 'wash', 'aw'], 'sugar roll': ['sugar', 'roll', 'powdered sugar', 'sugar shake'] },
  active_ingredient: { 'formic acid': ['formic', 'fa', 'ameisensaure'], 'oxalic acid': ['oxalic', 'oa', 'oxalsaure'] },
  feed: { 'syrup 1:1': ['1:1', '1 1', '1:1 syrup'], 'syrup 2:1': ['2:1', '2 1', '2:1 syrup'], fondant: ['candy'], 'pollen substitute': ['pollen patty', 'pollen sub', 'patty', 'patties'] },
  box: { deep: ['deeps'], medium: ['mediums'], shallow: ['shallows'] },
  unit: { lb: ['lbs', 'pound', 'pounds'], kg: ['kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'], gal: ['gallon', 'gallons'], l: ['liter', 'liters', 'litre', 'litres'] },
  cause: {
    starvation: ['starved', 'starving', 'hunger', 'verhungert'], mites: ['mite', 'varroa', 'milben'], 'queen failure': ['queenless', 'failed queen', 'queen failed', 'drone layer', 'weisellos'], 'weak in autumn': ['weak', 'weak in fall', 'small cluster'],
    cold: ['froze', 'frozen'], moisture: ['damp', 'wet'], robbing: ['robbed'], pesticide: ['pesticides', 'poisoned'], 'bear or vandal': ['bear', 'vandal', 'vandals'], flood: ['flooded'], disease: ['sick'], unknown: ['?', 'not known', 'unbekannt'],
  },
};

export const yesWords: ReadonlySet<string> = new Set(['yes', 'y', 'x', 'true', '1', '✓', '✔', 'ja', 'j', 'oui', 'si', 'sí']);
export const noWords: ReadonlySet<string> = new Set(['no', 'n', 'false', '0', '✗', 'nein', 'non']);

/** Lower case, no accents, no signs but single spaces between words. */
export function plainWords(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
}

const kindOfWords: ReadonlyMap<string, Kind> = new Map(
  (Object.keys(kindWords) as Kind[]).flatMap((kind) => [kind, ...kindWords[kind]].map((word) => [word, kind] as const)).reverse(),
);

/** The kind that a cell of a column of kinds names, by its own word or another for it. */
export function kindNamed(text: string): Kind | null {
  const typed = plainWords(text);
  return typed in kindWords ? (typed as Kind) : (kindOfWords.get(typed) ?? null);
}

/** The form's own word for a value, where it is one of the known others; else the text itself. */
export function formValue(column: Column, text: string): string {
  const typed = text.trim().toLowerCase();
  const plain = plainWords(text);
  for (const [value, others] of Object.entries(valueWords[column] ?? {})) if (value === typed || others.includes(typed) || others.includes(plain)) return value;
  return text.trim();
}
