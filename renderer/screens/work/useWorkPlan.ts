import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useState } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { PlanChoice, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { moveChoices, visitsOn } from './planWeeks.ts';

/** How often a search that is under way is looked at. */
const every = 800;

export interface WorkPlanHere {
  /** What is shown: the plan worked out last, else the kept one. */
  readonly plan: WorkPlan | null;
  readonly isKept: boolean;
  readonly kept: OutputOf<'work.plan'>['kept'];
  /** What has changed since the plan that is shown was made, in a sentence. */
  readonly stale: string | null;
  readonly progress: OutputOf<'work.progress'> | undefined;
  readonly running: boolean;
  /** The day that is looked at; null for today. */
  readonly looking: Day | null;
  readonly choices: readonly PlanChoice[];
  readonly tasks: ReadonlyMap<string, WorkTask>;
  readonly loading: boolean;
  readonly fault: Fault | undefined;
  readonly busy: boolean;
  replan(): Promise<boolean>;
  stop(): Promise<void>;
  keep(): Promise<boolean>;
  /** Fixes or forbids, and plans anew; what takes it back, or null where it was refused. */
  choose(choice: Said): Promise<TakingBack | null>;
  lift(choice: PlanChoice): Promise<TakingBack | null>;
  move(yard: YardId, from: Day, to: Day): Promise<TakingBack | null>;
}

type Said = Pick<PlanChoice, 'kind' | 'day' | 'yard' | 'task'>;
/** Takes back what was said of the plan: the very plan of before is there again, or another that was worked out anew, or it was refused. */
export type TakingBack = () => Promise<'same' | 'anew' | 'refused'>;

const noChoices: readonly PlanChoice[] = [];

/** The plan as it is shown, sought and changed. */
export function useWorkPlan(): WorkPlanHere {
  const client = useQueryClient();
  const looking = useAsOf();
  const plan = useRead('work.plan', {});
  const progress = useRead('work.progress', {});
  const tasks = useRead('work.tasks', {});
  const { send: sendReplan, busy: planning } = useWrite('work.replan');
  const stop = useWrite('work.stop');
  const keep = useWrite('work.keepPlan');
  const change = useWrite('work.change');
  const takeBack = useWrite('work.changeBack');
  const [fault, setFault] = useState<Fault | undefined>();

  const running = looking === null && progress.data?.state === 'running';
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => void client.invalidateQueries({ queryKey: ['work.progress'] }), every);
    return () => clearInterval(timer);
  }, [client, running]);

  const again = useCallback(async () => {
    const answer = await sendReplan({});
    setFault(answer.ok ? undefined : answer);
    return answer.ok;
  }, [sendReplan]);

  /** Says and lets go of several things at once, and the plan is worked out anew around them. */
  const changed = async (lifted: readonly string[], said: readonly Said[]): Promise<TakingBack | null> => {
    const answer = await change.send({ lift: [...lifted], choose: said.map(({ kind, day, yard, task }) => ({ kind, day, yard, task })) });
    setFault(answer.ok ? undefined : answer);
    if (!answer.ok) return null;
    const { back } = answer.value;
    return async () => {
      const taken = await takeBack.send({ back });
      return !taken.ok ? 'refused' : taken.value.same ? 'same' : 'anew';
    };
  };
  const choices = plan.data?.choices ?? noChoices;
  // What is being worked out is a plan from today on; of another day only what was kept by then can be shown.
  const found = looking !== null || progress.data?.state === 'none' ? null : (progress.data?.plan ?? null);
  const last = plan.data?.kept ?? null;
  const kept = looking !== null && last !== null && last.made.slice(0, 10) > looking ? null : last;
  const shown = found ?? kept?.plan ?? null;
  return {
    plan: shown,
    isKept: kept !== null && (found === null || sameVisits(found, kept.plan)),
    kept, stale: (found === null ? plan.data?.stale : plan.data?.foundStale) ?? null, progress: progress.data, running, looking, choices,
    tasks: new Map((tasks.data?.tasks ?? []).map((task) => [task.key, task])),
    loading: plan.loading || progress.loading || tasks.loading,
    fault: fault ?? plan.fault ?? progress.fault,
    busy: planning || keep.busy || change.busy || takeBack.busy,
    replan: again,
    stop: async () => {
      const answer = await stop.send({});
      setFault(answer.ok ? undefined : answer);
    },
    keep: async () => {
      const answer = await keep.send({});
      setFault(answer.ok ? undefined : answer);
      return answer.ok;
    },
    choose: (choice) => changed([], [choice]),
    lift: ({ key }) => changed([key], []),
    move: (yard, from, to) => {
      const { lift, choose } = moveChoices(choices, yard, from, to, shown === null ? [] : visitsOn(shown, from, yard).flatMap(({ visit }) => visit.tasks.map(({ key }) => key)));
      return changed(lift, choose);
    },
  };
}

/** Whether two plans go to the same yards at the same times for the same tasks. */
function sameVisits(a: WorkPlan, b: WorkPlan): boolean {
  const text = (plan: WorkPlan) => JSON.stringify(plan.outings.map(({ day, people, visits }) => [day, people, visits.map(({ yard, arrive, leave, tasks }) => [yard, arrive, leave, tasks.map(({ key, minutes }) => [key, minutes])])]));
  return text(a) === text(b);
}
