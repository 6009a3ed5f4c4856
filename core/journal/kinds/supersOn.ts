import { z } from 'zod';
import { boxes } from '#shared/entryForms.ts';
import { colonyInYard } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

export const superBody = z.strictObject({ ...colonyInYard, box: z.enum(boxes), count: z.number().int().min(1) });

export function superWords(box: string, count: number): string {
  return `${count} ${box} ${count === 1 ? 'super' : 'supers'}`;
}

/** Boxes put on for honey. */
export const supersOn = defineKind({
  body: superBody,
  touches: touchesItself,
  effect: (state, entry) => {
    state.supers[entry.body.box] += entry.body.count;
  },
  sentence: (made) => `${superWords(made.box, made.count)} put on.`,
});
