import type { PlannedTrouble } from '#shared/contract/work.ts';
import { ownTimeOf } from '#shared/taskKeys.ts';
import { roundKey, roundWords } from '../roundTasks.ts';
import type { MadeProblem, PlanFacts } from './makeProblem.ts';
import type { PlanDraft, Round } from './planProblem.ts';
import { roundUnits } from './roundUnits.ts';
import { lackOf, whyNot, type Why } from './whyNot.ts';

/** A trouble, and how it is said of several times of one task. */
export type FoundTrouble = Omit<PlannedTrouble, 'mend'> & { readonly mend: string | null; readonly ofAll: Why['ofAll'] | null };

/** What comes late or finds no place, each with the reason and what would mend it; what cannot be reached at all comes first. */
export function planTroubles(made: MadeProblem, draft: PlanDraft, asked: PlanFacts): FoundTrouble[] {
  const { problem, days } = made;
  const lack = made.outings.length > 0 ? null : lackOf(made, asked.hours);
  const found: FoundTrouble[] = made.unreached.map(({ task, reason, mend }) => ({ key: task.key, what: task.what, yard: task.yard, kind: 'left', late: 0, minutes: Math.round(task.minutes), reason, mend, ofAll: null }));
  problem.jobs.forEach((job, at) => {
    const task = made.jobTasks[at];
    if (task === undefined) return;
    const done = [...(draft.jobs[at] ?? [])];
    const left = job.units - done.reduce((sum, [, many]) => sum + many, 0);
    const canWait = task.latest > (days.at(-1) ?? task.latest);
    const latest = job.after === null ? job.latest : ([...(draft.jobs[job.after.job] ?? [])].at(-1)?.[0] ?? problem.days) + job.after.by;
    if (left > 0 && !canWait && latest < problem.days) {
      const minutes = left * job.each;
      found.push({ key: task.key, what: task.what, yard: task.yard, kind: 'left', late: 0, minutes: Math.round(minutes), ...(lack ?? whyNot(made, asked, job, job.earliest, latest, minutes)) });
    }
    const late = done.filter(([day]) => day > latest);
    if (late.length > 0) {
      const minutes = late.reduce((sum, [, many]) => sum + many, 0) * job.each;
      const last = Math.max(...late.map(([day]) => day));
      found.push({ key: task.key, what: task.what, yard: task.yard, kind: 'late', late: last - latest, minutes: Math.round(minutes), ...(lack ?? whyNot(made, asked, job, job.earliest, latest, minutes)) });
    }
  });
  problem.rounds.forEach((round, at) => {
    const about = made.roundYards[at];
    if (about === undefined) return;
    const worst = worstRound(round, draft.rounds[at] ?? new Map(), problem.days);
    if (worst === null) return;
    const minutes = worst.units * (round.each[worst.due] ?? 0);
    const on = days[Math.min(Math.max(0, worst.on ?? worst.due), days.length - 1)] ?? asked.facts.today;
    found.push({
      key: roundKey(about.yard.id), what: roundWords(asked.facts.rules, on), yard: about.yard.id, kind: worst.on !== null ? 'late' : 'left', late: worst.on === null ? 0 : worst.days, minutes: Math.round(minutes), ...(lack ?? whyNot(made, asked, { yard: round.yard, people: 1, only: null }, Math.max(0, worst.due - 6), worst.due, minutes)),
    });
  });
  return found;
}

/** The round that comes latest: its first part that is due and not seen by then. */
function worstRound(round: Round, done: ReadonlyMap<number, number>, days: number): { due: number; days: number; units: number; on: number | null } | null {
  const late = roundUnits(round, done).map(({ due, on }) => ({ due, days: (on ?? days) - due, on }));
  const most = Math.max(0, ...late.map((one) => one.days));
  const worst = most > 0 ? late.find((one) => one.days === most) : undefined;
  return worst === undefined ? null : { ...worst, units: late.filter((one) => one.days === most && one.due === worst.due).length };
}

/** What hinders several times of one task alike is said of all of them in the same words, so that they can be told together. */
export function alikeTold(found: readonly FoundTrouble[]): PlannedTrouble[] {
  const alike = ({ key, kind, ofAll }: FoundTrouble) => `${ownTimeOf(key)?.task ?? key}|${kind}|${ofAll?.reason ?? ''}|${ofAll?.mend ?? ''}`;
  const many = Map.groupBy(found, alike);
  return found.map((one) => {
    const { ofAll, ...trouble } = one;
    return ofAll === null || (many.get(alike(one))?.length ?? 1) < 2 ? trouble : { ...trouble, ...ofAll };
  });
}
