import { contract, isOperationName, type OperationName, type OutputOf, type ParsedInputOf } from '#shared/contract/contract.ts';
import type { Day } from '#shared/days.ts';
import { FaultError, refuse, type Answer } from '#shared/faults.ts';
import { answerHandlers } from './answerHandlers.ts';
import { actHandlers } from './actHandlers.ts';
import { breederHandlers } from './breederHandlers.ts';
import { bookHandlers } from './bookHandlers.ts';
import { calendarHandlers } from './calendarHandlers.ts';
import { colonyHandlers } from './colonyHandlers.ts';
import { decisionHandlers } from './decisionHandlers.ts';
import { deadOutHandlers } from './deadOutHandlers.ts';
import { exchangeHandlers } from './exchangeHandlers.ts';
import { findHandlers } from './findHandlers.ts';
import { journalHandlers } from './journalHandlers.ts';
import { liveCalendar } from './liveCalendar.ts';
import { planRuns } from './planRun.ts';
import { lineHandlers } from './lineHandlers.ts';
import { lossFactorHandlers } from './lossFactorHandlers.ts';
import { lossHandlers } from './lossHandlers.ts';
import { lossSectionHandlers } from './lossSectionHandlers.ts';
import { lotHandlers } from './lotHandlers.ts';
import { lotTraceHandlers } from './lotTraceHandlers.ts';
import { mendingHandlers } from './mendingHandlers.ts';
import { miteHandlers } from './miteHandlers.ts';
import { orderHandlers } from './orderHandlers.ts';
import { placedHandlers } from './placedHandlers.ts';
import { returnsHandlers } from './returnsHandlers.ts';
import { roundHandlers } from './roundHandlers.ts';
import { ruleHandlers } from './ruleHandlers.ts';
import { queenHandlers } from './queenHandlers.ts';
import { dueHandlers } from './dueHandlers.ts';
import { nearItemHandlers } from './nearItemHandlers.ts';
import { needHandlers } from './needHandlers.ts';
import { paperHandlers } from './paperHandlers.ts';
import { sheetHandlers } from './sheetHandlers.ts';
import { sortOutHandlers } from './sortOutHandlers.ts';
import { spaceHandlers } from './spaceHandlers.ts';
import { stockHandlers } from './stockHandlers.ts';
import { storesHandlers } from './storesHandlers.ts';
import { stripHandlers } from './stripHandlers.ts';
import { tallyHandlers } from './tallyHandlers.ts';
import { restedSoFar, SetAside, Turns, type Haste } from './turns.ts';
import { workDayHandlers } from './workDayHandlers.ts';
import { tripHandlers } from './tripHandlers.ts';
import { workHandlers } from './workHandlers.ts';
import { planChangeHandlers } from './planChangeHandlers.ts';
import { workPlanHandlers } from './workPlanHandlers.ts';
import { workedHandlers } from './workedHandlers.ts';
import { yardHandlers } from './yardHandlers.ts';
import { yieldHandlers } from './yieldHandlers.ts';
import { lateComer, lookingBack, takeAsOf } from './lookingBack.ts';
import type { Book } from './openBook.ts';

export interface DeskOptions {
  /** Where books are kept unless a path says otherwise. */
  readonly folder: string;
  /** "Outyard 0.1.0" */
  readonly program: string;
  readonly now: () => { day: Day; stamp: string };
  /** The same in UTC and the machine's time zone, for calendars; without it the local time is taken for UTC. */
  readonly moment?: () => { instant: string; zone: string };
  readonly log: (line: string) => void;
}

export interface Desk {
  /** Parses name and input with the contract; never throws. */
  call(name: unknown, input: unknown): Promise<Answer<unknown>>;
  close(): Promise<void>;
}

/** What every handler works with: the book that is open, if any, and the house it stands in. */
export interface DeskContext {
  readonly options: DeskOptions;
  readonly book: () => Book | null;
  /** The open book, or a fault that says there is none. */
  readonly open: () => Book;
  readonly setBook: (book: Book | null) => Promise<void>;
}

export type Handler<Name extends OperationName> = (input: ParsedInputOf<Name>, context: DeskContext) => Promise<OutputOf<Name>>;
export type Handlers<Name extends OperationName = OperationName> = { readonly [Key in Name]: Handler<Key> };

