import { z } from 'zod';
import { dayInWords } from '#shared/days.ts';
import { colonyRef, note, plainDay, text, yardRef } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  colony: colonyRef.optional(),
  yard: yardRef.optional(),
  activeIngredient: text,
  endDate: plainDay.optional(),
  ...note,
});

/** A treatment by its active ingredient, of one colony or of every colony then alive in a yard. */
export const treatment = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    state.treatments.push({ day: entry.day, until: entry.body.endDate ?? null, ingredient: entry.body.activeIngredient });
  },
  sentence: (made, names) => {
    const whole = made.colony === undefined && made.yard !== undefined ? `, every colony at ${names.yard(made.yard).name}` : '';
    return `Treated with ${made.activeIngredient}${made.endDate === undefined ? '' : ` until ${dayInWords(made.endDate)}`}${whole}.`;
  },
});
