import { z } from 'zod';
import { massUnits } from '#shared/entryForms.ts';
import { massIn } from '#shared/units.ts';
import { colonyInYard, grams } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({ ...colonyInYard, weight: grams, unit: z.enum(massUnits) });

/** Stores weighed or hefted. */
export const stores = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    state.storesWeights.push({ day: entry.day, grams: entry.body.weight, fedBefore: state.feedings.filter(({ day }) => day === entry.day).length });
  },
  sentence: (made) => `Stores of ${massIn(made.weight, made.unit)} ${made.unit}.`,
});
