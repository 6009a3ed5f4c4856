import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createDesk } from '#core/desk/desk.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import type { WorkPlan } from '#shared/contract/work.ts';
import { addDays, day } from '#shared/days.ts';

// npm run -s bench -- trips
// The plan of eight weeks for the demo's yards as of its last day, and how much of it changes when one visit is moved.
const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
const today = day('2026-05-01');
const desk = createDesk({ folder, program: 'Outyard (bench)', now: () => ({ day: today, stamp: `${today} 20:00` }), log: () => undefined });

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  // The desk's own answer to that operation; its type follows from the contract.
  return answer.value as OutputOf<Name>;
}

const visitsOf = (plan: WorkPlan) => plan.outings.flatMap((outing) => outing.visits.map(({ yard }) => ({ day: outing.day, yard })));

/** Plans, and waits for the end of the search. */
async function planned(): Promise<{ plan: WorkPlan; first: number; whole: number }> {
  const start = performance.now();
  await ask('work.replan', {});
  const first = (performance.now() - start) / 1000;
  for (;;) {
    const { state, plan } = await ask('work.progress', {});
    if (state !== 'running' && plan !== null) return { plan, first, whole: (performance.now() - start) / 1000 };
    await new Promise((resolve) => {
      setImmediate(resolve);
    });
  }
}

try {
  await ask('book.demo', { which: 'ossar' });
  const { tasks } = await ask('work.tasks', {});
  const { plan, first, whole } = await planned();
  await ask('work.keepPlan', {});
  const visits = visitsOf(plan);
  console.log(`as of ${plan.from}: ${tasks.length} tasks, ${plan.outings.length} outings, ${visits.length} visits to ${new Set(visits.map(({ yard }) => yard)).size} yards, ${plan.troubles.length} troubles`);
  console.log(`driving ${plan.driving} min, each task by itself ${plan.naive} min`);
  const shares: number[] = [];
  for (const moved of visits.filter((_, at) => at % Math.max(1, Math.floor(visits.length / 5)) === 0)) {
    const to = addDays(moved.day, 1);
    const choices = [await ask('work.choose', { kind: 'forbid', ...moved, task: null }), await ask('work.choose', { kind: 'pin', day: to, yard: moved.yard, task: null })];
    const after = new Set(visitsOf((await planned()).plan).map((one) => `${one.day}/${one.yard}`));
    const others = visits.filter((one) => one !== moved);
    shares.push(others.filter((one) => !after.has(`${one.day}/${one.yard}`)).length / Math.max(1, others.length));
    for (const { choice } of choices) await ask('work.lift', { key: choice.key });
    await planned();
  }
  console.log(`other visits changed when one is moved by a day: ${shares.map((share) => `${(100 * share).toFixed(0)} %`).join(', ')}`);
  const saved = plan.naive > 0 ? `${(100 * (1 - plan.driving / plan.naive)).toFixed(0)} %` : '–';
  console.log(`driving saved: ${saved}, gap: ${plan.gap === null ? 'not proven' : `${(100 * plan.gap).toFixed(1)} %`}, first answer: ${first.toFixed(2)} s, search ended: ${whole.toFixed(1)} s, proven: –`);
} finally {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
}
