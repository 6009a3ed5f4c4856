/** Everything the Honey page says by itself; the sentences made from the data come from the desk. */
export const words = {
  title: 'Honey',
  line: 'What was extracted, how wet it is, which jars were filled from it, and where each jar came from.',
  lots: 'Lots',
  empty: 'Here stand the lots of honey: what was extracted, the jars filled from it, and the hives behind each jar. A lot is made from harvests.',
  emptyNext: 'Enter a harvest',
  lot: 'Lot',
  harvested: 'Harvested',
  yards: 'Yards',
  net: (unit: string) => `Net, ${unit}`,
  water: 'Water, %',
  jars: 'Jars filled',
  jarsLeft: 'Jars left',
  bulk: (unit: string) => `Left over, ${unit}`,
  account: 'Account',
} as const;
