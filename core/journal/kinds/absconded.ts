import { z } from 'zod';
import { colonyInYard } from '../bodyParts.ts';
import { endColony } from '../endColony.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

/** All bees left the hive. */
export const absconded = defineKind({
  body: z.strictObject(colonyInYard),
  touches: touchesItself,
  effect: (state, entry) => endColony(state, entry, 'absconded'),
  sentence: () => 'Absconded.',
});
