import { z } from 'zod';
import { queenCells } from '#shared/entryForms.ts';
import { amount, colonyInYard } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  ...colonyInYard,
  framesBees: amount.optional(),
  framesBrood: amount.optional(),
  framesStores: amount.optional(),
  eggs: z.boolean().optional(),
  queenSeen: z.boolean().optional(),
  queenCells: z.enum(queenCells).optional(),
  temper: z.number().int().min(1).max(5).optional(),
});

/** What was seen in a hive: strengths in frame equivalents. */
export const inspection = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    const { framesBees, framesBrood, framesStores, eggs, queenSeen, queenCells: cells, temper } = entry.body;
    state.looks.push({
      day: entry.day, framesBees: framesBees ?? null, framesBrood: framesBrood ?? null, framesStores: framesStores ?? null,
      eggs: eggs ?? null, queenSeen: queenSeen ?? null, queenCells: cells ?? null, temper: temper ?? null,
    });
  },
  sentence: (seen) => {
    const parts: string[] = [];
    if (seen.framesBees !== undefined) parts.push(`${seen.framesBees} frames of bees`);
    if (seen.framesBrood !== undefined) parts.push(`${seen.framesBrood} of brood`);
    if (seen.framesStores !== undefined) parts.push(`${seen.framesStores} of stores`);
    if (seen.eggs !== undefined) parts.push(seen.eggs ? 'eggs seen' : 'no eggs');
    if (seen.queenSeen !== undefined) parts.push(seen.queenSeen ? 'queen seen' : 'queen not seen');
    if (seen.queenCells !== undefined) parts.push(seen.queenCells === 'none' ? 'no queen cells' : `${seen.queenCells} cells`);
    if (seen.temper !== undefined) parts.push(`temper ${seen.temper} of 5`);
    return parts.length === 0 ? 'Looked at.' : `Looked at: ${parts.join(', ')}.`;
  },
});
