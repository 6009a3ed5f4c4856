import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useState } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { PlanChoice, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { moveChoices } from './planWeeks.ts';

/** How often a search that is under way is looked at. */
const every = 800;

export interface WorkPlanHere {
  /** What is shown: the plan worked out last, else the kept one. */
  readonly plan: WorkPlan | null;
  readonly isKept: boolean;
  readonly kept: OutputOf<'work.plan'>['kept'];
  readonly stale: string | null;
  readonly progress: OutputOf<'work.progress'> | undefined;
  readonly choices: readonly PlanChoice[];
  readonly tasks: ReadonlyMap<string, WorkTask>;
  readonly loading: boolean;
  readonly fault: Fault | undefined;
  readonly busy: boolean;
  replan(): Promise<boolean>;
  stop(): Promise<void>;
  keep(): Promise<boolean>;
  /** Fixes or forbids, and plans anew. */
  choose(choice: Pick<PlanChoice, 'kind' | 'day' | 'yard' | 'task'>): Promise<boolean>;
  lift(key: string): Promise<boolean>;
  move(yard: YardId, from: Day, to: Day): Promise<boolean>;
}

const noChoices: readonly PlanChoice[] = [];

/** The plan as it is shown, sought and changed. */
export function useWorkPlan(): WorkPlanHere {
  const client = useQueryClient();
  const plan = useRead('work.plan', {});
  const progress = useRead('work.progress', {});
  const tasks = useRead('work.tasks', {});
  const { send: sendReplan, busy: planning } = useWrite('work.replan');
  const stop = useWrite('work.stop');
  const keep = useWrite('work.keepPlan');
  const choose = useWrite('work.choose');
  const lift = useWrite('work.lift');
  const [fault, setFault] = useState<Fault | undefined>();
  const [changing, setChanging] = useState(false);

  const running = progress.data?.state === 'running';
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

  /** Several things said one after the other, and the plan worked out once after the last. */
  const change = async (steps: readonly (() => Promise<{ ok: true } | Fault>)[]) => {
    setChanging(true);
    setFault(undefined);
    try {
      for (const step of steps) {
        const answer = await step();
        if (!answer.ok) {
          setFault(answer);
          return false;
        }
      }
      return await again();
    } finally {
      setChanging(false);
    }
  };
  const choices = plan.data?.choices ?? noChoices;
  const found = progress.data?.state === 'none' ? null : (progress.data?.plan ?? null);
  const kept = plan.data?.kept ?? null;
  return {
    plan: found ?? kept?.plan ?? null,
    isKept: kept !== null && (found === null || sameVisits(found, kept.plan)),
    kept, stale: plan.data?.stale ?? null, progress: progress.data, choices,
    tasks: new Map((tasks.data?.tasks ?? []).map((task) => [task.key, task])),
    loading: plan.loading || progress.loading,
    fault: fault ?? plan.fault ?? progress.fault,
    busy: changing || planning || keep.busy || choose.busy || lift.busy,
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
    choose: (choice) => change([() => choose.send(choice)]),
    lift: (key) => change([() => lift.send({ key })]),
    move: (yard, from, to) => {
      const { lift: gone, choose: said } = moveChoices(choices, yard, from, to);
      return change([...gone.map((key) => () => lift.send({ key })), ...said.map((choice) => () => choose.send(choice))]);
    },
  };
}

/** Whether two plans go to the same yards on the same days for the same tasks. */
function sameVisits(a: WorkPlan, b: WorkPlan): boolean {
  const text = (plan: WorkPlan) => JSON.stringify(plan.outings.map(({ day, visits }) => [day, visits.map(({ yard, tasks }) => [yard, tasks.map(({ key, minutes }) => [key, minutes])])]));
  return text(a) === text(b);
}
