import type { Minor } from '#shared/brands.ts';
import type { KeptPlan, PlanLine } from '#shared/contract/decision.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { moneyText } from '#shared/units.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { paidPrices } from './paidPrices.ts';
import { isOrdering } from './placedOrders.ts';
import { itemName } from '#core/stock/itemName.ts';

const dollars = (cents: number) => `$${moneyText((Math.round(cents / 100) * 100) as Minor).replace(/\B(?=(\d{3})+$)/g, ',')}`;
const boughtOrigins: ReadonlySet<string> = new Set(['package', 'nuc', 'bought colony']);

/** A kept plan held against what happened, line by line. What is not over yet says how far it has come. */
export function planLines({ decision, day }: KeptPlan, survivors: number | null, states: readonly ColonyState[], entries: readonly Entry[], today: Day): PlanLine[] {
  const { forecast, living, spring, targetDay, target, answer, confidence } = decision;
  const until = today < targetDay ? today : targetDay;
  const over = today >= targetDay;
  const began = states.filter(({ start }) => start > day && start <= until);
  const bought = began.filter(({ origin }) => boughtOrigins.has(origin)).length;
  const splits = began.filter(({ origin }) => origin === 'split').length;
  const standing = states.filter((state) => aliveOn(state, targetDay)).length;
  const spent = spentBetween(entries, day, until);
  return [
    {
      what: 'survivors', planned: `${forecast.low} to ${forecast.high} of ${living}`, happened: survivors === null ? null : String(survivors), over: survivors !== null,
      held: survivors === null ? null : survivors >= forecast.low && survivors <= forecast.high,
      sentence: survivors === null ? `To be judged on ${dayInWords(spring)}.`
        : survivors < forecast.low ? 'The winter was harder than the range.' : survivors > forecast.high ? 'The winter was milder than the range.' : 'Inside the range.',
    },
    {
      what: 'colonies', planned: `${target}, ${Math.round(confidence * 100)} in 100 sure`, happened: over ? String(standing) : null, over, held: over ? standing >= target : null,
      sentence: !over ? `To be judged on ${dayInWords(targetDay)}.` : standing >= target ? 'Reached.' : `${target - standing} short. With ${Math.round(confidence * 100)} in 100 sure, that was to be expected in ${Math.round((1 - confidence) * 100)} springs of 100.`,
    },
    ...(answer === null ? [] : [
      countLine('bought', answer.bought, bought, over, 'colony', 'colonies'),
      countLine('splits', answer.splits, splits, over, 'split', 'splits'),
      {
        what: 'money' as const, planned: dollars(answer.cash), happened: dollars(spent), over, held: over ? spent <= answer.cash + 0.5 : null,
        sentence: !over ? 'So far, by what was ordered and paid since.' : spent > answer.cash + 0.5 ? `${dollars(spent - answer.cash)} more than planned.` : spent < answer.cash - 0.5 ? `${dollars(answer.cash - spent)} less than planned, as far as prices are in the book.` : 'As planned.',
      },
    ]),
  ];
}

function countLine(what: 'bought' | 'splits', planned: number, came: number, over: boolean, one: string, many: string): PlanLine {
  const gap = Math.abs(planned - came);
  const words = `${gap} ${gap === 1 ? one : many}`;
  return {
    what, planned: String(planned), happened: String(came), over, held: over ? came === planned : null,
    sentence: !over ? 'So far.' : gap === 0 ? 'As planned.' : `${words} ${came > planned ? 'more' : 'fewer'} than planned.`,
  };
}

/**
 * Paid to sellers after a day, up to another, in minor units. Bees on order and the colonies hived of them are the same
 * bees, so of each seller and kind the larger of the two sums counts; equipment is paid when it is ordered.
 */
export function spentBetween(entries: readonly Entry[], after: Day, until: Day): number {
  const since = entries.filter((entry) => entry.day > after && entry.day <= until || entry.day === after && isOrdering(entry));
  const key = (seller: string | null | undefined, kind: string) => `${seller?.trim().toLowerCase() ?? ''}|${kind}`;
  const ordered = new Map<string, number>();
  for (const entry of since) {
    if (entry.kind !== 'purchase' || !isOrdering(entry)) continue;
    const item = itemName(entry.body.item);
    const kind = item === 'full colony' ? 'colony' : item;
    if (kind !== 'package' && kind !== 'nuc' && kind !== 'colony' && kind !== 'queen') continue;
    ordered.set(key(entry.body.supplier, kind), (ordered.get(key(entry.body.supplier, kind)) ?? 0) + (entry.body.price ?? 0));
  }
  let sum = 0;
  const paid = new Map<string, number>();
  for (const { kind, seller, quantity, each } of paidPrices(since)) {
    if (kind === 'equipment') sum += quantity * each;
    else paid.set(key(seller, kind), (paid.get(key(seller, kind)) ?? 0) + quantity * each);
  }
  for (const of of new Set([...ordered.keys(), ...paid.keys()])) sum += Math.max(ordered.get(of) ?? 0, paid.get(of) ?? 0);
  return sum;
}
