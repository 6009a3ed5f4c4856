import type { WorkPlan, WorkTask } from './contract/work.ts';
import type { Day } from './days.ts';

/** Where the colonies of a task on one day are found. */
export function turnKey(day: Day, task: string): string {
  return `${day} ${task}`;
}

/**
 * Which colonies each task of each day is about, where it takes only some of them: they are taken in the task's own
 * order, and a round begins again with those seen longest ago once all were seen. Days before `today` are left out, since
 * the tasks are as the record stands. A task whose colonies are others than when the plan was made is left out too.
 */
export function coloniesByTurn(plan: WorkPlan, tasks: ReadonlyMap<string, WorkTask>, today: Day): ReadonlyMap<string, WorkTask['colonies']> {
  const waiting = new Map<string, WorkTask['colonies']>();
  const turns = new Map<string, WorkTask['colonies']>();
  const outings = plan.outings.filter(({ day }) => day >= today).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.leave - b.leave));
  for (const { day, visits } of outings) {
    for (const { key, colonies, of } of visits.flatMap((visit) => visit.tasks)) {
      const task = tasks.get(key);
      if (task === undefined || of === 0 || task.colonies.length !== of) continue;
      const line = waiting.get(key) ?? task.colonies;
      const turn = line.slice(0, colonies);
      waiting.set(key, task.source === 'round' ? [...line.slice(colonies), ...turn] : line.slice(colonies));
      turns.set(turnKey(day, key), [...(turns.get(turnKey(day, key)) ?? []), ...turn]);
    }
  }
  return turns;
}
