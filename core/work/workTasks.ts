import type { WorkTask } from '#shared/contract/work.ts';
import { deliveryTasks } from './deliveryTasks.ts';
import { needTasks } from './needTasks.ts';
import { ownPace, type OwnPace } from './ownMinutes.ts';
import { ownTasks } from './ownTasks.ts';
import { roundTasks } from './roundTasks.ts';
import { seasonTasks } from './seasonTasks.ts';
import type { WorkFacts } from './workFacts.ts';

/** Everything that is to be done within the plan, soonest last day first. */
export function workTasks(facts: WorkFacts): { tasks: WorkTask[]; pace: OwnPace } {
  const pace = ownPace(facts);
  const season = seasonTasks(facts, pace);
  // Supers that every hive of a yard gets before the flow need not be asked for one by one.
  const supered = new Set(season.filter(({ key }) => key.startsWith('season|first supers')).flatMap(({ colonies }) => colonies.map(({ id }) => id)));
  const asked = facts.needs.filter(({ rule, colony }) => rule !== 'addBox' || colony === null || !supered.has(colony.id));
  const tasks = [...needTasks(asked, pace, facts), ...roundTasks(facts, pace), ...season, ...deliveryTasks(facts, pace), ...ownTasks(facts)];
  return { tasks: tasks.filter(({ earliest }) => earliest <= facts.until).toSorted((a, b) => compare(a.latest, b.latest) || compare(a.key, b.key)), pace };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
