import type { PlannedTrouble } from '#shared/contract/work.ts';
import { dayInWords, monthDayInWords } from '#shared/days.ts';
import { slotOn } from '../workHours.ts';
import { roundKey } from '../roundTasks.ts';
import type { MadeProblem, PlanFacts } from './makeProblem.ts';
import type { Job, PlanDraft, Round } from './planProblem.ts';
import { roundUnits } from './roundUnits.ts';

/** What comes late or finds no place, each with the reason and what would mend it; what cannot be reached at all comes first. */
export function planTroubles(made: MadeProblem, draft: PlanDraft, asked: PlanFacts): PlannedTrouble[] {
  const { problem, days } = made;
  const found: PlannedTrouble[] = made.unreached.map(({ task, reason, mend }) => ({ key: task.key, what: task.what, yard: task.yard, kind: 'left', late: 0, minutes: Math.round(task.minutes), reason, mend }));
  problem.jobs.forEach((job, at) => {
    const task = made.jobTasks[at];
    if (task === undefined) return;
    const done = [...(draft.jobs[at] ?? [])];
    const left = job.units - done.reduce((sum, [, many]) => sum + many, 0);
    const canWait = task.latest > (days.at(-1) ?? task.latest);
    const latest = job.after === null ? job.latest : ([...(draft.jobs[job.after.job] ?? [])].at(-1)?.[0] ?? problem.days) + job.after.by;
    if (left > 0 && !canWait && latest < problem.days) {
      const minutes = left * job.each;
      found.push({ key: task.key, what: task.what, yard: task.yard, kind: 'left', late: 0, minutes: Math.round(minutes), ...whyNot(made, asked, job, job.earliest, latest, minutes) });
    }
    const late = done.filter(([day]) => day > latest);
    if (late.length > 0) {
      const minutes = late.reduce((sum, [, many]) => sum + many, 0) * job.each;
      const last = Math.max(...late.map(([day]) => day));
      found.push({ key: task.key, what: task.what, yard: task.yard, kind: 'late', late: last - latest, minutes: Math.round(minutes), ...whyNot(made, asked, job, job.earliest, latest, minutes) });
    }
  });
  problem.rounds.forEach((round, at) => {
    const about = made.roundYards[at];
    if (about === undefined) return;
    const worst = worstRound(round, draft.rounds[at] ?? new Map(), problem.days);
    if (worst === null) return;
    const minutes = worst.units * (round.each[worst.due] ?? 0);
    found.push({
      key: roundKey(about.yard.id), what: 'Round', yard: about.yard.id, kind: worst.done ? 'late' : 'left', late: worst.days, minutes: Math.round(minutes), ...whyNot(made, asked, { yard: round.yard, people: 1, only: null }, Math.max(0, worst.due - 6), worst.due, minutes),
    });
  });
  return found;
}

/** The round that comes latest: its first part that is due and not seen by then. */
function worstRound(round: Round, done: ReadonlyMap<number, number>, days: number): { due: number; days: number; units: number; done: boolean } | null {
  const late = roundUnits(round, done).map(({ due, on }) => ({ due, days: (on ?? days) - due, done: on !== null }));
  const most = Math.max(0, ...late.map((one) => one.days));
  const worst = most > 0 ? late.find((one) => one.days === most) : undefined;
  return worst === undefined ? null : { ...worst, units: late.filter((one) => one.days === most && one.due === worst.due).length };
}

function whyNot(made: MadeProblem, { hours, choices }: PlanFacts, { yard, people, only }: Pick<Job, 'yard' | 'people' | 'only'>, earliest: number, latest: number, minutes: number): { reason: string; mend: string } {
  const name = made.yards[yard]?.name ?? 'the yard';
  const going = made.outings.filter((outing) => outing.yards.includes(yard) && outing.day >= earliest && outing.day <= latest);
  const reachable = going.length > 0;
  const by = made.days[Math.min(latest, made.days.length - 1)];
  const until = by === undefined ? '' : monthDayInWords(by);
  const hoursMore = Math.max(0.5, Math.ceil(minutes / 30) / 2);
  const sunday = Array.from({ length: Math.max(0, latest - earliest + 1) }, (_, at) => made.days[earliest + at]).find((day) => day !== undefined && hours.people.every((person) => slotOn(person, day) === null));
  const add = sunday === undefined ? 'Add hours' : `Add ${dayInWords(sunday)}`;
  const shut = choices.flatMap(({ kind, day, yard: where, task }) => (kind === 'forbid' && task === null && day !== null && where === made.yards[yard]?.id && by !== undefined && day >= (made.days[0] ?? day) && day <= by ? [day] : []));
  if (!reachable && shut.length > 0) return { reason: `${name} is forbidden on ${shut.map(monthDayInWords).join(', ')}, and no other day up to ${until} has enough hours in daylight for the way there and back.`, mend: `Let it be gone to on that day again, or ${sunday === undefined ? 'add hours' : `add ${dayInWords(sunday)}`}.` };
  if (!reachable && latest <= 0) return { reason: `Today has not enough hours in daylight for the way to ${name} and back.`, mend: 'Add hours today, or let it come late.' };
  if (!reachable) return { reason: `No day up to ${until} has enough hours in daylight for the way to ${name} and back.`, mend: `${add}, or lengthen a day before ${until}.` };
  // Held there, or for more people than go, it does not want for hours on other days.
  if (only !== null) return { reason: `It is held on ${[...only].map((day) => made.days[day]).filter((day) => day !== undefined).map(monthDayInWords).join(', ')}, and there is not enough time at ${name} for it.`, mend: 'Let go of that day below the plan, or add hours on it.' };
  if (!going.some(({ crew }) => crew.length >= people)) return { reason: `It takes ${people} people, and on no day up to ${until} do as many have hours together for ${name}.`, mend: 'Add the hours of a helper, or say that fewer can do it.' };
  return { reason: `It needs ${hoursMore} h more at ${name} by ${until}; the hours up to then go into driving and other work.`, mend: `${add}, drop something else, or take help.` };
}
