import type { Handlers } from './desk.ts';
import { judgeCells } from './judgeRows.ts';
import { plainCells } from './keptRows.ts';
import { desktop, enterAllReady, enterWaiting, keepAside, keptRow, openRow, view, waits } from './sortOut.ts';

type Names =
  | 'sortOut.counts' | 'sortOut.list' | 'sortOut.row' | 'sortOut.judge' | 'sortOut.enter' | 'sortOut.enterReady' | 'sortOut.setAside' | 'sortOut.bringBack';

export const sortOutHandlers: Handlers<Names> = {
  'sortOut.counts': async (_, context) => (await desktop(context.open().store)).counts,
  'sortOut.list': async ({ which, from, limit }, context) => {
    const found = await desktop(context.open().store);
    const rows = found.rows.filter((row) => (which === 'aside' ? row.state === 'set aside' : waits(row, found)));
    return { counts: found.counts, total: rows.length, rows: rows.slice(from, from + limit).map((row) => view(row, found)) };
  },
  'sortOut.row': async ({ key }, context) => {
    const found = await desktop(context.open().store);
    const row = keptRow(found, key);
    return { row: view(row, found), cells: plainCells(row), typed: row.typed };
  },
  'sortOut.judge': async ({ key, cells }, context) => {
    const book = context.open();
    openRow(await desktop(book.store), key);
    return judgeCells(book.store, cells, (await book.settings()).dateOrder);
  },
  'sortOut.enter': async ({ key, cells }, context) => {
    const book = context.open();
    return enterWaiting(book.store, key, cells, (await book.settings()).dateOrder, context.options.now().stamp);
  },
  'sortOut.enterReady': (_, context) => enterAllReady(context.open().store, context.options.now().stamp),
  'sortOut.setAside': ({ key, reason }, context) => keepAside(context.open().store, key, { reason, at: context.options.now().stamp }),
  'sortOut.bringBack': ({ key }, context) => keepAside(context.open().store, key, null),
};
