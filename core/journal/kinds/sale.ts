import { z } from 'zod';
import { moneyText } from '#shared/units.ts';
import { amount, colonyRef, minor, note, text, yardRef } from '../bodyParts.ts';
import { endColony } from '../endColony.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  colony: colonyRef.optional(),
  yard: yardRef.optional(),
  /** The lot of honey that was sold. */
  lot: text.optional(),
  price: minor.optional(),
  item: text.optional(),
  quantity: amount.optional(),
  ...note,
});

/** A colony is sold, or goods are. */
export const sale = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => endColony(state, entry, 'sold'),
  sentence: (made) => {
    const price = made.price === undefined ? '' : ` for ${moneyText(made.price)}`;
    const lot = made.lot === undefined ? '' : `, lot ${made.lot}`;
    if (made.item === undefined) return `Sold${lot}${price}.`;
    return `Sold ${made.quantity === undefined ? '' : `${made.quantity} `}${made.item}${lot}${price}.`;
  },
});
