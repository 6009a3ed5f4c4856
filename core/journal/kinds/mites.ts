import { z } from 'zod';
import { washMethods } from '#shared/entryForms.ts';
import { colonyInYard, count } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({ ...colonyInYard, mites: count, bees: z.number().int().min(1), method: z.enum(washMethods).optional() });

/** A count of mites in a sample of bees. */
export const mites = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    state.miteCounts.push({ day: entry.day, mites: entry.body.mites, bees: entry.body.bees });
  },
  sentence: (made) =>
    `${made.mites} ${made.mites === 1 ? 'mite' : 'mites'} in ${made.bees} bees${made.method === undefined ? '' : ` (${made.method})`}: ${((made.mites / made.bees) * 100).toFixed(1)} per 100.`,
});
