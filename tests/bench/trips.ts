import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';
import type { DeskContext } from '#core/desk/desk.ts';
import { PlanRun } from '#core/desk/planRun.ts';
import { planFactsOf } from '#core/desk/workPlanHandlers.ts';
import { makeProblem, type PlanFacts } from '#core/work/plan/makeProblem.ts';
import type { PlanChoice, WorkPlan } from '#shared/contract/work.ts';
import { addDays, day } from '#shared/days.ts';

// npm run -s bench -- trips [seconds]
// Eight weeks of the demo as of 1 May 2026: the first plan, how near to the best it is proven to be, and trips moved one by one.
const patience = Number(process.argv[2] ?? 60);
const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
const may = day('2026-05-01');
const wanted = 0.05;

interface Ran {
  readonly plan: WorkPlan;
  readonly first: number;
  readonly firstDriving: number;
  /** Seconds until the gap was small enough; null where it never was. */
  readonly proven: number | null;
}

/** Seconds count from the question on, reading the book included. */
async function plan(asking: () => Promise<PlanFacts>): Promise<Ran> {
  const began = performance.now();
  const since = () => (performance.now() - began) / 1000;
  const asked = await asking();
  const run = new PlanRun(asked, 0, (line) => console.log(line));
  await run.first;
  const [first, firstDriving] = [since(), run.plan?.driving ?? Number.NaN];
  let proven: number | null = null;
  const watch = setInterval(() => {
    if (proven === null && run.gap !== null && run.gap <= wanted) proven = since();
  }, 20);
  let giveUp: NodeJS.Timeout | undefined;
  await Promise.race([run.ended, new Promise((resolve) => (giveUp = setTimeout(resolve, 1000 * patience)))]);
  clearTimeout(giveUp);
  clearInterval(watch);
  if (proven === null && run.gap !== null && run.gap <= wanted) proven = since();
  run.stop();
  const { plan: made } = run;
  if (made === null) throw new Error('no plan was found');
  return { plan: made, first, firstDriving, proven };
}

const visitsOf = (made: WorkPlan) => made.outings.flatMap((outing) => outing.visits.map(({ yard }) => `${outing.day}/${yard}`));

/** Share of the visits of a plan, but for those that were moved, that another plan has not. */
function changed(before: WorkPlan, after: WorkPlan, moved: readonly string[]): number {
  const now = new Set(visitsOf(after));
  const others = visitsOf(before).filter((visit) => !moved.includes(visit));
  return others.filter((visit) => !now.has(visit)).length / Math.max(1, others.length);
}

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;

try {
  const whole = await openDemo(demoBook('ossar', folder));
  const book = whole.asOf(may);
  const context: DeskContext = { options: { folder, program: 'Outyard (bench)', now: () => ({ day: may, stamp: `${may} 20:00` }), log: () => undefined }, book: () => book, open: () => book, setBook: async () => undefined };
  const { plan: made, first, firstDriving, proven } = await plan(() => planFactsOf(context));
  const asked = await planFactsOf(context);
  console.log(`${asked.facts.yards.length} yards, ${asked.tasks.length} tasks, ${made.outings.length} outings, ${visitsOf(made).length} visits, ${made.troubles.length} late or left`);
  console.log(`driving: ${Math.round(made.naive)} min with each task on its earliest free day and each round as soon as it is due, ${firstDriving} in the first plan, ${made.driving} in the last`);

  const again = async (choices: readonly PlanChoice[]) => (await plan(() => Promise.resolve({ ...asked, choices, kept: made, before: made }))).plan;
  const { problem, days, yards } = makeProblem(asked);
  const reached = new Set(problem.outings.flatMap((outing) => outing.yards.map((at) => `${days[outing.day]}/${yards[at]?.id}`)));
  const off: number[] = [];
  const single: number[] = [];
  for (const outing of made.outings) {
    const forbid = outing.visits.map(({ yard }, at): PlanChoice => ({ key: `c${at}`, kind: 'forbid', day: outing.day, yard, task: null }));
    off.push(changed(made, await again(forbid), outing.visits.map(({ yard }) => `${outing.day}/${yard}`)));
    const [visit] = outing.visits;
    const other = [1, -1, 2, -2, 3, -3, 4, -4, 7, -7].map((by) => addDays(outing.day, by)).find((to) => reached.has(`${to}/${visit?.yard}`));
    if (visit === undefined || other === undefined) continue;
    const choices: PlanChoice[] = [{ key: 'c1', kind: 'forbid', day: outing.day, yard: visit.yard, task: null }, { key: 'c2', kind: 'pin', day: other, yard: visit.yard, task: null }];
    single.push(changed(made, await again(choices), [`${outing.day}/${visit.yard}`]));
  }
  console.log(`other visits changed when an outing is called off: ${off.map(percent).join(', ')}`);
  console.log(`other visits changed when one visit is moved to another day: ${single.map(percent).join(', ')}`);
  const words = (value: number | null, unit: string, digits: number) => (value === null ? `not within ${patience} s` : `${value.toFixed(digits)}${unit}`);
  console.log(`driving saved: ${percent(1 - made.driving / made.naive)}, gap: ${made.gap === null ? 'not known' : `${(100 * made.gap).toFixed(1)} %`}, first answer: ${first.toFixed(1)} s, proven: ${words(proven, ' s', 1)}`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
