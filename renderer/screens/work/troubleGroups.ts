import type { YardId } from '#shared/brands.ts';
import type { PlannedTrouble, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { ownTimeOf } from '#shared/taskKeys.ts';

/** A task that finds no place or comes late; the times of a repeating one are told as one. */
export interface NamedTrouble {
  readonly key: string;
  readonly what: string;
  readonly yard: YardId | null;
  /** Days late; of several times the most. */
  readonly late: number;
  /** The first days of its times, where there are several. */
  readonly on: readonly Day[];
}

export interface TroubleGroup {
  readonly kind: PlannedTrouble['kind'];
  readonly reason: string;
  readonly mend: string | null;
  readonly named: readonly NamedTrouble[];
}

export interface ToldTroubles {
  /** What finds no place or comes late, by the reason; what finds no place first. */
  readonly groups: readonly TroubleGroup[];
  /** What was past its last day before there was a plan, with the first day on which something of it is done; the soonest first. */
  readonly overdue: readonly { readonly task: WorkTask; readonly day: Day }[];
}

/** Troubles with the same reason are told together; what was late before the plan began is no fault of the plan. */
export function tellTroubles(plan: WorkPlan, tasks: ReadonlyMap<string, WorkTask>): ToldTroubles {
  const firstOn = new Map<string, Day>();
  for (const { day, visits } of plan.outings) for (const { key } of visits.flatMap((visit) => visit.tasks)) if ((firstOn.get(key) ?? day) >= day) firstOn.set(key, day);
  const before = (trouble: PlannedTrouble) => trouble.kind === 'late' && (tasks.get(trouble.key)?.overdue ?? false);
  const ordered = plan.troubles.filter((one) => !before(one)).toSorted((a, b) => Number(a.kind === 'late') - Number(b.kind === 'late'));
  const groups = [...Map.groupBy(ordered, ({ kind, reason, mend }) => `${kind}|${reason}|${mend ?? ''}`).values()];
  return {
    groups: groups.flatMap((troubles) => (troubles[0] === undefined ? [] : [{ kind: troubles[0].kind, reason: troubles[0].reason, mend: troubles[0].mend, named: namedOf(troubles) }])),
    overdue: [...tasks.values()].flatMap((task) => {
      const day = firstOn.get(task.key);
      return day === undefined || !task.overdue ? [] : [{ task, day }];
    }).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)),
  };
}

function namedOf(troubles: readonly PlannedTrouble[]): NamedTrouble[] {
  return [...Map.groupBy(troubles, ({ key }) => ownTimeOf(key)?.task ?? key).values()].flatMap((own): NamedTrouble[] => {
    const [first] = own;
    const on = own.length < 2 ? [] : own.flatMap(({ key }) => ownTimeOf(key)?.on ?? []).toSorted();
    return first === undefined ? [] : [{ key: first.key, what: first.what, yard: first.yard, late: Math.max(...own.map(({ late }) => late)), on }];
  });
}
