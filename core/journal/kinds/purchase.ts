import { z } from 'zod';
import { moneyText } from '#shared/units.ts';
import { amount, minor, note, place, text } from '../bodyParts.ts';
import { defineKind } from '../kindRules.ts';
import { placeName } from './stock.ts';

const body = z.strictObject({
  item: text,
  supplier: text.optional(),
  quantity: amount.optional(),
  price: minor.optional(),
  to: place.optional(),
  ...note,
});

/** Something bought; with `to` it also arrives there. */
export const purchase = defineKind({
  body,
  touches: () => [],
  sentence: (made, names) => {
    const from = made.supplier === undefined ? '' : ` from ${made.supplier}`;
    const price = made.price === undefined ? '' : ` for ${moneyText(made.price)}`;
    const where = made.to === undefined ? '' : `, to ${placeName(made.to, names)}`;
    return `Bought ${made.quantity === undefined ? '' : `${made.quantity} × `}${made.item}${from}${price}${where}.`;
  },
});
