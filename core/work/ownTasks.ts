import type { WorkTask } from '#shared/contract/work.ts';
import { addDays } from '#shared/days.ts';
import { ownTaskKey } from '#shared/taskKeys.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { asWritten } from './ownMinutes.ts';
import { ownTimes } from './ownTimes.ts';
import type { WorkFacts } from './workFacts.ts';

/** How long a time of an own task that was not done is still asked for. */
const letGo = 42;

/** The person’s own tasks, each time of a repeating one by itself; what was done or called off is left out. A colony that died is named while its hive waits to be looked over. */
export function ownTasks({ today, until, own, states, deadOuts, rules }: WorkFacts): WorkTask[] {
  const byId = new Map(states.map((state) => [state.id, state]));
  return own.flatMap((task) => ownTimes(task, addDays(today, -letGo), until).flatMap(({ earliest, latest }): WorkTask[] => {
    if (task.settled.some(({ day }) => day === earliest)) return [];
    // Of a repeating task only the last time that is past is asked for.
    if (task.repeat !== null && latest < today && ownTimes(task, addDays(earliest, 1), today).some((next) => next.earliest > earliest)) return [];
    const colonies = task.colonies.flatMap((id) => {
      const state = byId.get(id);
      return state !== undefined && (aliveOn(state, today) || deadOuts.has(id)) ? [{ id, label: state.label }] : [];
    });
    if (task.colonies.length > 0 && colonies.length === 0) return [];
    return [{
      key: ownTaskKey(task.key, earliest), source: 'own', what: task.what, reason: task.note ?? 'Your own task.', yard: task.yard, colonies, earliest, latest, overdue: latest < today, grave: numberRule(rules, 'work.grave.own'),
      ...asWritten(task.minutes), people: task.people, weather: task.weather, bring: task.bring, after: null, sources: [],
    }];
  }));
}
