import { z } from 'zod';
import type { Grams } from '#shared/brands.ts';
import { massUnits } from '#shared/entryForms.ts';
import { massIn } from '#shared/units.ts';
import { colonyRef, grams, note, text, yardRef } from '../bodyParts.ts';
import { currentYard } from '../colonyState.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({
  colony: colonyRef.optional(),
  yard: yardRef.optional(),
  gross: grams,
  tare: grams,
  unit: z.enum(massUnits),
  moisture: z.number().min(0).max(100).optional(),
  lot: text.optional(),
  ...note,
});

/** Honey taken: full weight less empty weight, of one colony or of a yard together. */
export const harvest = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    const { gross, tare, moisture, lot } = entry.body;
    state.harvests.push({ day: entry.day, grams: gross - tare, moisture: moisture ?? null, lot: lot ?? null, yard: currentYard(state) });
  },
  sentence: (made, names) => {
    const net = massIn((made.gross - made.tare) as Grams, made.unit);
    const whole = made.colony === undefined && made.yard !== undefined ? ` at ${names.yard(made.yard).name}, the yard together` : '';
    const water = made.moisture === undefined ? '' : `, ${made.moisture} % water`;
    return `${Number(net.toFixed(1))} ${made.unit} of honey taken${whole}${water}${made.lot === undefined ? '' : `, lot ${made.lot}`}.`;
  },
});
