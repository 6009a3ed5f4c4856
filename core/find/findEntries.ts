import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Slices } from '#shared/slices.ts';
import { bestOf } from './bestOf.ts';

/** One entry as searching sees it. */
export interface EntryText {
  readonly id: EntryId;
  readonly day: Day;
  readonly colonies: readonly ColonyId[];
  /** Kind, sentence and note, folded. */
  readonly text: string;
}

interface Found {
  readonly rows: EntryText[];
  readonly total: number;
}

const entriesAtOnce = 20_000;

/**
 * Entries in which every word stands, the newest first. A word that is not in the text may be in the label of a colony
 * the entry names, so that "G53 laying workers" finds the one note; labels alone find no entries, the colony itself does. Some entries at a time.
 */
export function* findEntries(texts: readonly EntryText[], words: readonly string[], limit: number, label: (colony: ColonyId) => string): Slices<Found> {
  let best: Found = { rows: [], total: 0 };
  const fitting = function* (from: number, until: number) {
    yield* best.rows;
    for (let at = from; at < until; at += 1) {
      const entry = texts[at] as EntryText;
      const rest = words.filter((word) => !entry.text.includes(word));
      if (rest.length === words.length) continue;
      if (rest.length === 0 || entry.colonies.some((colony) => rest.every((word) => label(colony).includes(word)))) yield entry;
    }
  };
  for (let from = 0; from < texts.length; from += entriesAtOnce) {
    const found = bestOf(fitting(from, Math.min(from + entriesAtOnce, texts.length)), limit, (a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : b.id - a.id));
    best = { rows: found.rows, total: best.total + found.total - best.rows.length };
    yield;
  }
  return best;
}
