import { z } from 'zod';
import { costLine } from './budgetLines.ts';
import { read } from './operation.ts';
import { houseRule } from './order.ts';
import { dayValue, entryId, kindValue } from './values.ts';

const count = z.number().int();
/** Minor units, so whole. */
const minor = z.number().int();

export const budgetAmounts = z.object({ byYard: z.array(minor), notAssigned: minor, total: minor });
export type BudgetAmounts = z.infer<typeof budgetAmounts>;
export const budgetSide = z.enum(['cost', 'return']);
export const budgetLine = budgetAmounts.extend({ side: budgetSide, line: z.string(), entries: count });
export type BudgetLineView = z.infer<typeof budgetLine>;

/** How the account is made: hours valued or not, equipment written off or as paid. */
const asked = z.strictObject({ season: count.min(1900).max(9998).optional(), hours: z.boolean(), equipment: z.enum(['parts', 'paid']) });

/** An amount for each; null where there was none to divide by, and `why` says so. */
const each = z.object({ returns: z.number().nullable(), costs: z.number().nullable(), net: z.number().nullable(), why: z.string().nullable() });
export type Each = z.infer<typeof each>;

export const returnsView = z.object({
  asOf: dayValue,
  season: count,
  seasonName: z.string(),
  /** The season's days have not all come. */
  running: z.boolean(),
  seasons: z.array(z.object({ season: count, name: z.string() })),
  yards: z.array(z.object({ code: z.string(), name: z.string(), colonies: z.number(), pounds: z.number(), perColony: each, perPound: each })),
  returns: z.array(budgetLine),
  costs: z.array(budgetLine),
  allReturns: budgetAmounts,
  allCosts: budgetAmounts,
  net: budgetAmounts,
  /** Colonies kept on the mean of the season's days, and honey harvested in pounds. */
  colonies: z.number(),
  pounds: z.number(),
  perColony: each,
  perPound: each,
  hours: z.number(),
  miles: z.number(),
  equipmentPaid: minor,
  unpriced: z.array(entryId),
  rules: z.array(houseRule),
});
export type ReturnsView = z.infer<typeof returnsView>;

export const moneyLine = z.object({
  entry: entryId,
  day: dayValue,
  kind: kindValue,
  side: budgetSide,
  line: z.string(),
  description: z.string(),
  quantity: z.number().nullable(),
  amount: minor,
  /** Code of the yard; null where the entry names none. */
  yard: z.string().nullable(),
  basis: z.enum(['paid', 'reckoned']),
  /** Of a purchase: the line that its words speak for, and whether somebody chose the one it stands under. */
  bought: z.object({ guess: costLine, chosen: z.boolean() }).nullable(),
});
export type MoneyLineView = z.infer<typeof moneyLine>;

export const returnsOperations = {
  'returns.season': read(asked, returnsView),
  /** The lines behind the account, oldest first. */
  'returns.lines': read(asked, z.object({ season: count, seasonName: z.string(), lines: z.array(moneyLine) })),
} as const;
