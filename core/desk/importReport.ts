import type { GestureId } from '#shared/brands.ts';
import type { ImportReport } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Store } from '#core/book/store.ts';
import type { FileImport } from './importFile.ts';
import { keptRows, papersOfImport } from './keptRows.ts';

/** An import as the screens see it, before or after it is entered. */
export function importReport(file: string, hash: string, found: FileImport, today: Day, gesture: GestureId | null = null): ImportReport {
  const kinds = new Map<Kind, number>();
  for (const entry of found.entries) kinds.set(entry.kind, (kinds.get(entry.kind) ?? 0) + 1);
  const ahead = found.lines.filter((_, at) => (found.entries[at]?.day ?? today) > today).toSorted((a, b) => a - b);
  return {
    file, sha256: hash, read: found.read, entered: found.entries.length, repeats: found.repeats.length, repeatLines: found.repeats.slice(0, 1000), toSortOut: [...found.toSortOut],
    toKeep: found.toKeep, gesture,
    kinds: [...kinds].map(([kind, rows]) => ({ kind, rows })).toSorted((a, b) => b.rows - a.rows), newYards: found.newYards.map((yard) => yard.code),
    firstDay: found.entries[0]?.day ?? null, lastDay: found.entries.at(-1)?.day ?? null, living: found.living, ahead: { rows: ahead.length, lines: ahead.slice(0, 1000) }, strange: { rows: new Set(found.strange.map(({ line }) => line)).size, figures: found.strange.slice(0, 1000) }, newItems: [...found.newItems], position: found.position,
  };
}

/** Enters what a preview found as one act, and keeps the rows to sort out with it. Throws a FaultError when there is nothing new. */
export async function enterImport(store: Store, found: FileImport, called: string, at: string): Promise<GestureId> {
  if (found.entries.length === 0 && found.toKeep === 0) {
    const waits = found.toSortOut.length > 0 ? ' What is to be sorted out waits in the book already.' : '';
    throw new FaultError(refuse('nothing-to-enter', `${called} holds nothing that is not in the book already.${waits}`));
  }
  const { gesture } = await store.commit(
    {
      at, kind: 'import', title: `Import of ${called}`, undoes: null, yards: found.newYards, entries: found.entries.map((entry) => ({ entry, replaces: null })), marks: [],
      states: found.states, vanished: [], papers: papersOfImport(await keptRows(store), found.unsorted, called),
    },
    found.position,
  );
  return gesture;
}
