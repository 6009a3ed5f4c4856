import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useState } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { PlanChoice, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
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
/** Takes back what was said of the plan and plans anew; false where that was refused. */
export type TakingBack = () => Promise<boolean>;
/** One thing said of the plan; where it goes through, the step that says the opposite. */
type Step = () => Promise<{ readonly ok: true; readonly back: Step } | Fault>;

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
  const choose = useWrite('work.choose');
  const lift = useWrite('work.lift');
  const [fault, setFault] = useState<Fault | undefined>();
  const [changing, setChanging] = useState(false);

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

  const say = (choice: Said): Step => async () => {
    const answer = await choose.send(choice);
    return answer.ok ? { ok: true, back: unsay(answer.value.choice) } : answer;
  };
  const unsay = (choice: PlanChoice): Step => async () => {
    const answer = await lift.send({ key: choice.key });
    return answer.ok ? { ok: true, back: say({ kind: choice.kind, day: choice.day, yard: choice.yard, task: choice.task }) } : answer;
  };
  /** Several things said one after the other, and the plan worked out once after the last; answers with what takes them back. */
  const change = async (steps: readonly Step[]): Promise<readonly Step[] | null> => {
    setChanging(true);
    setFault(undefined);
    const back: Step[] = [];
    try {
      for (const step of steps) {
        const answer = await step();
        if (!answer.ok) {
          setFault(answer);
          // Half of it is nothing that anybody asked for.
          for (const undo of back) await undo();
          return null;
        }
        back.unshift(answer.back);
      }
      return (await again()) ? back : null;
    } finally {
      setChanging(false);
    }
  };
  const changed = async (steps: readonly Step[]): Promise<TakingBack | null> => {
    const back = await change(steps);
    return back === null ? null : async () => (await change(back)) !== null;
  };
  const choices = plan.data?.choices ?? noChoices;
  // What is being worked out is a plan from today on; of another day only what was kept by then can be shown.
  const found = looking !== null || progress.data?.state === 'none' ? null : (progress.data?.plan ?? null);
  const last = plan.data?.kept ?? null;
  const kept = looking !== null && last !== null && last.made.slice(0, 10) > looking ? null : last;
  return {
    plan: found ?? kept?.plan ?? null,
    isKept: kept !== null && (found === null || sameVisits(found, kept.plan)),
    kept, stale: plan.data?.stale ?? null, progress: progress.data, running, looking, choices,
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
    choose: (choice) => changed([say(choice)]),
    lift: (choice) => changed([unsay(choice)]),
    move: async (yard, from, to) => {
      const { lift: gone, choose: said } = moveChoices(choices, yard, from, to);
      const back = await change([...choices.filter(({ key }) => gone.includes(key)).map(unsay), ...said.map(say)]);
      if (back === null) return null;
      if (choices.some((one) => one.yard === yard && one.day === from && one.task === null && one.kind === 'pin')) return async () => (await change(back)) !== null;
      // A plan changes as little as it can, so a visit that is only free again stays where it was carried: it is held on its old day once, and then let go.
      return async () => {
        const held = await change([...back, say({ kind: 'pin', day: from, yard, task: null })]);
        return held !== null && (await change(held.slice(0, 1))) !== null;
      };
    },
  };
}

/** Whether two plans go to the same yards on the same days for the same tasks. */
function sameVisits(a: WorkPlan, b: WorkPlan): boolean {
  const text = (plan: WorkPlan) => JSON.stringify(plan.outings.map(({ day, visits }) => [day, visits.map(({ yard, tasks }) => [yard, tasks.map(({ key, minutes }) => [key, minutes])])]));
  return text(a) === text(b);
}
