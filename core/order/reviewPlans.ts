import type { z } from 'zod';
import type { keptPlan, planReview } from '#shared/contract/decision.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';

export type KeptPlan = z.infer<typeof keptPlan>;
export type PlanReview = z.infer<typeof planReview>;

/** Kept plans, newest first, each held against what happened, and how often the 8-in-10 range held. */
export function reviewPlans(plans: readonly KeptPlan[], states: readonly ColonyState[], today: Day): { plans: PlanReview[]; tally: { over: number; inside: number; sentence: string } } {
  const reviews = plans.map((plan) => reviewPlan(plan, states, today)).toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : a.key < b.key ? 1 : -1));
  // Several plans for one spring meet the same winter: only the last of each counts.
  const springs = new Map<Day, PlanReview>();
  for (const review of reviews) if (review.inside !== null && !springs.has(review.spring)) springs.set(review.spring, review);
  const over = springs.size;
  const inside = [...springs.values()].filter((review) => review.inside === true).length;
  const sentence = over === 0
    ? 'No spring that a plan was kept for has come yet.'
    : `Of ${over} ${over === 1 ? 'spring' : 'springs'} with a kept plan, the survivors lay inside the range ${inside} ${inside === 1 ? 'time' : 'times'}; about 8 in 10 is what the range promises.${over < 10 ? ' So few say little yet.' : ''}`;
  return { plans: reviews, tally: { over, inside, sentence } };
}

/** Survivors are counted as the forecast counts them: sold, given and (by that rule) united colonies are not lost. */
function reviewPlan(plan: KeptPlan, states: readonly ColonyState[], today: Day): PlanReview {
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
    survivors, inside, onTargetDay, sentence: `${whole}${target}`,
  };
}

function isLost(state: ColonyState, united: 'lost' | 'takenOut'): boolean {
  return state.how === 'lost' || state.how === 'absconded' || (state.how === 'combined' && united === 'lost');
}
