import type { z } from 'zod';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { KeptPlan, planReview } from '#shared/contract/decision.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';
import { planLines } from './planLines.ts';

export type PlanReview = z.infer<typeof planReview>;

export interface PlanRecord {
  readonly states: readonly ColonyState[];
  /** Installs, requeenings and purchases, in the journal's order. */
  readonly entries: readonly Entry[];
  readonly today: Day;
}

type Reviewed = OutputOf<'plans.list'>;

/** Kept plans, newest first, each held against what happened, and how often the 8-in-10 range held. */
export function reviewPlans(plans: readonly KeptPlan[], record: PlanRecord): Reviewed {
  const reviews = plans.map((plan) => reviewPlan(plan, record)).toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : a.key < b.key ? 1 : -1));
  return { plans: reviews, tally: calibration(reviews) };
}

/** Several plans for one spring meet the same winter: only the last of each counts. Reviews newest first. */
function calibration(reviews: readonly PlanReview[]): Reviewed['tally'] {
  const last = new Map<Day, PlanReview>();
  for (const review of reviews) if (review.inside !== null && !last.has(review.spring)) last.set(review.spring, review);
  const springs: Reviewed['tally']['springs'] = [];
  let inside = 0;
  for (const { spring, living, low, high, survivors, inside: held } of [...last.values()].toSorted((a, b) => (a.spring < b.spring ? -1 : 1))) {
    if (survivors === null || held === null) continue;
    if (held) inside += 1;
    springs.push({ spring, living, low, high, survivors, inside: held, runningInside: inside, runningOver: springs.length + 1 });
  }
  const over = springs.length;
  const limits = wilsonInterval(inside, over);
  const range = limits === null ? '' : ` (${Math.round((100 * inside) / over)} %, ${Math.round(100 * limits.lower)}–${Math.round(100 * limits.upper)})`;
  const few = over < 5 ? ' So few say little yet.' : over < 10 ? ' Few springs, so the share is rough.' : limits !== null && limits.upper < 0.8 ? ' The ranges were too narrow: plan with more confidence than you need.' : limits !== null && limits.lower > 0.8 ? ' The ranges were wider than they need be.' : ' That agrees with it.';
  return {
    over, inside, springs, limits: limits === null ? null : [limits.lower, limits.upper],
    sentence: over === 0
      ? 'No spring that a plan was kept for has come yet.'
      : `Of ${over} ${over === 1 ? 'spring' : 'springs'} with a kept plan, the survivors lay inside the range ${inside} ${inside === 1 ? 'time' : 'times'}${over < 5 ? '' : range}; about 8 in 10 is what the range promises.${few}`,
  };
}

/** Survivors are counted as the forecast counts them: sold, given and (by that rule) united colonies are not lost. */
function reviewPlan(plan: KeptPlan, { states, entries, today }: PlanRecord): PlanReview {
  const { decision } = plan;
  const { forecast, spring, asOf, answer } = decision;
  const over = today >= spring;
  const lost = states.filter((state) => aliveOn(state, asOf) && state.end !== null && state.end < spring && isLost(state, decision.question.united)).length;
  const survivors = over ? Math.max(0, decision.living - lost) : null;
  const inside = survivors === null ? null : survivors >= forecast.low && survivors <= forecast.high;
  const onTargetDay = today >= decision.targetDay ? states.filter((state) => aliveOn(state, decision.targetDay)).length : null;
  const whole = survivors === null
    ? `Between ${forecast.low} and ${forecast.high} of ${decision.living} are expected on ${dayInWords(spring)}.`
    : `${survivors} of ${decision.living} lived on ${dayInWords(spring)}; ${forecast.low} to ${forecast.high} were expected${inside === true ? '' : survivors < forecast.low ? ', so the winter was harder than the range' : ', so the winter was milder than the range'}.`;
  const target = onTargetDay === null ? '' : ` On ${dayInWords(decision.targetDay)} there were ${onTargetDay}, and ${decision.target} were wanted.`;
  return {
    key: plan.key, day: plan.day, spring, note: plan.note, target: decision.target, confidence: decision.confidence, living: decision.living,
    low: forecast.low, high: forecast.high, mean: forecast.mean, bought: answer?.bought ?? null, splits: answer?.splits ?? null, total: answer?.total ?? null,
    survivors, inside, onTargetDay, sentence: `${whole}${target}`, lines: planLines(plan, survivors, states, entries, today),
  };
}

function isLost(state: ColonyState, united: 'lost' | 'takenOut'): boolean {
  return state.how === 'lost' || state.how === 'absconded' || (state.how === 'combined' && united === 'lost');
}
