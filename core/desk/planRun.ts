import type { PlanProgress, WorkPlan } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { Store } from '#core/book/store.ts';
import { buildProblem, type BuiltProblem, type PlanFacts } from '#core/work/plan/buildProblem.ts';
import type { PlanDraft } from '#core/work/plan/planProblem.ts';
import { readPlan } from '#core/work/plan/readPlan.ts';
import { searchSteps } from '#core/work/plan/searchPlan.ts';

/** How often the plan is emptied in part and filled again. */
const rounds = 60;

/** A search under way, one step at a time with whatever else is asked for in between. */
export class PlanRun {
  readonly #read: (draft: PlanDraft) => WorkPlan;
  readonly #steps: Generator<PlanDraft>;
  readonly #begun = performance.now();
  #ended: number | null = null;
  #state: PlanProgress['state'] = 'running';
  #plan: WorkPlan;
  #cost: number;
  readonly #first: number;
  readonly position: number;
  readonly today: Day;

  constructor(wanted: PlanFacts, kept: WorkPlan | null, position: number) {
    const built: BuiltProblem = buildProblem(wanted);
    const { today } = wanted.facts;
    this.today = today;
    this.position = position;
    this.#read = (draft) => readPlan(built, draft, { today, hours: wanted.hours, choices: wanted.choices, kept, gap: null });
    this.#steps = searchSteps(built.problem, rounds);
    const first = this.#steps.next().value as PlanDraft;
    this.#plan = this.#read(first);
    this.#first = first.cost;
    this.#cost = first.cost;
    setImmediate(() => this.#step());
  }

  get plan(): WorkPlan {
    return this.#plan;
  }

  progress(): PlanProgress {
    const better = this.#cost < this.#first - 1e-6 ? 'A better one than the first was found.' : 'Nothing better than the first was found.';
    const says = { running: 'A better plan is being sought.', stopped: `Stopped. ${better}`, done: `Sought to the end. ${better} How much better a plan could be is not proven.`, failed: 'The search broke off; the plan found so far stands.', none: '' };
    return { state: this.#state, plan: this.#plan, seconds: Math.round(((this.#ended ?? performance.now()) - this.#begun) / 100) / 10, says: says[this.#state] };
  }

  stop(): void {
    if (this.#state === 'running') this.#end('stopped');
  }

  #end(state: PlanProgress['state']): void {
    this.#state = state;
    this.#ended = performance.now();
  }

  #step(): void {
    if (this.#state !== 'running') return;
    const { value, done } = this.#steps.next();
    if (done === true) {
      this.#end('done');
      return;
    }
    if (value.cost < this.#cost - 1e-6) {
      this.#cost = value.cost;
      this.#plan = this.#read(value);
    }
    setImmediate(() => this.#step());
  }
}

/** The search of each open book; it goes with the book. */
export const planRuns = new WeakMap<Store, PlanRun>();
