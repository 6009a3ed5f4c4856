/** The columns of the journal's exchange form, in the order in which they are written. */
export const columns = [
  'date', 'entry', 'yard', 'colony', 'origin', 'supplier', 'queen_year', 'queen_source', 'new_colony', 'to_yard', 'queen',
  'new_queen', 'into', 'what', 'frames_bees', 'frames_brood', 'frames_stores', 'eggs', 'queen_seen', 'queen_cells', 'temper',
  'mites', 'bees', 'method', 'active_ingredient', 'end_date', 'feed', 'amount', 'unit', 'box', 'count', 'gross', 'tare',
  'moisture', 'lot', 'weight', 'cause', 'price', 'item', 'quantity', 'from', 'to', 'hours', 'people', 'miles', 'task', 'note',
] as const;
export type Column = (typeof columns)[number];

/** One row as typed: text by column, an absent or empty cell means not recorded. */
export type Cells = Partial<Record<Column, string>>;

export const kinds = [
  'install', 'split', 'combine', 'requeen', 'queen', 'move', 'inspection', 'mites', 'treatment', 'feed', 'supers on',
  'supers off', 'harvest', 'stores', 'loss', 'sale', 'gift', 'absconded', 'stock', 'purchase', 'work', 'note',
] as const;
export type Kind = (typeof kinds)[number];

export const origins = ['package', 'nuc', 'swarm', 'bought colony', 'opening'] as const;
export const queenPlaces = ['stays', 'moves'] as const;
export const newQueens = ['walk-away', 'cell', 'virgin', 'mated'] as const;
export const queenEvents = ['seen', 'marked', 'superseded', 'swarmed', 'missing'] as const;
export const queenCells = ['none', 'swarm', 'supersedure', 'emergency'] as const;
export const washMethods = ['alcohol wash', 'sugar roll'] as const;
export const feeds = ['syrup 1:1', 'syrup 2:1', 'fondant', 'pollen substitute'] as const;
export const boxes = ['deep', 'medium', 'shallow'] as const;
export const massUnits = ['lb', 'kg'] as const;
export const amountUnits = ['gal', 'l', 'lb', 'kg'] as const;
export const causes = [
  'starvation', 'mites', 'queen failure', 'weak in autumn', 'cold', 'moisture', 'robbing', 'pesticide', 'bear or vandal',
  'flood', 'disease', 'unknown',
] as const;
export const fixedPlaces = ['shed', 'supplier', 'scrap'] as const;

/** Active ingredients offered while typing; any other is accepted as typed. */
export const knownIngredients = ['formic acid', 'oxalic acid', 'thymol', 'amitraz', 'hop acids'] as const;

export type FieldType =
  | { readonly type: 'text' }
  | { readonly type: 'day' }
  | { readonly type: 'year' }
  | { readonly type: 'yes-no' }
  | { readonly type: 'yard' }
  | { readonly type: 'colony' }
  | { readonly type: 'place' }
  | { readonly type: 'money' }
  | { readonly type: 'causes' }
  | { readonly type: 'number'; readonly min: number; readonly max: number; readonly whole?: boolean; readonly over: string }
  | { readonly type: 'choice'; readonly of: readonly string[] };

/**
 * How each column is read and called, wherever it is used. A `max` is where a figure stops being possible, with some room
 * (common practice, no source, but for water); `over` says why. What is possible and unlikely is in `shared/ordinary.ts`.
 */
