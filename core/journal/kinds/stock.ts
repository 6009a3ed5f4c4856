import { z } from 'zod';
import { amount, note, place, text, type Place } from '../bodyParts.ts';
import { defineKind, type Names } from '../kindRules.ts';

const body = z.strictObject({ item: text, quantity: amount, from: place, to: place, ...note });

export function placeName(where: Place, names: Names): string {
  return typeof where === 'string' ? (where === 'supplier' ? 'a supplier' : where === 'shed' ? 'the shed' : 'scrap') : names.yard(where.yard).name;
}

/** Equipment leaves one place and reaches another. */
export const stock = defineKind({
  body,
  touches: () => [],
  sentence: (made, names) => `${made.quantity} × ${made.item} from ${placeName(made.from, names)} to ${placeName(made.to, names)}.`,
});
