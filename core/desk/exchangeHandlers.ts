import { createHash } from 'node:crypto';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Handlers } from './desk.ts';
import { importFile, type FileImport } from './importFile.ts';
import { exportJournal } from './exportJournal.ts';
import { enterImport, importReport } from './importReport.ts';
import type { Book } from './openBook.ts';

type Names = 'import.preview' | 'import.enter' | 'export.journal';

/** The last preview of each open book: entering the same file at the same position need not read it again. */
const previewed = new WeakMap<Book, { hash: string; items: string; found: FileImport }>();

export const exchangeHandlers: Handlers<Names> = {
  'import.preview': async ({ file, items }, context) => {
    const bytes = Buffer.from(file.base64, 'base64');
    const book = context.open();
    const hash = sha256(bytes);
    const found = await importFile(book, bytes, file.name, items);
    previewed.set(book, { hash, items: JSON.stringify(items), found });
    return importReport(file.name, hash, found, await book.today(context.options.now().day));
  },
  'import.enter': async ({ file, sha256: looked, position, items }, context) => {
    const book = context.open();
    const bytes = Buffer.from(file.base64, 'base64');
    const hash = sha256(bytes);
    if (hash !== looked || position !== (await book.store.position())) {
      throw new FaultError(refuse('moved-on', 'The file or the book has changed since the preview, so nothing was entered.', { mend: 'Look at the preview again, then enter it.' }));
    }
    const kept = previewed.get(book);
    previewed.delete(book);
    const found = kept?.hash === hash && kept.items === JSON.stringify(items) && kept.found.position === position ? kept.found : await importFile(book, bytes, file.name, items);
    const { day: now, stamp } = context.options.now();
    const today = await book.today(now);
    return importReport(file.name, hash, found, today, await enterImport(book.store, found, file.name, stamp));
  },
  'export.journal': async (_, context) => {
    const book = context.open();
    const { text, rows } = await exportJournal(book);
    const { name } = await book.settings();
    return { fileName: `${name.replace(/[^\p{L}\p{N} _-]/gu, ' ').trim()} journal.csv`, text, rows };
  },
};

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
