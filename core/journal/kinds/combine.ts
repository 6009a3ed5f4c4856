import { z } from 'zod';
import { colonyInYard, colonyRef } from '../bodyParts.ts';
import { endColony } from '../endColony.ts';
import { defineKind } from '../kindRules.ts';

const body = z.strictObject({ ...colonyInYard, into: colonyRef });

/** A colony is united into another, which lives on. */
export const combine = defineKind({
  body,
  touches: (made) => [{ colony: made.colony, part: 'itself' }, ...(made.into === made.colony ? [] : [{ colony: made.into, part: 'into' as const }])],
  check: (state, entry, part) =>
    part === 'itself' && entry.body.into === entry.body.colony
      ? { column: 'into', sentence: `${state.label} cannot be combined into itself. Name the colony that lives on.` }
      : null,
  effect: (state, entry, part) => {
    if (part === 'into') {
      state.unitedFrom.push(entry.body.colony);
      return;
    }
    state.into = entry.body.into;
    endColony(state, entry, 'combined');
  },
  sentence: (made, names) => `${names.colony(made.colony)} combined into ${names.colony(made.into)}.`,
});
