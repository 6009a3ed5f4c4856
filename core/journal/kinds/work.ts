import { z } from 'zod';
import { amount, colonyRef, note, text, yardRef } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  yard: yardRef.optional(),
  colony: colonyRef.optional(),
  hours: amount.optional(),
  people: z.number().int().min(1).optional(),
  miles: amount.optional(),
  task: text.optional(),
  ...note,
});

/** Time spent, people and distance driven. */
export const work = defineKind({
  body,
  touches: touchesItself,
  sentence: (made, names) => {
    const parts: string[] = [];
    if (made.task !== undefined) parts.push(made.task);
    if (made.hours !== undefined) parts.push(`${made.hours} h`);
    if (made.people !== undefined) parts.push(`${made.people} ${made.people === 1 ? 'person' : 'people'}`);
    if (made.miles !== undefined) parts.push(`${made.miles} miles`);
    const where = made.yard === undefined ? '' : ` at ${names.yard(made.yard).name}`;
    return `Work${where}${parts.length === 0 ? '' : `: ${parts.join(', ')}`}.`;
  },
});
