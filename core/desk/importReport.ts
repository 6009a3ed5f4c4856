import type { ImportReport } from '#shared/contract/book.ts';
import type { Kind } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { FileImport } from './importFile.ts';
import type { Book } from './openBook.ts';

/** An import as the screens see it, before or after it is entered. */
export function importReport(file: string, hash: string, found: FileImport): ImportReport {
  const kinds = new Map<Kind, number>();
  for (const entry of found.entries) kinds.set(entry.kind, (kinds.get(entry.kind) ?? 0) + 1);
  return {
    file, sha256: hash, read: found.read, entered: found.entries.length, repeats: found.repeats.length, repeatLines: found.repeats.slice(0, 1000), toSortOut: [...found.toSortOut],
    kinds: [...kinds].map(([kind, rows]) => ({ kind, rows })).toSorted((a, b) => b.rows - a.rows), newYards: found.newYards.map((yard) => yard.code),
    firstDay: found.entries[0]?.day ?? null, lastDay: found.entries.at(-1)?.day ?? null, living: found.living, position: found.position,
  };
}

/** Enters what a preview found as one gesture. Throws a FaultError when there is nothing new. */
export async function enterImport(book: Book, found: FileImport, called: string, at: string): Promise<void> {
  if (found.entries.length === 0) throw new FaultError(refuse('nothing-to-enter', `${called} holds nothing that is not in the book already.`));
  await book.store.commit(
    {
      at, kind: 'import', title: `Import of ${called}`, undoes: null, yards: found.newYards, entries: found.entries.map((entry) => ({ entry, replaces: null })), marks: [],
      states: found.states, vanished: [],
    },
    found.position,
  );
}
