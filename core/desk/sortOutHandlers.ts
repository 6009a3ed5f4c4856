import type { SortOutCounts, WaitingRow } from '#shared/contract/sortOut.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Handlers } from './desk.ts';
import { countWords, enterPlanned, enterRows } from './enterRows.ts';
import { importRead } from './importFile.ts';
import { judgeCells, judgeWaiting, type Judged } from './judgeRows.ts';
import { keptRows, paperOf, plainCells, type KeptRow } from './keptRows.ts';
import type { Book } from './openBook.ts';

type Names =
  | 'sortOut.counts' | 'sortOut.list' | 'sortOut.row' | 'sortOut.judge' | 'sortOut.enter' | 'sortOut.enterReady' | 'sortOut.setAside' | 'sortOut.bringBack';

interface Desktop extends Judged {
  readonly position: number;
  readonly rows: readonly KeptRow[];
  readonly counts: SortOutCounts;
}

/** What waits in each open book, looked at once for each change of the book. */
const looked = new WeakMap<Book, Desktop>();

export const sortOutHandlers: Handlers<Names> = {
  'sortOut.counts': async (_, context) => (await desktop(context.open())).counts,
  'sortOut.list': async ({ which, from, limit }, context) => {
    const found = await desktop(context.open());
    const rows = found.rows.filter((row) => (which === 'aside' ? row.state === 'set aside' : waits(row, found)));
    return { counts: found.counts, total: rows.length, rows: rows.slice(from, from + limit).map((row) => view(row, found)) };
  },
  'sortOut.row': async ({ key }, context) => {
    const found = await desktop(context.open());
    const row = keptRow(found, key);
    return { row: view(row, found), cells: plainCells(row), typed: row.typed };
  },
  'sortOut.judge': async ({ key, cells }, context) => {
    const book = context.open();
    openRow(await desktop(book), key);
    return judgeCells(book.store, cells, (await book.settings()).dateOrder);
  },
  'sortOut.enter': async ({ key, cells }, context) => {
    const book = context.open();
    const row = openRow(await desktop(book), key);
    const title = `Sorted out: line ${row.line} of ${row.file}`;
    return enterRows(book.store, [cells], title, (await book.settings()).dateOrder, context.options.now().stamp, ([entry]) =>
      entry === undefined ? [] : [paperOf(key, { ...row, aside: null, entries: [...row.entries, entry.id] })],
    );
  },
  'sortOut.enterReady': async (_, context) => {
    const book = context.open();
    const found = await desktop(book);
    const ready = found.rows.filter((row) => row.state === 'waiting' && found.ready.has(row.key));
    if (ready.length === 0) throw new FaultError(refuse('nothing-to-enter', 'No row that waits can be entered as it was typed.', { mend: 'Open a row and mend it.' }));
    const plan = await importRead(book.store, ready.map((row, line) => ({ line, cells: plainCells(row), stray: null })), 'month-first');
    const papers = plan.entries.flatMap((entry, at) => {
      const row = ready[plan.lines[at] ?? -1];
      return row === undefined ? [] : [paperOf(row.key, { ...row, entries: [...row.entries, entry.id] })];
    });
    return enterPlanned(book.store, { entries: plan.entries, states: plan.states, yards: plan.newYards, expected: plan.position }, `Sorted out: ${countWords(papers.length, 'row', 'rows')} as typed`, context.options.now().stamp, () => papers);
  },
  'sortOut.setAside': async ({ key, reason }, context) => {
    const book = context.open();
    const row = openRow(await desktop(book), key);
    await book.store.keepPapers([paperOf(key, { ...row, aside: { reason, at: context.options.now().stamp } })]);
    return (await desktop(book)).counts;
  },
  'sortOut.bringBack': async ({ key }, context) => {
    const book = context.open();
    const row = keptRow(await desktop(book), key);
    if (row.state !== 'set aside') throw new FaultError(refuse('refused', 'That row is not set aside any more.'));
    await book.store.keepPapers([paperOf(key, { ...row, aside: null })]);
    return (await desktop(book)).counts;
  },
};

async function desktop(book: Book): Promise<Desktop> {
  const position = await book.store.position();
  const last = looked.get(book);
  if (last?.position === position) return last;
  const rows = await keptRows(book.store);
  const judged = await judgeWaiting(book.store, rows.filter(({ state }) => state === 'waiting'));
  const count = (state: KeptRow['state']) => rows.filter((row) => row.state === state).length;
  const counts = { waiting: count('waiting') - judged.inBook.size, ready: judged.ready.size, aside: count('set aside'), entered: count('entered') + judged.inBook.size };
  const found = { position, rows, ...judged, counts };
  looked.set(book, found);
  return found;
}

function waits(row: KeptRow, { inBook }: Judged): boolean {
  return row.state === 'waiting' && !inBook.has(row.key);
}

function keptRow({ rows }: Desktop, key: string): KeptRow {
  const row = rows.find((one) => one.key === key);
  if (row === undefined || row.state === 'taken back') throw new FaultError(refuse('unknown', 'That row is not kept in this book, or its import was taken back.'));
  return row;
}

/** A row that can still be entered or set aside. */
function openRow(found: Desktop, key: string): KeptRow {
  const row = keptRow(found, key);
  if (row.state === 'entered' || found.inBook.has(key)) throw new FaultError(refuse('refused', `Line ${row.line} of ${row.file} is in the book already.`, { mend: 'Nothing was entered twice.' }));
  return row;
}

const shown = 200;

function view(row: KeptRow, { ready, against }: Judged): WaitingRow {
  return {
    key: row.key, file: row.file, line: row.line, column: row.column, value: row.value.slice(0, shown), sentence: against.get(row.key) ?? row.sentence,
    ready: row.state === 'waiting' ? (ready.get(row.key) ?? null) : null, aside: row.state === 'set aside' ? row.aside : null,
  };
}
