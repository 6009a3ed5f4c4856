import { z } from 'zod';
import type { YardId } from '#shared/brands.ts';
import { keptWorkPlan, ownTask, planChoice, workHours, type OwnTask, type PlanChoice, type WorkHours, type YardDistance } from '#shared/contract/work.ts';
import { dayValue } from '#shared/contract/values.ts';
import type { Day } from '#shared/days.ts';
import type { Paper, Store } from '#core/book/store.ts';
import { houseHours } from '#core/work/workHours.ts';

export const taskPaper = 'task';
export const choicePaper = 'plan choice';
const hoursPaper = 'work hours';
const distancePaper = 'yard distance';
const planPaper = 'work plan';

const distanceBody = z.strictObject({ minutes: z.number() });
const taskBody = ownTask.omit({ key: true });
const choiceBody = planChoice.omit({ key: true });
/** `mark` and `parts`: what it was made from, see `planMark.ts`; one kept before there were marks has only the position. */
const planBody = keptWorkPlan.extend({ position: z.number(), mark: z.string().optional(), parts: z.record(z.string(), z.string()).optional() });
export type KeptPlanPaper = z.infer<typeof planBody>;

/** As written down, or the house pattern while nothing is. */
export async function readHours(store: Store): Promise<{ hours: WorkHours; own: boolean }> {
  const body = (await store.papers(hoursPaper)).get('hours');
  return body === undefined ? { hours: houseHours, own: false } : { hours: workHours.parse(JSON.parse(body)), own: true };
}

export function hoursPaperOf(hours: WorkHours): Paper {
  return { kind: hoursPaper, key: 'hours', body: JSON.stringify(hours) };
}

export async function readDistances(store: Store): Promise<YardDistance[]> {
  return [...(await store.papers(distancePaper))].map(([key, body]) => {
    const [a, b] = key.split('-').map(Number) as [YardId, YardId];
    return { a, b, minutes: distanceBody.parse(JSON.parse(body)).minutes };
  });
}

export function distancePaperOf(a: YardId, b: YardId, minutes: number | null): Paper {
  return { kind: distancePaper, key: a < b ? `${a}-${b}` : `${b}-${a}`, body: minutes === null ? null : JSON.stringify({ minutes }) };
}

export async function readOwnTasks(store: Store): Promise<OwnTask[]> {
  return [...(await store.papers(taskPaper))].map(([key, body]) => ({ ...taskBody.parse(JSON.parse(body)), key }));
}

export async function readChoices(store: Store): Promise<PlanChoice[]> {
  return [...(await store.papers(choicePaper))].map(([key, body]) => ({ ...choiceBody.parse(JSON.parse(body)), key }));
}

/** The plan kept last; those before it stay in the book. */
export async function readKeptPlan(store: Store): Promise<KeptPlanPaper | null> {
  const last = [...(await store.papers(planPaper)).values()].at(-1);
  return last === undefined ? null : planBody.parse(JSON.parse(last));
}

const planReach = z.object({ made: z.string(), plan: z.object({ from: dayValue, until: dayValue }) });

/** The last that was kept by the evening of `today` and that reaches a day; of the others only the days are read. */
export async function readKeptPlanOf(store: Store, day: Day, today: Day): Promise<KeptPlanPaper | null> {
  for (const body of [...(await store.papers(planPaper)).values()].toReversed()) {
    const written: unknown = JSON.parse(body);
    const { made, plan } = planReach.parse(written);
    if (made.slice(0, 10) <= today && plan.from <= day && day <= plan.until) return planBody.parse(written);
  }
  return null;
}

/** Every plan that was kept, the oldest first. */
export async function readKeptPlans(store: Store): Promise<KeptPlanPaper[]> {
  return [...(await store.papers(planPaper)).values()].map((body) => planBody.parse(JSON.parse(body)));
}

export async function keptPlanPaper(store: Store, body: KeptPlanPaper, nextKey: (keys: Iterable<string>) => string): Promise<Paper> {
  return { kind: planPaper, key: nextKey((await store.papers(planPaper)).keys()), body: JSON.stringify(body) };
}
