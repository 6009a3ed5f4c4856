import { z } from 'zod';
import { colonyRef, text, yardRef } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({ colony: colonyRef.optional(), yard: yardRef.optional(), note: text });

/** Anything else worth keeping. */
export const note = defineKind({
  body,
  touches: touchesItself,
  sentence: (made, names) => (made.yard === undefined || made.colony !== undefined ? `Note: ${made.note}` : `Note on ${names.yard(made.yard).name}: ${made.note}`),
});
