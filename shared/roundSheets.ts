/** The kinds of round that a yard is gone through with. */
export const roundKinds = ['inspection', 'mites', 'feed', 'supers', 'harvest', 'stores', 'mix'] as const;
export type RoundKind = (typeof roundKinds)[number];

/** The questions that a round sheet can ask, in the order in which they stand across it. */
export const roundColumns = [
  'bees', 'brood', 'stores', 'eggs', 'queen', 'cells', 'temper', 'mites', 'sample', 'feed', 'supersOn', 'supersOff', 'full', 'empty', 'moisture', 'lot',
  'weight', 'treat', 'act', 'note',
] as const;
export type RoundColumn = (typeof roundColumns)[number];

/** What each kind of round asks until the person chooses otherwise. */
export const standardColumns: Readonly<Record<RoundKind, readonly RoundColumn[]>> = {
  inspection: ['bees', 'brood', 'stores', 'eggs', 'queen', 'cells', 'temper', 'mites', 'sample', 'act', 'note'],
  mites: ['bees', 'mites', 'sample', 'treat', 'act', 'note'],
  feed: ['bees', 'stores', 'feed', 'act', 'note'],
  supers: ['bees', 'queen', 'cells', 'supersOn', 'supersOff', 'act', 'note'],
  harvest: ['supersOff', 'full', 'empty', 'moisture', 'lot', 'act', 'note'],
  stores: ['bees', 'stores', 'feed', 'weight', 'act', 'note'],
  mix: ['bees', 'stores', 'eggs', 'mites', 'sample', 'feed', 'supersOn', 'supersOff', 'treat', 'act', 'note'],
};

/** Chosen columns in the sheet's order, each once. */
export function inSheetOrder(chosen: Iterable<RoundColumn>): RoundColumn[] {
  const wanted = new Set(chosen);
  return roundColumns.filter((column) => wanted.has(column));
}
