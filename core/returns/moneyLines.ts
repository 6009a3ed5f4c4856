import type { EntryId, YardId } from '#shared/brands.ts';
import type { CostLine } from '#shared/contract/budgetLines.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Season } from '#shared/seasons.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { isOrdering } from '#core/order/placedOrders.ts';
import { itemName } from '#core/stock/itemName.ts';
import { categoryOfPurchase, categoryOfSale, type ReturnLine } from './categories.ts';

/** One amount of a season's account, in minor units and never below nothing; its entry is what stands behind it. */
export interface MoneyLine {
  readonly entry: EntryId;
  readonly day: Day;
  readonly kind: Kind;
  readonly side: 'cost' | 'return';
  readonly line: CostLine | ReturnLine;
  readonly description: string;
  readonly quantity: number | null;
  readonly amount: number;
  /** Null: the entry names no yard. */
  readonly yard: YardId | null;
  /** `paid` by a bill or at a sale; `reckoned` at a house rule. */
  readonly basis: 'paid' | 'reckoned';
  /** Of a purchase: the line that its words speak for, and whether somebody chose it; null of what is told by its kind. */
  readonly bought: { readonly guess: CostLine; readonly chosen: boolean } | null;
}

export interface MoneyRules {
  /** Minor units for an hour of one person; null: hours are not valued. */
  readonly hour: number | null;
  readonly mile: number;
  /** Years over which equipment is written off; null: it counts as paid in its season. */
  readonly years: number | null;
}

export interface MoneyFacts {
  readonly seasonOf: (day: Day) => Season;
  /** The yard a colony stood in on that day. */
  readonly yardOfColony: (entry: Entry) => YardId | null;
  /** The line that was chosen for a purchase; null where its words decide. */
  readonly lineChosen: (entry: Entry) => CostLine | null;
}

/** What a season's account holds, and what it had to leave out. */
export interface SeasonMoney {
  readonly lines: readonly MoneyLine[];
  /** Bought and sold things without a price. */
  readonly unpriced: readonly EntryId[];
  /** Paid for equipment in the season; in the account only in parts where it is written off. */
  readonly equipmentPaid: number;
  /** Hours of one person that were written down, valued or not. */
  readonly hours: number;
  readonly miles: number;
}

/**
 * A season's lines from the standing entries up to its end. Equipment is written off in equal parts, beginning with the
 * season it was bought in; the parts add up to the price to the cent.
 */
export function seasonMoney(entries: readonly Entry[], season: Season, rules: MoneyRules, facts: MoneyFacts): SeasonMoney {
  const lines: MoneyLine[] = [];
  const unpriced: EntryId[] = [];
  const sum = { equipmentPaid: 0, hours: 0, miles: 0 };
  for (const entry of entries) {
    const bought = facts.seasonOf(entry.day);
    const inSeason = bought === season;
    const about = { entry: entry.id, day: entry.day, kind: entry.kind, bought: null };
    switch (entry.kind) {
      case 'install':
      case 'requeen': {
        if (!inSeason) break;
        const { price, supplier } = entry.body;
        const what = entry.kind === 'requeen' ? 'queen' : entry.body.origin;
        if (price !== undefined) lines.push({ ...about, side: 'cost', line: 'bees', description: `${what}${supplier === undefined ? '' : ` from ${supplier}`}`, quantity: 1, amount: price, yard: facts.yardOfColony(entry), basis: 'paid' });
        else if (supplier !== undefined && what !== 'opening' && what !== 'swarm') unpriced.push(entry.id);
        break;
      }
      case 'purchase': {
        const { item, price, quantity, supplier, to } = entry.body;
        if (isToldByTheHive(entry)) break;
        const guess = categoryOfPurchase(item);
        const chosen = facts.lineChosen(entry);
        const line = chosen ?? guess;
        if (price === undefined) {
          if (inSeason) unpriced.push(entry.id);
          break;
        }
        const yard = typeof to === 'object' ? to.yard : null;
        const description = `${itemName(item)}${supplier === undefined ? '' : ` from ${supplier}`}`;
        const paid: MoneyLine = { ...about, side: 'cost', line, description, quantity: quantity ?? null, amount: price, yard, basis: 'paid', bought: { guess, chosen: chosen !== null } };
        if (line !== 'equipment') {
          if (inSeason) lines.push(paid);
          break;
        }
        if (inSeason) sum.equipmentPaid += price;
        if (rules.years === null) {
          if (inSeason) lines.push(paid);
          break;
        }
        const part = season - bought;
        const amount = part >= 0 && part < rules.years ? partOf(price, part, rules.years) : 0;
        if (amount > 0) lines.push({ ...paid, amount, basis: 'reckoned', description: `${description}, part ${part + 1} of ${rules.years}` });
        break;
      }
      case 'sale': {
        if (!inSeason) break;
        const { price, item, quantity, colony } = entry.body;
        if (price === undefined) unpriced.push(entry.id);
        else lines.push({ ...about, side: 'return', line: categoryOfSale(item, colony !== undefined), description: item ?? 'colony', quantity: quantity ?? (colony === undefined ? null : 1), amount: price, yard: facts.yardOfColony(entry), basis: 'paid' });
        break;
      }
      case 'work': {
        if (!inSeason) break;
        const { hours, people, miles, task } = entry.body;
        const done = (hours ?? 0) * (people ?? 1);
        sum.hours += done;
        sum.miles += miles ?? 0;
        const yard = facts.yardOfColony(entry);
        const of = task ?? 'work';
        if (rules.hour !== null && done > 0) lines.push({ ...about, side: 'cost', line: 'labour', description: of, quantity: done, amount: Math.round(done * rules.hour), yard, basis: 'reckoned' });
        if (miles !== undefined && miles > 0 && rules.mile > 0) lines.push({ ...about, side: 'cost', line: 'fuel', description: `miles driven: ${of}`, quantity: miles, amount: Math.round(miles * rules.mile), yard, basis: 'reckoned' });
        break;
      }
      default:
    }
  }
  return { lines, unpriced, ...sum };
}

/** Bees that were ordered: what they cost is told by the colony or queen that came of the order. */
export function isToldByTheHive(entry: Entry): boolean {
  return entry.kind === 'purchase' && isOrdering(entry) && categoryOfPurchase(entry.body.item) === 'bees';
}

/** One of `parts` nearly equal whole parts of an amount, counted from 0; all of them add up to it. */
export function partOf(amount: number, part: number, parts: number): number {
  return Math.round((amount * (part + 1)) / parts) - Math.round((amount * part) / parts);
}
