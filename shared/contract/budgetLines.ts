import { z } from 'zod';
import { write } from './operation.ts';
import { entryId } from './values.ts';

/** Lines of an enterprise budget that costs stand under (the shape that extension budgets have, from memory). */
export const costLines = ['bees', 'feed', 'treatments', 'equipment', 'containers', 'fuel', 'labour', 'other costs'] as const;
export const costLine = z.enum(costLines);
export type CostLine = z.infer<typeof costLine>;

/** The line a purchase stands under: the one that was chosen, else the one that the words of its item speak for. */
export const lineOfPurchase = z.object({ entry: entryId, item: z.string(), line: costLine, guess: costLine, chosen: z.boolean() });
export type LineOfPurchase = z.infer<typeof lineOfPurchase>;

export const budgetLineOperations = {
  /** Null takes the choice back: the words of the item decide again. */
  'returns.chooseLine': write(z.strictObject({ entry: entryId, line: costLine.nullable() }), lineOfPurchase, 'choose the line again in the same place, or take the choice back there'),
} as const;
