import { contract, isOperationName } from '#shared/contract/contract.ts';
import { refuse, type Answer, type Fault } from '#shared/faults.ts';
import type { KeeperProcess, StartKeeper } from './keeperProcess.ts';

export interface KeeperClient {
  /** Never rejects: a dead keeper is answered with a fault. */
  call(name: unknown, input: unknown): Promise<Answer<unknown>>;
  /** Closes the book and ends the keeper; kills it if it has not ended within five seconds. */
  close(): Promise<void>;
}

interface Pending {
  readonly name: unknown;
  readonly answer: (answer: Answer<unknown>) => void;
}

interface Running {
  readonly process: KeeperProcess;
  readonly pending: Map<number, Pending>;
  readonly gone: Promise<void>;
  answered: boolean;
}

const patience = 5000;

/**
 * Keeps one keeper running. When it dies, every pending call is answered with a fault and a new one is started with
 * the book that was open. A keeper that dies before its first answer is not started again until the next call, so that
 * a broken installation does not spin.
 */
export function createKeeperClient(start: StartKeeper, log: (line: string) => void): KeeperClient {
  let running: Running | null = null;
  let nextId = 1;
  let openPath: string | null = null;
  let unfit: string | null = null;
  let closing: Promise<void> | null = null;

  function run(): Running {
    const process = start();
    const pending = new Map<number, Pending>();
    let leave: () => void = () => undefined;
    const now: Running = { process, pending, gone: new Promise((resolve) => (leave = resolve)), answered: false };
    process.onMessage((message) => {
      if ('unfit' in message) {
        unfit = message.unfit;
      } else if ('id' in message) {
        now.answered = true;
        const asked = pending.get(message.id);
        pending.delete(message.id);
        if (asked === undefined) return;
        openPath = openPathAfter(message.answer, openPath);
        asked.answer(message.answer);
      }
    });
    process.onExit(() => {
      if (running === now) running = null;
      leave();
      for (const asked of pending.values()) asked.answer(unfit === null ? stoppedFault(asked.name) : refuse('defect', unfit));
      pending.clear();
      if (closing !== null) return;
      log('the keeper stopped by itself');
      if (now.answered) running = run();
    });
    if (openPath !== null) ask(now, 'book.open', { path: openPath }).then(noteReopening, noteReopening);
    return now;
  }

  function noteReopening(answer: unknown): void {
    if (typeof answer === 'object' && answer !== null && 'ok' in answer && answer.ok === true) return;
    log(`the book could not be opened again: ${JSON.stringify(answer)}`);
  }

  function ask(keeper: Running, name: unknown, input: unknown): Promise<Answer<unknown>> {
    const id = nextId++;
    return new Promise((resolve) => {
      keeper.pending.set(id, { name, answer: resolve });
      keeper.process.send({ id, name, input });
    });
  }

  return {
    call(name, input) {
      if (closing !== null) return Promise.resolve(refuse('refused', 'The program is closing. What was saved is safe.'));
      running ??= run();
      return ask(running, name, input);
    },
    close() {
      closing ??= (async () => {
        const last = running;
        if (last === null) return;
        last.process.send({ close: true });
        const timer = setTimeout(() => last.process.kill(), patience);
        await last.gone;
        clearTimeout(timer);
      })();
      return closing;
    },
  };
}

/** The book that is open after an answer: statuses name it; other answers leave it as it was. */
function openPathAfter(answer: Answer<unknown>, before: string | null): string | null {
  if (!answer.ok || typeof answer.value !== 'object' || answer.value === null) return before;
  if (!('book' in answer.value && 'books' in answer.value)) return before;
  const { book } = answer.value;
  if (book === null) return null;
  return typeof book === 'object' && 'path' in book && typeof book.path === 'string' ? book.path : before;
}

function stoppedFault(name: unknown): Fault {
  if (isOperationName(name) && contract[name].kind === 'read') {
    return refuse('defect', 'The part of the program that holds the book stopped before it answered. Everything that was saved is safe.', {
      mend: 'It has been started again: ask once more.',
    });
  }
  return refuse(
    'defect',
    'The part of the program that holds the book stopped while this was being saved. Everything saved before is safe; this one was saved whole or not at all.',
    { mend: 'It has been started again: look at the last entries, and do this once more if it is not among them.' },
  );
}
