import { z } from 'zod';
import { origins } from '#shared/entryForms.ts';
import { beginReign, type ColonyState } from '../colonyState.ts';
import { colonyRef, minor, note, text, yardRef } from '../bodyParts.ts';
import { defineKind } from '../kindRules.ts';
import { newColony } from '../newColony.ts';

export type Origin = (typeof origins)[number];

const body = z.strictObject({
  colony: colonyRef,
  label: text,
  yard: yardRef,
  origin: z.enum(origins),
  supplier: text.optional(),
  queenYear: z.number().int().optional(),
  queenSource: text.optional(),
  price: minor.optional(),
  ...note,
});

const words: Record<Origin, string> = {
  package: 'Package hived', nuc: 'Nuc installed', swarm: 'Swarm hived', 'bought colony': 'Bought colony placed', opening: 'Taken into the book',
};

/** A colony begins in a yard. */
export const install = defineKind({
  body,
  touches: (made) => [{ colony: made.colony, part: 'created' }],
  create: (entry): ColonyState => {
    const made = entry.body;
    const state = newColony(entry, {
      id: made.colony, label: made.label, origin: made.origin, yard: made.yard, mother: null,
      supplier: made.supplier ?? null, price: made.price ?? null,
    });
    // A package, nuc or bought colony comes with its queen; a swarm's or an opening one is known only if it was written down.
    if (made.origin === 'package' || made.origin === 'nuc' || made.origin === 'bought colony' || made.queenYear !== undefined || made.queenSource !== undefined) {
      beginReign(state, entry.id, entry.day, made.queenYear ?? null, made.queenSource ?? made.supplier ?? null);
    }
    return state;
  },
  sentence: (made, names) => {
    const from = made.supplier === undefined ? '' : ` from ${made.supplier}`;
    const queen = made.queenYear === undefined ? '' : `, queen of ${made.queenYear}${made.queenSource === undefined ? '' : ` (${made.queenSource})`}`;
    return `${words[made.origin]} as ${made.label} at ${names.yard(made.yard).name}${from}${queen}.`;
  },
});
