import type { DecisionQuestion, OrderDecision, SurvivalView } from '#shared/contract/decision.ts';
import type { Offer, PaidPrice } from '#shared/contract/offers.ts';
import { dayFromIso, yearOf, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import { aliveOn, currentReign, type ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { Available } from '#core/stock/stockTable.ts';
import type { Chance } from './chance.ts';
import { answerSentences, cautions, limitSentence } from './decisionWords.ts';
import { equipmentAsked, partsOnOrder } from './askedParts.ts';
import { equipmentList, isForPart, partsEach } from './equipment.ts';
import { cropInPounds, firstYearHoney } from './firstYearHoney.ts';
import type { MilpSolver } from './milp.ts';
import { orderAnswer } from './orderAnswer.ts';
import { queensOnOrder, type BeeWare, type OrderProblem, type SpringYard } from './orderProblem.ts';
import { staleWords, usualTarget } from './orderPlan.ts';
import type { OnOrder } from './placedOrders.ts';
import { bindingLimits, highestTarget, solveOrder, type SolvedOrder } from './solveOrder.ts';
import { supersWanted, winteredCrop, type SupersWanted } from './supersFromYield.ts';
import { survivalForecast, type SurvivalForecast } from './survivalForecast.ts';
import { kindTerms, waresOf, type Wares } from './wares.ts';

export interface DecisionFacts {
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly borders: Borders;
  readonly rules: RuleValues;
  readonly asOf: Day;
  readonly today: Day;
  readonly views: readonly SurvivalView[];
  readonly offers: readonly Offer[];
  readonly paid: readonly PaidPrice[];
  /** What the equipment account has of an item, and where it goes below nothing. */
  readonly there: (item: string) => Available | null;
  readonly stockTrouble: OrderDecision['stockTrouble'];
  readonly onOrder: OnOrder;
}

/** Everything worked out before the solver is asked. */
export interface PreparedOrder {
  readonly problem: OrderProblem;
  readonly forecast: SurvivalForecast;
  readonly wares: Wares;
  readonly target: number;
  readonly confidence: number;
  readonly targetDay: Day;
  readonly oldQueens: number;
  readonly supers: SupersWanted;
  /** Colonies on order, counted as coming. */
  readonly coming: number;
}

/** The question as a problem with numbers: forecast, wares, rules. `chance` must be seeded the same for the same answer. */
export function prepareOrder(question: DecisionQuestion, facts: DecisionFacts, chance: Chance): PreparedOrder {
  const { states, rules, borders, asOf } = facts;
  const forecast = survivalForecast({ ...facts, united: question.united, lossRate: question.lossRate }, chance);
  const { spring } = forecast.window;
  const targetDay = targetDayOf(spring, textRule(rules, 'decision.targetDay'));
  const wares = waresOf(facts.offers, facts.paid, { today: facts.today, spring, targetDay }, question.priceFactor, rules, borders);
  const confidence = question.confidence ?? numberRule(rules, 'order.confidence');
  const target = question.target ?? usualTarget(states, asOf, forecast.living, borders);
  const rule = (key: string) => numberRule(rules, `decision.${key}`);
  const raised = question.splitQueens === 'raised';
  const take = rule(raised ? 'split.takeRaised' : 'split.take');
  const { minutes, honeyForgone } = kindTerms(rules, cropInPounds(firstYearHoney(states, borders, asOf, rules)), take);
  const supers = supersWanted(rules, question.hiveFrames, winteredCrop(states, borders, asOf));
  const spare = numberRule(rules, 'order.spare');
  const parts = equipmentList(equipmentAsked(target, forecast, supers, question, facts), rules);
  const coming = facts.onOrder.colonies;
  const problem: OrderProblem = {
    target: Math.max(0, target - coming), onOrder: Math.min(target, coming), confidence, shares: forecast.scenarios.shares,
    splits: { take, perSurvivor: question.splits ? rule('split.strong') * rule('split.cap') : 0, queens: question.splitQueens },
    yards: roomLeft(middlingSpring(forecast).map((survivors, y) => ({ survivors, room: facts.yards[y]?.room ?? null })), coming),
    bees: facts.onOrder.queens === 0 ? wares.bees : [queensComing(facts.onOrder.queens, facts.today), ...wares.bees],
    parts: parts.map((part) => ({
      item: part.item, perColony: partsEach(part, spare), have: part.have + partsOnOrder(part.item, question, facts),
      packs: wares.packs.filter(({ item }) => isForPart(item, part.item, question.hiveFrames)).map(({ ware }) => ware),
    })),
    hivesStanding: forecast.high,
    requeen: question.requeen,
    freeCombs: Math.max(0, freeCombs(forecast, question.hiveFrames, facts) - facts.onOrder.packages * rule('comb.package')),
    combsPerPackage: rule('comb.package'),
    minutes, honeyForgone,
    hourValue: rule('hourValue') * 100,
    missing: rule('missing') * 100,
    surplus: rule('surplus') * 100,
    hours: question.hours === undefined ? rule('springHours') * Math.max(target, forecast.living) : question.hours,
    budget: question.budget,
  };
  return { problem, forecast, wares, target, confidence, targetDay, oldQueens: oldQueens(states, asOf, yearOf(spring), rule('requeen.years')), supers, coming };
}

/** The cheapest order that keeps the target with the confidence, and where there is none, why, and what can be reached. */
export function decideOrder(question: DecisionQuestion, facts: DecisionFacts, solver: MilpSolver, chance: Chance): OrderDecision {
  const prepared = prepareOrder(question, facts, chance);
  const { problem, forecast, target, confidence, targetDay } = prepared;
  const solved = solveOrder(problem, solver);
  // Where not even the hives that stand can be fitted out within the limits, bees are planned without equipment.
  const reachable = solved === null ? (highestTarget(problem, solver) ?? highestTarget({ ...problem, parts: [], requeen: 0 }, solver)) : null;
  const binding = solved === null ? bindingLimits(problem, solver) : [];
  const given = solved ?? reachable?.order ?? null;
  const outcome = solved === null ? 'impossible' : isNothing(solved) ? 'nothing' : 'order';
  // What is listed is for the target that the order reaches, which may be less than the one asked for.
  const at = solved !== null || reachable === null ? prepared : { ...prepared, target: reachable.target + problem.onOrder, problem: { ...problem, target: reachable.target } };
  const answer = given === null ? null : orderAnswer(given, at, question, facts);
  const years = numberRule(facts.rules, 'decision.requeen.years');
  return {
    asOf: facts.asOf, spring: forecast.window.spring, targetDay, living: forecast.living, target, confidence, question,
    forecast: {
      winters: forecast.past.map(({ season, from, atRisk, lost }) => ({ season, from, atRisk, lost })),
      rate: forecast.rate, from: forecastSource(forecast), mean: forecast.mean, low: forecast.low, high: forecast.high,
      chances: (forecast.scenarios.exact ?? forecast.scenarios.shares).map((chanceOf, survivors) => ({ survivors, chance: chanceOf })),
      adjusted: forecast.view === null ? null : { rate: forecast.view.rate, reason: forecast.view.reason },
    },
    yards: forecast.yards.map((one, y) => {
      const yard = facts.yards[y];
      if (yard === undefined) throw new Error('a yard of the forecast is not in the book');
      return {
        yard: yard.id, code: yard.code, name: yard.name, room: yard.room, living: one.living, winters: one.winters, atRisk: one.atRisk, lost: one.lost,
        ratio: Math.exp(one.effect), ratioLimits: [Math.exp(one.effect - 1.96 * one.sd), Math.exp(one.effect + 1.96 * one.sd)] as [number, number], shrinkage: one.shrinkage,
        mean: one.mean, low: one.low, high: one.high, adjusted: one.view === null ? null : { rate: one.view.rate, reason: one.view.reason },
      };
    }),
    oldQueens: {
      count: prepared.oldQueens,
      sentence: prepared.oldQueens === 0 ? `No queen will have lived through ${years} winters by then, as far as the record knows their years.` : `${prepared.oldQueens} living ${prepared.oldQueens === 1 ? 'colony has a queen' : 'colonies have queens'} that will have lived through ${years} winters or more; not all of them will see the spring.`,
    },
    outcome,
    answer,
    reached: solved !== null ? target : reachable === null ? null : reachable.target + problem.onOrder,
    limits: binding.map((one) => ({ limit: one.limit, sentence: limitSentence(one, problem, targetDay) })),
    leftOut: [...prepared.wares.leftOut],
    stockTrouble: facts.stockTrouble.map((one) => ({ ...one })),
    sentences: [
      ...staleWords(facts.states, facts.asOf),
      ...answerSentences({ prepared, solved, reachable, binding, answer }),
      ...prepared.wares.assumed,
    ],
    onOrder: { colonies: prepared.coming, queens: facts.onOrder.queens },
    cautions: cautions(given),
  };
}

function isNothing(order: SolvedOrder): boolean {
  return order.choice.bought === 0 && order.choice.splits === 0 && order.choice.wares.size === 0;
}

function forecastSource(forecast: SurvivalForecast): string {
  const winters = forecast.past.length;
  if (forecast.view !== null) return `Your own expectation: ${forecast.view.reason}`;
  if (winters === 0) return 'No winter is recorded yet: the average of published surveys, and how much winters differ; rough.';
  return `${winters === 1 ? 'One winter' : `${winters} winters`} of your own, with the published average counting as a few colonies more${winters < 5 ? '; few winters, so rough' : ''}.`;
}

function targetDayOf(spring: Day, monthDay: string): Day {
  const own = dayFromIso(`${yearOf(spring)}-${monthDay}`) ?? spring;
  return own >= spring ? own : (dayFromIso(`${yearOf(spring) + 1}-${monthDay}`) ?? spring);
}

/** Mean survivors by yard in whole colonies that add up to the rounded mean of all (largest remainders). */
function middlingSpring(forecast: SurvivalForecast): number[] {
  const whole = forecast.yards.map(({ mean }) => Math.floor(mean + 1e-9));
  let rest = Math.round(forecast.mean) - whole.reduce((sum, one) => sum + one, 0);
  const order = forecast.yards.map(({ mean }, y) => ({ y, part: mean - Math.floor(mean + 1e-9) })).toSorted((a, b) => b.part - a.part);
  for (const { y } of order) {
    if (rest <= 0) break;
    whole[y] = (whole[y] as number) + 1;
    rest -= 1;
  }
  return whole;
}

/** Colonies on order take the places that are free, the roomiest yard first. */
function roomLeft(yards: readonly SpringYard[], coming: number): SpringYard[] {
  // A book without a yard yet is planned for somewhere.
  if (yards.length === 0) return [{ survivors: 0, room: null }];
  const left = yards.map((yard) => ({ ...yard }));
  const free = ({ room, survivors }: SpringYard) => (room === null ? Infinity : room - survivors);
  for (let placed = 0; placed < coming; placed += 1) {
    const roomiest = left.reduce<{ survivors: number; room: number | null } | null>((best, one) => (best === null || free(one) > free(best) ? one : best), null);
    if (roomiest === null || roomiest.room === null) break;
    roomiest.room -= 1;
  }
  return left;
}

/** Queens that were ordered before cost nothing more. */
function queensComing(count: number, today: Day): BeeWare {
  return { key: queensOnOrder, kind: 'queen', steps: [{ from: 1, each: 0 }], least: 1, most: count, late: false, orderBy: today };
}

/** Drawn brood combs without bees: of the dead-outs of a middling spring, of those to be checked, and what lies free. */
function freeCombs(forecast: SurvivalForecast, frames: 8 | 10, { there, rules }: DecisionFacts): number {
  const dead = Math.max(0, forecast.living - Math.round(forecast.mean));
  const account = there('deep frame');
  const onHives = account === null || forecast.living === 0 ? numberRule(rules, 'order.deeps') * frames : account.onHives / forecast.living;
  const back = (dead * onHives + (account?.drawnToCheck ?? 0)) * numberRule(rules, 'order.deadOutSound');
  // Names that say no size count as brood comb.
  const others = ['drawn comb', 'drawn frame'].map(there).reduce((sum, one) => sum + Math.max(0, (one?.shed ?? 0) + (one?.yards ?? 0)), 0);
  return Math.floor(back + (account?.drawn ?? 0) + others);
}

/** Living colonies whose queen will have gone through that many winters; a queen of unknown year is not counted. */
function oldQueens(states: readonly ColonyState[], asOf: Day, springYear: number, winters: number): number {
  return states.filter((state) => {
    const year = aliveOn(state, asOf) ? (currentReign(state)?.year ?? null) : null;
    return year !== null && springYear - year >= winters;
  }).length;
}
