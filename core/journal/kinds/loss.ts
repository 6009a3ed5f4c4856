import { z } from 'zod';
import { causes } from '#shared/entryForms.ts';
import { colonyInYard } from '../bodyParts.ts';
import { endColony } from '../endColony.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({ ...colonyInYard, cause: z.array(z.enum(causes)).optional() });

/** A colony is lost: dead, queenless beyond help, or destroyed. */
export const loss = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    state.causes = entry.body.cause ?? [];
    endColony(state, entry, 'lost');
  },
  sentence: (made) => (made.cause === undefined || made.cause.length === 0 ? 'Lost; no cause written down.' : `Lost: ${made.cause.join('; ')}.`),
});
