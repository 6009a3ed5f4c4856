import type { United } from '#shared/contract/values.ts';
import { dayInWords, daysBetween, monthDayInWords, type Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import { aliveBefore, aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { inHundred } from '#core/losses/lossWords.ts';
import { hiveRules } from '#core/stock/hives.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import { betaPriorByMoments, betaPriorFromExpectedRate } from '#core/stats/betaPriorByMoments.ts';
import { equipmentList, type EquipmentQuestion, type PartLine } from './equipment.ts';
import { coloniesToBuy, forecastLosses, lossQuantile, survivorRange, type LossForecast } from './forecastLosses.ts';
import { pastWindows, planWindow, type PastWindow, type PlanWindow } from './planWindow.ts';
import { orderDay } from './wares.ts';

export interface OrderQuestion {
  readonly target: number | undefined;
  readonly confidence: number | undefined;
  readonly source: 'package' | 'nuc';
  readonly hiveFrames: 8 | 10;
  readonly united: United;
  readonly asOf: Day;
  /** The clock's day: tells which winters are over. */
  readonly today: Day;
}

export interface OrderFacts {
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly borders: Borders;
  readonly rules: RuleValues;
  readonly there: EquipmentQuestion['there'];
}

/** A line of bees to order, for a report that knows no offers. */
interface BeeOrder {
  readonly what: string;
  readonly quantity: number;
  readonly seller: string | null;
  readonly orderBy: Day;
  /** That day is past on the as-of day. */
  readonly late: boolean;
  readonly reason: string;
}

/** What a journal alone tells about the order: no offers, no splits, no prices. */
export interface OrderPlan {
  readonly target: number;
  readonly confidence: number;
  readonly past: readonly PastWindow[];
  readonly prior: { readonly rate: number; readonly rule: string; readonly seasons: number };
  /** Survivors of the living: mean and 80 % range. */
  readonly survivors: { readonly mean: number; readonly low: number; readonly high: number };
  readonly buy: number;
  readonly chanceShort: number;
  readonly orders: readonly BeeOrder[];
  readonly equipment: readonly PartLine[];
  readonly sentences: readonly string[];
}

/** What to buy before spring: survivors as a beta-binomial, the quantile rule at the chosen confidence, and the equipment that goes with it. */
export function orderPlan(question: OrderQuestion, facts: OrderFacts): OrderPlan {
  const { states, rules, borders } = facts;
  const { asOf, united } = question;
  const living = states.filter((state) => aliveOn(state, asOf)).length;
  const window = planWindow(asOf, borders, textRule(rules, 'order.nextSpringFrom'));
  const begun = states.reduce<Day | null>((first, state) => (first === null || state.start < first ? state.start : first), null);
  const past = begun === null ? [] : pastWindows(states, facts.yards, window, seasonOf(begun, borders), asOf, question.today, united, borders);
  const weight = numberRule(rules, 'order.priorWeight');
  const prior = betaPriorByMoments(past, weight) ?? betaPriorFromExpectedRate(numberRule(rules, 'order.firstLossRate'), weight);
  const forecast = forecastLosses(prior, living);
  const confidence = question.confidence ?? numberRule(rules, 'order.confidence');
  const target = question.target ?? usualTarget(states, asOf, living, borders);
  const bought = coloniesToBuy(forecast, target, confidence);
  const survivors = survivorRange(forecast);
  const fewLosses = lossQuantile(forecast, 0.1);
  const hives = Math.max(target, living - fewLosses + bought.colonies);
  return {
    target, confidence,
    past: past.map(({ season, from, until, atRisk, lost }) => ({ season, from, until, atRisk, lost })),
    prior: { rate: prior.p, rule: prior.rule, seasons: prior.seasons },
    survivors: { mean: survivors.mean, low: survivors.low, high: survivors.high },
    buy: bought.colonies,
    chanceShort: bought.probabilityShort,
    orders: bought.colonies === 0 ? [] : [beesToOrder(question, facts, window, bought.colonies, confidence, target)],
    equipment: equipmentList({ hives, survivors: living - fewLosses, deadOuts: fewLosses, frames: question.hiveFrames, usual: hiveRules(rules).usual, there: facts.there }, rules),
    sentences: [...staleWords(states, asOf), ...sentences(forecast, past, window, target, confidence, bought.colonies, bought.probabilityShort, asOf)],
  };
}

/** As many as were wintered last: alive when the newest winter that has begun began, if that is more than live now. */
export function usualTarget(states: readonly ColonyState[], asOf: Day, living: number, borders: Borders): number {
  const season = seasonOf(asOf, borders);
  const own = periodDays(season, 'winter', borders).from;
  const from = own <= asOf ? own : periodDays(season - 1, 'winter', borders).from;
  return Math.max(living, states.filter((state) => aliveBefore(state, from)).length);
}

function beesToOrder(question: OrderQuestion, facts: OrderFacts, window: PlanWindow, quantity: number, confidence: number, target: number): BeeOrder {
  const { source, asOf } = question;
  const bought = facts.states.filter((state) => state.origin === source && state.start <= asOf).toSorted((a, b) => (a.start < b.start ? 1 : -1));
  const seller = bought.find((state) => state.supplier !== null)?.supplier ?? null;
  const orderBy = orderDay(window.spring, textRule(facts.rules, `order.${source}.by`), facts.borders);
  return {
    what: source === 'package' ? 'Packages' : 'Nucs',
    quantity,
    seller,
    orderBy,
    late: orderBy < asOf,
    reason: `So that with those alive on ${dayInWords(window.spring)} there are ${target} colonies, with a confidence of ${Math.round(confidence * 100)} in 100.`,
  };
}

function sentences(
  forecast: LossForecast, past: readonly PastWindow[], window: PlanWindow, target: number, confidence: number, buy: number, short: number, asOf: Day,
): string[] {
  const { wintering, prior } = forecast;
  if (wintering === 0 && target === 0) return [`No colony is alive on ${dayInWords(asOf)} and none is wanted yet: set a target.`];
  if (wintering === 0) return [`No colony is alive on ${dayInWords(asOf)}, so the whole target of ${target} is to be bought.`];
  const range = survivorRange(forecast);
  const first = past[0];
  const seen = first === undefined
    ? `No winter is recorded yet, so a loss of ${inHundred(prior.p)} is taken from published surveys; treat this as rough.`
    : `${past.length === 1 ? 'Your one winter' : `Your ${past.length} winters`} lost ${inHundred(past.reduce((sum, one) => sum + one.lost, 0) / past.reduce((sum, one) => sum + one.atRisk, 0))} ${window.whole ? 'over the whole winter' : `from ${monthDayInWords(first.from)} on`}${past.length < 5 ? '; few winters, so treat this as rough' : ''}.`;
  const answer = buy === 0
    ? `With ${target} wanted and a confidence of ${Math.round(confidence * 100)} in 100, nothing need be bought.`
    : `To have ${target} with a confidence of ${Math.round(confidence * 100)} in 100, buy ${buy}; the chance of being short is then ${percent(short)}.`;
  return [
    `${window.whole ? `If the ${wintering} alive now go into the winter,` : `Of the ${wintering} alive now,`} expect about ${Math.round(range.mean)} on ${dayInWords(window.spring)}: in at least 8 of 10 winters between ${range.low} and ${range.high}.`,
    seen,
    answer,
  ];
}

/** Colonies that were not looked at for long may not live; the plan says so instead of counting them silently. */
export function staleWords(states: readonly ColonyState[], asOf: Day): string[] {
  const last = states.reduce<Day | null>((latest, state) => (latest === null || state.lastDay > latest ? state.lastDay : latest), null);
  if (last === null || daysBetween(last, asOf) <= 60) return [];
  return [`The last record of a colony is of ${dayInWords(last)}; what was lost since is not known here.`];
}

/** "3 in 100", or "less than 1 in 100", never a false nought. */
export function percent(share: number): string {
  if (share > 0 && share < 0.005) return 'less than 1 in 100';
  return `${Math.round(share * 100)} in 100`;
}
