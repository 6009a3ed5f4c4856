import type { OrderAnswer } from '#shared/contract/decision.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import type { Minor } from '#shared/brands.ts';
import { number } from '#shared/figures.ts';
import { moneyText } from '#shared/units.ts';
import type { PreparedOrder } from './decideOrder.ts';
import { hivesWanted, type BeeWare, type OrderProblem } from './orderProblem.ts';
import { percent } from './orderPlan.ts';
import type { BindingLimit, SolvedOrder } from './solveOrder.ts';

const dollars = (cents: number) => `$${moneyText((Math.round(cents / 100) * 100) as Minor).replace(/\B(?=(\d{3})+$)/g, ',')}`;
const tenth = (value: number) => String(Math.round(value * 10) / 10);
const some = (count: number, one: string, many = `${one}s`) => `${number(count)} ${count === 1 ? one : many}`;
const sure = (confidence: number) => `${Math.round(confidence * 100)} in 100`;

export interface Answered {
  readonly prepared: PreparedOrder;
  readonly solved: SolvedOrder | null;
  readonly reachable: { readonly target: number; readonly order: SolvedOrder } | null;
  readonly binding: readonly BindingLimit[];
  /** The lists of the order that is given. */
  readonly answer: OrderAnswer | null;
}

/** What the answer says in plain sentences: survivors, order, cost, or why there is none. */
export function answerSentences({ prepared, solved, reachable, binding, answer }: Answered): string[] {
  const { forecast, target, confidence, targetDay, problem } = prepared;
  const spring = forecast.living === 0
    ? `No colony is alive, so all ${target} are to be bought.`
    : `Of the ${forecast.living} alive now, expect about ${Math.round(forecast.mean)} on ${dayInWords(forecast.window.spring)}: in 8 of 10 winters between ${forecast.low} and ${forecast.high}.`;
  if (target === 0) return [spring, 'No colony is wanted, so nothing need be bought: set a target.'];
  if (solved !== null) return [spring, ...(answer === null ? [] : orderSentences(solved, prepared, answer)), ...goodWinter(prepared, solved)];
  const whole = `No order within the limits gives ${number(target)} colonies on ${dayInWords(targetDay)} with a confidence of ${sure(confidence)}.`;
  const why = binding.length === 0
    ? 'Lifting limits does not help: nothing that is on offer can still be ordered.'
    : binding.some(({ together }) => together) ? 'More than one limit stands in the way; all of those named would have to be lifted.'
    : binding.length === 1 ? 'One limit stands in the way; lifting it alone would be enough.' : 'Lifting any one of these limits would be enough.';
  const bare = reachable !== null && reachable.order.costs.equipment === 0 && problem.parts.some(({ have, packs, perColony }) => packs.length > 0 && have < perColony * hivesWanted(problem));
  const most = reachable === null
    ? 'Not even a smaller target can be planned within them.'
    : bare ? `Even the equipment and queens wanted for what stands already go beyond the limits. Leaving those out, ${reachable.target + problem.onOrder} can be reached; the order below is for bees alone.`
    : `Within the limits ${reachable.target + problem.onOrder} can be reached with that confidence; the order below is the cheapest for it.`;
  return [spring, whole, why, most];
}

function orderSentences(order: SolvedOrder, { target, confidence, targetDay, forecast, problem, coming }: PreparedOrder, answer: OrderAnswer): string[] {
  const { choice } = order;
  const short = `The chance of fewer than ${target} on ${dayInWords(targetDay)} is then ${percent(order.chanceShort)}; on average ${tenth(order.expectedMissing)} are missing and ${tenth(order.expectedSurplus)} are over.`;
  const known = coming > 0 ? [`${some(coming, 'colony', 'colonies')} on order ${coming === 1 ? 'is' : 'are'} counted as coming.`] : [];
  if (choice.bought === 0 && (choice.splits === 0 || target <= forecast.low)) {
    const spare = choice.splits === 0 ? [] : [`Only if fewer live, up to ${some(choice.splits, 'split')} would fill the gap.`];
    const why = target <= forecast.low ? `Even a hard winter leaves ${target} or more` : `With ${target} wanted and a confidence of ${sure(confidence)}`;
    return [`${why}: no ${coming > 0 ? 'more ' : ''}bees need be bought.`, ...spare, ...known, short, ...equipmentSentence(order, forecast.living, problem, answer)];
  }
  const lots = answer.bees.filter(({ kind }) => kind !== 'queen').map(({ seller, words, quantity, orderBy }) => `order ${quantity}${/^\d/.test(words) ? '\u00a0×' : ''} ${words}${seller === null ? '' : ` from ${seller}`} by ${dayInWords(orderBy)}`);
  const parts = [...lots, ...(choice.splits > 0 ? [`plan ${some(choice.splits, 'split')}`] : [])];
  return [
    `To have ${target} with a confidence of ${sure(confidence)}: ${listed(parts)}. It costs ${dollars(order.cash)} to sellers and about ${tenth(order.hours)} hours in spring.`,
    ...known,
    short,
    ...equipmentSentence(order, forecast.living, problem, answer),
    ...(choice.splits > 0 ? [`Splits are made late in spring, when the survivors are known: where enough live, none need be made, so ${tenth(order.expectedMade)} of the ${choice.splits} are reckoned on average.`] : []),
  ];
}

