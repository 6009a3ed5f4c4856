import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { bestOf } from './bestOf.ts';

/** One entry as searching sees it. */
export interface EntryText {
  readonly id: EntryId;
  readonly day: Day;
  readonly colonies: readonly ColonyId[];
  /** Kind, sentence and note, folded. */
  readonly text: string;
}

/**
 * Entries in which every word stands, the newest first. A word that is not in the text may be in the label of a colony
 * the entry names, so that "G53 laying workers" finds the one note; labels alone find no entries, the colony itself does.
 */
export function findEntries(texts: Iterable<EntryText>, words: readonly string[], limit: number, label: (colony: ColonyId) => string): { rows: EntryText[]; total: number } {
  const fitting = function* () {
    for (const entry of texts) {
      const rest = words.filter((word) => !entry.text.includes(word));
      if (rest.length === words.length) continue;
      if (rest.length === 0 || entry.colonies.some((colony) => rest.every((word) => label(colony).includes(word)))) yield entry;
    }
  };
  return bestOf(fitting(), limit, (a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : b.id - a.id));
}
