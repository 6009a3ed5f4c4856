import { z } from 'zod';
import { currentYard } from '../colonyState.ts';
import { colonyInYard, yardRef } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({ ...colonyInYard, toYard: yardRef });

/** A colony goes to another yard. Named as going to the yard it stands in, it stays, and no stretch begins. */
export const move = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    if (currentYard(state) === entry.body.toYard) return;
    const stay = state.stays.at(-1);
    if (stay !== undefined) stay.until = entry.day;
    state.stays.push({ yard: entry.body.toYard, from: entry.day, fromPlace: entry.place, until: null });
  },
  sentence: (made, names) => `Moved to ${names.yard(made.toYard).name}.`,
});
