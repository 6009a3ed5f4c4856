import { z } from 'zod';
import { beginReign, endReign } from '../colonyState.ts';
import { colonyInYard, minor, text } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  ...colonyInYard,
  supplier: text.optional(),
  queenYear: z.number().int().optional(),
  queenSource: text.optional(),
  price: minor.optional(),
});

/** A new queen is given; the old one, if there was one, is gone. */
export const requeen = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    endReign(state, entry.day, entry.id, 'replaced');
    beginReign(state, entry.id, entry.day, entry.body.queenYear ?? null, entry.body.queenSource ?? entry.body.supplier ?? null);
  },
  sentence: (made) => {
    const year = made.queenYear === undefined ? '' : ` of ${made.queenYear}`;
    const source = made.queenSource === undefined ? '' : `, ${made.queenSource}`;
    const from = made.supplier === undefined ? '' : `, from ${made.supplier}`;
    return `Requeened with a queen${year}${source}${from}.`;
  },
});
