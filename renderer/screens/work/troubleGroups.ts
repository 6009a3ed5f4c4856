import type { PlannedTrouble, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';

export interface TroubleGroup {
  readonly kind: PlannedTrouble['kind'];
  readonly reason: string;
  readonly mend: string | null;
  readonly troubles: readonly PlannedTrouble[];
}

export interface ToldTroubles {
  /** What finds no place or comes late, by the reason; what finds no place first. */
  readonly groups: readonly TroubleGroup[];
  /** What was past its last day before there was a plan, with the first day on which something of it is done. */
  readonly overdue: readonly { readonly trouble: PlannedTrouble; readonly day: Day | null }[];
}

/** Troubles with the same reason are told together; what was late before the plan began is no fault of the plan. */
export function tellTroubles(plan: WorkPlan, tasks: ReadonlyMap<string, WorkTask>): ToldTroubles {
  const before = (trouble: PlannedTrouble) => trouble.kind === 'late' && (tasks.get(trouble.key)?.overdue ?? false);
  const dayOf = (key: string) => plan.outings.find(({ visits }) => visits.some((visit) => visit.tasks.some((task) => task.key === key)))?.day ?? null;
  const ordered = plan.troubles.filter((one) => !before(one)).toSorted((a, b) => Number(a.kind === 'late') - Number(b.kind === 'late'));
  const groups = [...Map.groupBy(ordered, ({ kind, reason, mend }) => `${kind}|${reason}|${mend ?? ''}`).values()];
  return {
    groups: groups.flatMap((troubles) => (troubles[0] === undefined ? [] : [{ kind: troubles[0].kind, reason: troubles[0].reason, mend: troubles[0].mend, troubles }])),
    overdue: plan.troubles.filter(before).map((trouble) => ({ trouble, day: dayOf(trouble.key) })),
  };
}
