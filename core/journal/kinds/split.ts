import { z } from 'zod';
import { newQueens, queenPlaces } from '#shared/entryForms.ts';
import { beginReign, endReign } from '../colonyState.ts';
import { amount, colonyRef, note, text, yardRef } from '../bodyParts.ts';
import { defineKind } from '../kindRules.ts';
import { newColony } from '../newColony.ts';

const body = z.strictObject({
  colony: colonyRef,
  child: colonyRef,
  label: text,
  /** Where the mother colony stood, if it was written down. */
  yard: yardRef.optional(),
  /** Where the new colony goes; absent: it stays in the mother's yard. */
  toYard: yardRef.optional(),
  queen: z.enum(queenPlaces).optional(),
  newQueen: z.enum(newQueens).optional(),
  queenYear: z.number().int().optional(),
  queenSource: text.optional(),
  framesBees: amount.optional(),
  framesBrood: amount.optional(),
  framesStores: amount.optional(),
  ...note,
});

/** A colony makes another; the old queen stays or moves with the new one. */
export const split = defineKind({
  body,
  touches: (made) => [{ colony: made.colony, part: 'mother' }, { colony: made.child, part: 'created' }],
  create: (entry, context) => {
    const made = entry.body;
    const state = newColony(entry, {
      id: made.child, label: made.label, origin: 'split', yard: made.toYard ?? context.yardBefore(made.colony, entry), mother: made.colony, supplier: null, price: null,
    });
    if (made.queen === 'moves') {
      const moved = context.reignEndedBy(made.colony, entry.id);
      if (moved !== null) beginReign(state, moved.queen, entry.day, moved.year, moved.source, moved.marked);
    } else if (made.queen === 'stays' || made.newQueen !== undefined || made.queenYear !== undefined || made.queenSource !== undefined) {
      beginReign(state, entry.id, entry.day, made.queenYear ?? null, made.queenSource ?? null);
    }
    return state;
  },
  check: (state, entry, part) =>
    part === 'mother' && entry.body.label === state.label
      ? { column: 'new_colony', sentence: `${state.label} cannot be split into its own label. Give the new colony another one.` }
      : null,
  effect: (state, entry, part) => {
    if (part !== 'mother') return;
    state.daughters.push(entry.body.child);
    if (entry.body.queen !== 'moves') return;
    endReign(state, entry.day, entry.id, 'moved with a split');
    beginReign(state, entry.id, entry.day, entry.body.queenYear ?? null, entry.body.queenSource ?? null);
  },
  sentence: (made, names) => {
    const where = made.toYard === undefined ? '' : `, placed at ${names.yard(made.toYard).name}`;
    const queen = made.queen === undefined ? '' : made.queen === 'stays' ? '; the old queen stayed' : '; the old queen moved with it';
    const next = made.newQueen === undefined ? '' : `, new queen: ${made.newQueen}`;
    return `${made.label} split from ${names.colony(made.colony)}${where}${queen}${next}.`;
  },
});

