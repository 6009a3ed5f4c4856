import { outingCost, visitSet, type PlanDraft, type PlanProblem } from './planProblem.ts';

/** The same plan without the visits on which nothing is done and that nobody holds: the outing goes to the other yards only, or not at all. */
export function trimDraft(problem: PlanProblem, draft: PlanDraft): PlanDraft {
  const { outings, jobs, rounds, held } = problem;
  const before = visitSet(problem.before);
  let { cost } = draft;
  const outing = draft.outing.map((choice, day) => {
    const own = outings[choice];
    if (own === undefined) return choice;
    const wanted = own.yards.filter((yard) =>
      held.some((visit) => visit.day === day && visit.yard === yard)
      || jobs.some((job, at) => job.yard === yard && (draft.jobs[at]?.get(day) ?? 0) > 0) || rounds.some((round, at) => round.yard === yard && (draft.rounds[at]?.get(day) ?? 0) > 0));
    if (wanted.length === own.yards.length) return choice;
    const work = jobs.reduce((sum, { each }, at) => sum + each * (draft.jobs[at]?.get(day) ?? 0), 0) + rounds.reduce((sum, { each }, at) => sum + (each[day] ?? 0) * (draft.rounds[at]?.get(day) ?? 0), 0);
    const next = wanted.length === 0 ? -1 : outings.findIndex((one) => one.day === day && one.yards.length === wanted.length && wanted.every((yard) => one.yards.includes(yard)) && one.crew.join() === own.crew.join() && one.room >= work - 1e-6);
    if (next < 0 && wanted.length > 0) return choice;
    const instead = outings[next];
    cost += (instead === undefined ? 0 : outingCost(instead, before)) - outingCost(own, before);
    return next;
  });
  return { ...draft, outing, cost };
}
