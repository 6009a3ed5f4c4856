import { z } from 'zod';
import { colonyInYard } from '../bodyParts.ts';
import { endColony } from '../endColony.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

/** A colony is given away. */
export const gift = defineKind({
  body: z.strictObject(colonyInYard),
  touches: touchesItself,
  effect: (state, entry) => endColony(state, entry, 'given'),
  sentence: () => 'Given away.',
});
