import type { HouseRule } from '#shared/contract/order.ts';

/** Everything the Stock and orders screen says by itself; the sentences made from the data come from the desk. */
export const words = {
  title: 'Stock and orders',
  line: 'What is there, and where it stands.',
  item: 'Item',
  quantity: 'How many',

  enterHeading: 'Enter a movement',
  fromLabel: 'From',
  toLabel: 'To',
  day: 'Day',
  note: 'Note',
  enter: 'Enter this movement',
  must: {
    item: 'Name the item.',
    quantity: 'Type how many, as a number above 0.',
    from: 'Choose where they come from.',
    to: 'Choose where they go.',
    day: 'Type a day, such as 2026-05-01.',
    same: 'They come from and go to the same place; choose two places, or say in the item how they are: “deep box, to mend”.',
  },

  rules: 'House rules behind it',
  rulesText: 'The numbers are yours to change; the published default stays beside them.',
  change: 'Change',
  keep: 'Keep',
  leave: 'Leave',
  reset: 'Back to the default',
  byDefault: (value: string) => `default ${value}`,
  ruleBad: (from: number, to: number) => `Type a number from ${from} to ${to}.`,
  ruleNumber: 'Type a number.',
  ruleUnit: (typed: string, unit: string) => (unit === '' ? `“${typed}” has a unit that means nothing here. Type the number alone.` : `“${typed}” has another unit. This rule is in ${unit}.`),
  ruleWords: 'Type a few words.',
  partRules: 'Parts of a hive',
  ruleDay: 'Type month and day as MM-DD, such as 01-31.',
  ruleSet: (label: string, value: string) => `${label}: now ${value}.`,
  confidenceWord: {
    read: 'read in its source',
    'read-weak': 'read, from a weak source',
    'from memory': 'from memory',
    'common practice, no source': 'common practice, no source',
    arithmetic: 'arithmetic',
  } satisfies Record<HouseRule['confidence'], string>,
} as const;
