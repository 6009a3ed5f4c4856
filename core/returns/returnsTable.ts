import { costLines, type CostLine } from '#shared/contract/budgetLines.ts';
import type { YardId } from '#shared/brands.ts';
import { dayNumber, type Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { returnLines, type ReturnLine } from './categories.ts';
import type { MoneyLine } from './moneyLines.ts';

/** Amounts by yard in the order of the columns, then what no yard is named for, then all. */
export interface Amounts {
  readonly byYard: readonly number[];
  readonly notAssigned: number;
  readonly total: number;
}

export interface BudgetLine extends Amounts {
  readonly side: MoneyLine['side'];
  readonly line: CostLine | ReturnLine;
  /** Entries behind the total. */
  readonly entries: number;
}

export interface ReturnsTable {
  readonly returns: readonly BudgetLine[];
  readonly costs: readonly BudgetLine[];
  readonly allReturns: Amounts;
  readonly allCosts: Amounts;
  /** Returns less costs. */
  readonly net: Amounts;
}

/** The account of a season: lines down, yards across. Every amount stands in one line and one column, so both ways add up. */
export function returnsTable(lines: readonly MoneyLine[], yards: readonly YardId[]): ReturnsTable {
  const place = new Map(yards.map((yard, at) => [yard, at]));
  const amounts = (own: readonly MoneyLine[]): Amounts => {
    const byYard = yards.map(() => 0);
    let notAssigned = 0;
    for (const { amount, yard } of own) {
      const at = yard === null ? undefined : place.get(yard);
      if (at === undefined) notAssigned += amount;
      else byYard[at] = (byYard[at] ?? 0) + amount;
    }
    return { byYard, notAssigned, total: own.reduce((sum, { amount }) => sum + amount, 0) };
  };
  const of = (side: MoneyLine['side'], names: readonly (CostLine | ReturnLine)[]): BudgetLine[] =>
    names.flatMap((line) => {
      const own = lines.filter((one) => one.side === side && one.line === line);
      return own.length === 0 ? [] : [{ side, line, entries: new Set(own.map(({ entry }) => entry)).size, ...amounts(own) }];
    });
  const allReturns = amounts(lines.filter(({ side }) => side === 'return'));
  const allCosts = amounts(lines.filter(({ side }) => side === 'cost'));
  return {
    returns: of('return', returnLines), costs: of('cost', costLines), allReturns, allCosts,
    net: { byYard: yards.map((_, at) => (allReturns.byYard[at] ?? 0) - (allCosts.byYard[at] ?? 0)), notAssigned: allReturns.notAssigned - allCosts.notAssigned, total: allReturns.total - allCosts.total },
  };
}

/** An amount for each unit (colony, pound); null where there is none to divide by. Units below nothing: RangeError. */
export function perUnit(amount: number, units: number): number | null {
  if (!(units >= 0) || !Number.isFinite(units)) throw new RangeError(`${amount} over ${units}`);
  return units === 0 ? null : amount / units;
}

/** Colonies kept on the mean of the days from `from` to before `until`, by yard: a colony kept for half of them counts a half. */
export function meanKept(states: readonly ColonyState[], from: Day, until: Day): ReadonlyMap<YardId, number> {
  const days = dayNumber(until) - dayNumber(from);
  const found = new Map<YardId, number>();
  if (days <= 0) return found;
  for (const { stays } of states) {
    for (const stay of stays) {
      const begins = Math.max(dayNumber(stay.from), dayNumber(from));
      const ends = Math.min(stay.until === null ? Infinity : dayNumber(stay.until), dayNumber(until));
      if (ends > begins) found.set(stay.yard, (found.get(stay.yard) ?? 0) + (ends - begins) / days);
    }
  }
  return found;
}
