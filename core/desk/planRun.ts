import { Worker } from 'node:worker_threads';
import type { PlanProgress, WorkPlan } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { Store } from '#core/book/store.ts';
import { makeProblem, type MadeProblem, type PlanFacts } from '#core/work/plan/makeProblem.ts';
import { naiveDriving } from '#core/work/plan/naivePlan.ts';
import { planAnswer } from '#core/work/plan/planAnswer.ts';
import type { PlanDraft } from '#core/work/plan/planProblem.ts';
import { searchPlan } from '#core/work/plan/searchPlan.ts';
import type { PlanNews, PlanWork } from './planWorker.ts';

const parts: readonly PlanWork['part'][] = ['search', 'prove'];

/** A plan that is being made by two threads beside the book’s: a good one at once, better ones as they are found, and how near to the best they are. */
export class PlanRun {
  readonly #made: MadeProblem;
  readonly #asked: PlanFacts;
  readonly #naive: number;
  readonly #began = performance.now();
  #ended: number | null = null;
  #draft: PlanDraft | null = null;
  #bound: number | null = null;
  /** The plan that is asked for again and again while nothing better is found. */
  #said: { readonly draft: PlanDraft; readonly plan: WorkPlan } | null = null;
  #state: PlanProgress['state'] = 'running';
  readonly #workers: Worker[] = [];
  /** Those that have ended, and whether any of them before its time. */
  readonly #parts = new Set<PlanWork['part']>();
  #failed = false;
  /** Resolves with the first plan, or when the search has ended without any. */
  readonly first: Promise<void>;
  /** Resolves when the search has ended, for whatever reason. */
  readonly ended: Promise<void>;
  readonly #firstThere: () => void;
  readonly #endThere: () => void;
  readonly today: Day;
  readonly position: number;

  constructor(asked: PlanFacts, position: number, log: (line: string) => void) {
    const made = makeProblem(asked);
    this.#made = made;
    this.#asked = asked;
    this.today = asked.facts.today;
    this.position = position;
    this.#naive = naiveDriving(made.problem);
    ({ promise: this.first, resolve: this.#firstThere } = Promise.withResolvers<void>());
    ({ promise: this.ended, resolve: this.#endThere } = Promise.withResolvers<void>());
    if (made.problem.outings.length === 0) {
      this.#draft = searchPlan(made.problem, 0);
      this.#end('done');
      return;
    }
    try {
      for (const part of parts) this.#start({ problem: made.problem, part }, log);
    } catch (error) {
      this.#fail(log, error);
      this.#end('failed');
    }
  }

  #start(work: PlanWork, log: (line: string) => void): void {
    const worker = new Worker(workerFile(), { workerData: work });
    this.#workers.push(worker);
    worker.unref();
    worker.on('message', (news: PlanNews) => {
      this.#take(news);
      if (news.done) this.#endPart(work.part);
    });
    worker.on('error', (error) => {
      this.#fail(log, error);
      this.#endPart(work.part);
    });
    worker.on('exit', () => {
      if (!this.#parts.has(work.part)) this.#failed = true;
      this.#endPart(work.part);
    });
  }

  #endPart(part: PlanWork['part']): void {
    this.#parts.add(part);
    if (this.#parts.size === parts.length) this.#end(this.#failed ? 'failed' : 'done');
  }

  /** Null until the first is found. */
  get plan(): WorkPlan | null {
    if (this.#draft === null) return null;
    if (this.#said?.draft !== this.#draft) this.#said = { draft: this.#draft, plan: planAnswer(this.#made, this.#draft, this.#asked, { gap: null, naive: this.#naive }) };
    return { ...this.#said.plan, gap: this.gap };
  }

  /** Share of its cost by which a better plan could be better at most. */
  get gap(): number | null {
    return this.#bound === null || this.#draft === null ? null : Math.max(0, (this.#draft.cost - this.#bound) / Math.max(1, Math.abs(this.#draft.cost)));
  }

  progress(): PlanProgress {
    return { state: this.#state, plan: this.plan, seconds: Math.round((this.#ended ?? performance.now()) - this.#began) / 1000, says: says(this.#state, this.gap) };
  }

  stop(): void {
    if (this.#state !== 'running') return;
    this.#end('stopped');
    for (const worker of this.#workers) void worker.terminate();
  }

  /** Without a thread there is still the plan that is found at once. */
  #fail(log: (line: string) => void, error: unknown): void {
    log(`the search for a plan ended: ${error instanceof Error ? error.message : String(error)}`);
    this.#failed = true;
    this.#draft ??= searchPlan(this.#made.problem, 0);
  }

  #end(state: PlanProgress['state']): void {
    if (this.#state !== 'running') return;
    this.#state = state;
    this.#ended = performance.now();
    this.#firstThere();
    this.#endThere();
  }

  #take({ draft, bound }: PlanNews): void {
    // What was still on its way when it was stopped would change a plan that somebody is looking at, or has kept.
    if (this.#state !== 'running') return;
    if (draft !== null && (this.#draft === null || draft.cost < this.#draft.cost - 1e-6)) this.#draft = draft;
    if (bound !== null && (this.#bound === null || bound > this.#bound)) this.#bound = bound;
    if (this.#draft !== null) this.#firstThere();
  }
}

function says(state: PlanProgress['state'], gap: number | null): string {
  const known = gap === null ? 'how much better a plan could be is not known yet' : gap < 0.0005 ? 'no plan is better' : `no plan is better by more than ${(100 * gap).toFixed(1)} %`;
  switch (state) {
    case 'none':
      return 'No plan has been worked out yet.';
    case 'running':
      return `A better plan is being looked for; ${known}.`;
    case 'done':
      return `The search has ended; ${known}.`;
    case 'stopped':
      return `Stopped; ${known}.`;
    case 'failed':
      return `The search for a better plan could not go on; this one is good, but ${known}.`;
  }
}

/** Beside this file as a source, or beside the built file. */
function workerFile(): URL {
  return new URL(import.meta.url.endsWith('.ts') ? './planWorker.ts' : './planner.cjs', import.meta.url);
}

/** The search of each open book; it goes with the book. */
export const planRuns = new WeakMap<Store, PlanRun>();