/** How much of the equipment the colonies of today would want by the house's parts list, bees or no bees. */
function equipmentSentence(order: SolvedOrder, living: number, problem: OrderProblem, { equipment }: OrderAnswer): string[] {
  if (order.costs.equipment < 100) return [];
  const now = equipment.reduce((sum, { item, have, order: short, packs }) => {
    const part = problem.parts.find((one) => one.item === item);
    const already = part === undefined ? 0 : Math.max(0, Math.ceil(part.perColony * Math.min(living, hivesWanted(problem)) - 1e-9) - have);
    return sum + packs.reduce((cost, { total }) => cost + total, 0) * (short > 0 ? Math.min(1, already / short) : 0);
  }, 0);
  const rest = now < order.costs.equipment / 4 ? '' : `, and about ${dollars(now)} of that is wanted by the hives of today: the house rules give a hive more parts than are there. If yours do with fewer, change the rule`;
  return [`${order.cash - order.costs.equipment < 100 ? `Equipment for ${hivesWanted(problem)} hives costs ${dollars(order.costs.equipment)}` : `Equipment for ${hivesWanted(problem)} hives is ${dollars(order.costs.equipment)} of it`}${rest}.`];
}

function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`;
}

/** A good winter leaves more than is wanted, whatever is done; the yards are filled for a middling one. */
function goodWinter({ forecast, problem, target, coming }: PreparedOrder, { choice }: SolvedOrder): string[] {
  const standing = forecast.high + choice.bought + coming;
  const over = standing - Math.max(target, forecast.high);
  if (over <= 0 || choice.bought === 0) return [];
  const room = problem.yards.some(({ room: places }) => places === null) ? Infinity : problem.yards.reduce((sum, one) => sum + (one.room ?? 0), 0) + coming;
  const homeless = standing - room;
  return [`In one winter of ten ${forecast.high} or more survive: then ${choice.splits > 0 ? 'no split need be made and ' : ''}${over} ${over === 1 ? 'colony is' : 'colonies are'} beyond the target, to sell or unite${homeless > 0 ? `; ${homeless} would have no place in the yards` : ''}. No boxes are planned for ${over === 1 ? 'it' : 'them'}.`];
}

/** What lifting one limit would take, made from the order that is possible without it. */
export function limitSentence({ limit, order }: BindingLimit, problem: OrderProblem, targetDay: Day): string {
  const { choice } = order;
  switch (limit) {
    case 'room': {
      const room = problem.yards.reduce((sum, one) => sum + Math.max(one.room ?? 0, one.survivors), 0);
      const standing = problem.yards.reduce((sum, one) => sum + one.survivors, 0) + choice.bought + choice.splits;
      return `Room: the yards hold ${number(room)} and ${number(standing)} would stand there in a middling spring. ${some(Math.max(1, standing - room), 'more place')} would do.`;
    }
    case 'budget':
      return `Budget: the cheapest order costs ${dollars(order.cash)}, and ${dollars(problem.budget ?? 0)} may be spent.`;
    case 'hours':
      return `Hours: it takes ${tenth(order.hours)} hours in spring, and there are ${tenth(problem.hours ?? 0)}.`;
    case 'deadlines':
      return 'Order days: it could be done with what some sellers have closed orders for. Ask whether they still take one, and change the day of the offer.';
    case 'supply':
      return 'Quantities: the sellers offer too few, or only more at a time than is needed. Ask for another lot, or enter another seller’s offer.';
    case 'splits':
      return `Splits: it could be done with ${some(choice.splits, 'split')}, more than the rule lets the survivors give by ${dayInWords(targetDay)}.`;
    case 'queens':
      return 'Queens: too few can be had in time. Let the splits raise their own, replace fewer old queens, or enter another offer.';
  }
}

export function wareReason(bee: BeeWare, chosen: { readonly quantity: number; readonly each: number }, order: SolvedOrder, { problem, target }: PreparedOrder): string {
  const step = bee.steps.findLast(({ from }) => from <= chosen.quantity);
  const price = step !== undefined && step.from > 1 ? ` The price holds from ${step.from} on.` : '';
  if (bee.kind === 'queen') {
    const forSplits = problem.splits.queens === 'bought' ? order.choice.splits : 0;
    return `${[...(forSplits > 0 ? [`${forSplits} for splits`] : []), ...(problem.requeen > 0 ? [`${problem.requeen} for old colonies`] : [])].join(', ')}.${price}`;
  }
  const packages = problem.bees.filter(({ kind }) => kind === 'package').reduce((sum, { key }) => sum + (order.choice.wares.get(key)?.quantity ?? 0), 0);
  const comb = bee.kind !== 'package' ? '' : order.choice.onComb >= packages
    ? ' There is drawn comb for all packages, from dead-outs and the shed.'
    : ` Drawn comb is there for ${order.choice.onComb} of ${packages} packages; the others draw their own and give less honey in the first year.`;
  return `The cheapest way to ${target} with price, work and first-year honey counted.${price}${comb}`;
}

/** Once, where bees and boxes are ordered. */
export function cautions(order: SolvedOrder | null): string[] {
  if (order === null) return [];
  return [
    'Equipment of a colony with suspected foulbrood is not used again before the bee inspector has seen it: call before doing anything.',
    ...(order.choice.bought > 0 ? ['Bees that cross a border may need a certificate of health; ask the seller and your inspector.'] : []),
    ...(order.choice.inByYard.some((moved) => moved > 0) ? ['A full hive is heavy: lift with two, or take it apart.'] : []),
  ];
}
