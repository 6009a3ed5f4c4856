import { z } from 'zod';
import type { EntryId } from '#shared/brands.ts';
import { costLine, type CostLine } from '#shared/contract/budgetLines.ts';
import type { Paper, Store, StoredEntry } from '#core/book/store.ts';

/** The line of the budget that was chosen for a purchase, by its entry. */
const linePaper = 'budget line';
/** Null: the choice was taken back, also one made for the entry that it was put in the place of. */
const lineBody = z.strictObject({ line: costLine.nullable() });

export function budgetLinePaper(entry: EntryId, line: CostLine | null): Paper {
  return { kind: linePaper, key: String(entry), body: JSON.stringify({ line } satisfies z.infer<typeof lineBody>) };
}

/**
 * The lines that were chosen, by entry. A purchase put in the place of another keeps the choice, as long as it is of the
 * same item. `stored`: all purchases, struck ones too.
 */
export async function chosenLines(store: Store, stored: readonly StoredEntry[]): Promise<ReadonlyMap<EntryId, CostLine>> {
  const kept = new Map([...(await store.papers(linePaper))].map(([key, body]) => [Number(key) as EntryId, lineBody.parse(JSON.parse(body)).line]));
  if (kept.size === 0) return new Map();
  const byId = new Map(stored.map((one) => [one.entry.id, one]));
  const found = new Map<EntryId, CostLine>();
  for (const { entry } of stored) {
    const line = lineFor(entry.id, kept, byId);
    if (line !== null) found.set(entry.id, line);
  }
  return found;
}

function lineFor(entry: EntryId, kept: ReadonlyMap<EntryId, CostLine | null>, byId: ReadonlyMap<EntryId, StoredEntry>): CostLine | null {
  const item = itemOf(byId.get(entry));
  for (let at: EntryId | null = entry; at !== null && itemOf(byId.get(at)) === item; at = byId.get(at)?.replaces ?? null) {
    const line = kept.get(at);
    if (line !== undefined) return line;
  }
  return null;
}

function itemOf(stored: StoredEntry | undefined): string | null {
  return stored?.entry.kind === 'purchase' ? stored.entry.body.item : null;
}
