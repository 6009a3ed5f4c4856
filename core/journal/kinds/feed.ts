import { z } from 'zod';
import { amountUnits, feeds } from '#shared/entryForms.ts';
import { massIn, volumeIn } from '#shared/units.ts';
import { colonyInYard, grams, millilitres } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  ...colonyInYard,
  feed: z.enum(feeds),
  amount: z
    .union([z.strictObject({ measure: z.literal('mass'), grams }), z.strictObject({ measure: z.literal('volume'), millilitres })])
    .optional(),
  unit: z.enum(amountUnits).optional(),
});

/** Feed given, with its amount where it was written down. */
export const feed = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    const { feed: given, amount } = entry.body;
    state.feedings.push({
      day: entry.day, feed: given,
      grams: amount?.measure === 'mass' ? amount.grams : null, millilitres: amount?.measure === 'volume' ? amount.millilitres : null,
    });
  },
  sentence: (made) => {
    if (made.amount === undefined || made.unit === undefined) return `Fed ${made.feed}.`;
    const figure = made.amount.measure === 'mass' ? massIn(made.amount.grams, made.unit === 'lb' ? 'lb' : 'kg') : volumeIn(made.amount.millilitres, made.unit === 'gal' ? 'gal' : 'l');
    return `Fed ${figure} ${made.unit} of ${made.feed}.`;
  },
});
