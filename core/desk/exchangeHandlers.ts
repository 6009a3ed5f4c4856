import { createHash } from 'node:crypto';
import type { ImportReport } from '#shared/contract/book.ts';
import type { Kind } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Handlers } from './desk.ts';
import { importFile, type FileImport } from './importFile.ts';
import { exportJournal } from './exportJournal.ts';
import type { Book } from './openBook.ts';

type Names = 'import.preview' | 'import.enter' | 'export.journal';

/** The last preview of each open book: entering the same file at the same position need not read it again. */
const previewed = new WeakMap<Book, { hash: string; found: FileImport }>();

export const exchangeHandlers: Handlers<Names> = {
  'import.preview': async ({ file }, context) => {
    const bytes = Buffer.from(file.base64, 'base64');
    const book = context.open();
    const hash = sha256(bytes);
    const found = await importFile(book, bytes, file.name);
    previewed.set(book, { hash, found });
    return report(file.name, hash, found);
  },
  'import.enter': async ({ file, sha256: looked, position }, context) => {
    const book = context.open();
    const bytes = Buffer.from(file.base64, 'base64');
    const hash = sha256(bytes);
    if (hash !== looked || position !== (await book.store.position())) {
      throw new FaultError(refuse('moved-on', 'The file or the book has changed since the preview, so nothing was entered.', { mend: 'Look at the preview again, then enter it.' }));
    }
    const kept = previewed.get(book);
    previewed.delete(book);
    const found = kept?.hash === hash && kept.found.position === position ? kept.found : await importFile(book, bytes, file.name);
    if (found.entries.length === 0) throw new FaultError(refuse('nothing-to-enter', `${file.name} holds nothing that is not in the book already.`));
    const at = context.options.now().stamp;
    await book.store.commit(
      {
        at, kind: 'import', title: `Import of ${file.name}`, undoes: null, yards: found.newYards, entries: found.entries.map((entry) => ({ entry, replaces: null })), marks: [],
        states: found.states, vanished: [],
      },
      position,
    );
    return report(file.name, hash, found);
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

function report(file: string, hash: string, found: FileImport): ImportReport {
  const kinds = new Map<Kind, number>();
  for (const entry of found.entries) kinds.set(entry.kind, (kinds.get(entry.kind) ?? 0) + 1);
  return {
    file, sha256: hash, read: found.read, entered: found.entries.length, repeats: found.repeats.length, repeatLines: found.repeats.slice(0, 1000), toSortOut: [...found.toSortOut],
    kinds: [...kinds].map(([kind, rows]) => ({ kind, rows })).toSorted((a, b) => b.rows - a.rows), newYards: found.newYards.map((yard) => yard.code),
    firstDay: found.entries[0]?.day ?? null, lastDay: found.entries.at(-1)?.day ?? null, living: found.living, position: found.position,
  };
}