export const fields: Readonly<Record<Exclude<Column, 'date' | 'entry'>, FieldType & { readonly label: string }>> = {
  yard: { type: 'yard', label: 'Yard' },
  colony: { type: 'colony', label: 'Colony' },
  origin: { type: 'choice', of: origins, label: 'Origin' },
  supplier: { type: 'text', label: 'Supplier' },
  queen_year: { type: 'year', label: 'Queen hatched in' },
  queen_source: { type: 'text', label: 'Queen from' },
  new_colony: { type: 'text', label: 'New colony' },
  to_yard: { type: 'yard', label: 'To yard' },
  queen: { type: 'choice', of: queenPlaces, label: 'Old queen' },
  new_queen: { type: 'choice', of: newQueens, label: 'New queen' },
  into: { type: 'colony', label: 'Into colony' },
  what: { type: 'choice', of: queenEvents, label: 'What' },
  frames_bees: { type: 'number', min: 0, max: 100, over: 'no hive is that large', label: 'Frames of bees' },
  frames_brood: { type: 'number', min: 0, max: 100, over: 'no hive is that large', label: 'Frames of brood' },
  frames_stores: { type: 'number', min: 0, max: 100, over: 'no hive is that large', label: 'Frames of stores' },
  eggs: { type: 'yes-no', label: 'Eggs' },
  queen_seen: { type: 'yes-no', label: 'Queen seen' },
  queen_cells: { type: 'choice', of: queenCells, label: 'Queen cells' },
  temper: { type: 'number', min: 1, max: 5, whole: true, over: '5 is the fiercest', label: 'Temper' },
  mites: { type: 'number', min: 0, max: 100_000, whole: true, over: 'no colony has as many bees', label: 'Mites counted' },
  bees: { type: 'number', min: 1, max: 100_000, whole: true, over: 'no colony has as many bees', label: 'Bees in the sample' },
  method: { type: 'choice', of: washMethods, label: 'Method' },
  active_ingredient: { type: 'text', label: 'Active ingredient' },
  end_date: { type: 'day', label: 'Until' },
  feed: { type: 'choice', of: feeds, label: 'Feed' },
  amount: { type: 'number', min: 0, max: 1000, over: 'no colony takes so much', label: 'Amount' },
  unit: { type: 'choice', of: amountUnits, label: 'Unit' },
  box: { type: 'choice', of: boxes, label: 'Box' },
  count: { type: 'number', min: 1, max: 50, whole: true, over: 'no hive carries so many', label: 'How many' },
  gross: { type: 'number', min: 0, max: 200_000, over: 'no yard gives so much', label: 'Full weight' },
  tare: { type: 'number', min: 0, max: 200_000, over: 'no yard gives so much', label: 'Empty weight' },
  moisture: { type: 'number', min: 10, max: 40, over: 'honey has some 13 to 23 %, and its refractometers read 12 to 27 %', label: 'Water, per cent' },
  lot: { type: 'text', label: 'Lot' },
  weight: { type: 'number', min: 0, max: 2000, over: 'no hive holds so much', label: 'Stores' },
  cause: { type: 'causes', label: 'Cause' },
  price: { type: 'money', label: 'Price' },
  item: { type: 'text', label: 'Item' },
  quantity: { type: 'number', min: 0, max: 1_000_000, over: 'no shed holds so much', label: 'Quantity' },
  from: { type: 'place', label: 'From' },
  to: { type: 'place', label: 'To' },
  hours: { type: 'number', min: 0, max: 2400, over: 'a day has 24 hours for each person', label: 'Hours' },
  people: { type: 'number', min: 1, max: 100, whole: true, over: 'so many do not work in one yard', label: 'People' },
  miles: { type: 'number', min: 0, max: 2000, over: 'nobody drives so far in a day', label: 'Miles' },
  task: { type: 'text', label: 'Task' },
  note: { type: 'text', label: 'Note' },
};

/** The form of one kind of entry: which columns it must have and which it may have, beside date, entry and note. */
export interface EntryForm {
  readonly label: string;
  readonly must: readonly Column[];
  readonly may: readonly Column[];
}

export const entryForms: Readonly<Record<Kind, EntryForm>> = {
  install: { label: 'Install', must: ['yard', 'colony', 'origin'], may: ['supplier', 'queen_year', 'queen_source', 'price'] },
  split: {
    label: 'Split',
    must: ['colony', 'new_colony'],
    may: ['yard', 'to_yard', 'queen', 'new_queen', 'queen_year', 'queen_source', 'frames_bees', 'frames_brood', 'frames_stores'],
  },
  combine: { label: 'Combine', must: ['colony', 'into'], may: ['yard'] },
  requeen: { label: 'Requeen', must: ['colony'], may: ['yard', 'supplier', 'queen_year', 'queen_source', 'price'] },
  queen: { label: 'Queen', must: ['colony', 'what'], may: ['yard'] },
  move: { label: 'Move', must: ['colony', 'to_yard'], may: ['yard'] },
  inspection: {
    label: 'Inspection',
    must: ['colony'],
    may: ['yard', 'frames_bees', 'frames_brood', 'frames_stores', 'eggs', 'queen_seen', 'queen_cells', 'temper'],
  },
  mites: { label: 'Mite count', must: ['colony', 'mites', 'bees'], may: ['yard', 'method'] },
  treatment: { label: 'Treatment', must: ['active_ingredient'], may: ['yard', 'colony', 'end_date'] },
  feed: { label: 'Feed', must: ['colony', 'feed'], may: ['yard', 'amount', 'unit'] },
  'supers on': { label: 'Supers on', must: ['colony', 'box', 'count'], may: ['yard'] },
  'supers off': { label: 'Supers off', must: ['colony', 'box', 'count'], may: ['yard'] },
  harvest: { label: 'Harvest', must: ['gross', 'tare', 'unit'], may: ['yard', 'colony', 'moisture', 'lot'] },
  stores: { label: 'Stores weight', must: ['colony', 'weight', 'unit'], may: ['yard'] },
  loss: { label: 'Loss', must: ['colony'], may: ['yard', 'cause'] },
  sale: { label: 'Sale', must: [], may: ['yard', 'colony', 'lot', 'price', 'item', 'quantity'] },
  gift: { label: 'Gift', must: ['colony'], may: ['yard'] },
  absconded: { label: 'Absconded', must: ['colony'], may: ['yard'] },
  stock: { label: 'Stock movement', must: ['item', 'quantity', 'from', 'to'], may: [] },
  purchase: { label: 'Purchase', must: ['item'], may: ['supplier', 'quantity', 'price', 'to'] },
  work: { label: 'Work done', must: [], may: ['yard', 'colony', 'hours', 'people', 'miles', 'task'] },
  note: { label: 'Note', must: ['note'], may: ['yard', 'colony'] },
};