/** Every operation of the contract bound to the rooms; the compiler sees to it that none is missing or extra. */
export const handlers: Handlers = {
  ...bookHandlers, ...exchangeHandlers, ...journalHandlers, ...colonyHandlers, ...lossHandlers, ...orderHandlers, ...sheetHandlers, ...stripHandlers, ...yardHandlers, ...mendingHandlers, ...findHandlers, ...lineHandlers, ...roundHandlers, ...queenHandlers, ...dueHandlers, ...lossSectionHandlers, ...decisionHandlers, ...lossFactorHandlers, ...deadOutHandlers, ...answerHandlers, ...paperHandlers, ...actHandlers, ...sortOutHandlers, ...stockHandlers, ...nearItemHandlers, ...ruleHandlers, ...placedHandlers, ...miteHandlers, ...returnsHandlers, ...needHandlers, ...storesHandlers, ...spaceHandlers, ...breederHandlers, ...workHandlers, ...workDayHandlers, ...workPlanHandlers, ...planChangeHandlers, ...calendarHandlers, ...workedHandlers, ...lotHandlers, ...lotTraceHandlers, ...yieldHandlers, ...tallyHandlers,
  ...tripHandlers,
};

const slow = 40;

/** Reads of a whole operation's record, of which a page asks many at once. */
const patient: ReadonlySet<OperationName> = new Set<OperationName>([
  'losses.answers', 'losses.ended', 'losses.factors', 'losses.ledger', 'losses.pairs', 'losses.paper', 'losses.rates', 'losses.review', 'losses.survival', 'order.compare', 'order.point', 'yields.table',
  'needs.count', 'needs.tally',
]);

export function hasteOf(name: unknown): Haste {
  if (!isOperationName(name)) return 'read';
  // It makes the tables anew, under whoever rests in them.
  if (name === 'book.check') return 'write';
  if (name.startsWith('draft.') && contract[name].kind === 'write') return 'draft';
  // It searches, and enters nothing.
  if (name === 'work.replan') return 'firm';
  if (contract[name].kind === 'write') return 'write';
  return patient.has(name) ? 'patient' : 'read';
}

export function createDesk(options: DeskOptions): Desk {
  let book: Book | null = null;
  const turns = new Turns();
  const live = liveCalendar(options);
  const context: DeskContext = {
    options,
    book: () => book,
    open: () => {
      if (book === null) throw new FaultError(refuse('no-book', 'No book is open.', { mend: 'Open a book, or start one.' }));
      return book;
    },
    setBook: async (next) => {
      const previous = book;
      if (previous !== null) await live.settle(previous);
      book = next;
      if (next !== null) warm(next);
      if (previous !== null) planRuns.get(previous.store)?.stop();
      await previous?.store.close();
    },
  };

  /** What searching goes through takes seconds to read in a large book; by the time somebody searches it is there. */
  const warm = (opened: Book) => {
    const ready = async () => {
      if (book !== opened) return;
      await opened.store.gestures();
      await handlers['find.all']({ text: '', limit: 1 }, context);
    };
    turns.take('idle', ready).catch((error: unknown) => {
      options.log(`the book was not made ready for searching: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    });
  };

  const call = async (name: unknown, input: unknown): Promise<Answer<unknown>> => {
    if (!isOperationName(name)) return refuse('unknown', `The desk knows no operation called “${String(name).slice(0, 80)}”.`);
    const asked = takeAsOf(name, input);
    if (!asked.ok) return asked;
    const { asOf, own } = asked.value;
    const parsed = contract[name].input.safeParse(own);
    if (!parsed.success) {
      const [issue] = parsed.error.issues;
      const field = issue?.path.join('.') ?? '';
      return refuse('bad-input', `What was asked cannot be understood${field === '' ? '' : ` (${field})`}: ${issue?.message ?? 'it has the wrong form'}.`, field === '' ? {} : { field });
    }
    const started = performance.now();
    try {
      const handler = handlers[name] as unknown as (input: unknown, context: DeskContext) => Promise<unknown>;
      const value = await handler(parsed.data, asOf === null ? context : await lookingBack(context, asOf));
      if (hasteOf(name) === 'write' && book !== null && (await live.follows(book))) live.changed(() => turns.take('write', async () => (book === null ? undefined : live.settle(book))));
      return { ok: true, value };
    } catch (error) {
      if (error instanceof SetAside) throw error;
      if (error instanceof FaultError) return asOf === null ? error.fault : lateComer(error.fault, asOf);
      const id = crypto.randomUUID().slice(0, 8);
      options.log(`defect ${id} in ${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      return refuse('defect', `Something went wrong inside the program (${id}). What was saved before is safe.`, { mend: 'Try again; if it comes back, the log file has the number.' });
    } finally {
      const took = performance.now() - started - restedSoFar();
      if (took > slow) options.log(`slow: ${name} took ${Math.round(took)} ms`);
    }
  };

  return { call: (name, input) => turns.take(hasteOf(name), () => call(name, input)), close: () => turns.take('write', () => context.setBook(null)) };
}
