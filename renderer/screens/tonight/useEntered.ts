import { useCallback, useEffect, useRef } from 'react';
import type { GestureId } from '#shared/brands.ts';
import type { GestureRow } from '#shared/contract/journal.ts';
import type { Day } from '#shared/days.ts';
import { drafts } from './drafts.ts';
import { filledIn } from './sheetColumns.ts';
import { draftIsEmpty, draftKey, freshSheet, readDraft, writeDraft, type SheetDraft } from './sheetDraft.ts';

/*
 * Undo takes the entries of a round back; the typing they were made of comes back to its sheet, so that the one wrong
 * cell can be mended and the round entered again. Redo takes that typing off again, or it would be entered twice.
 * The last round entered is remembered under a key of its own, so this also holds after a restart.
 */
interface Entered {
  readonly gesture: GestureId;
  readonly yard: number;
  readonly day: Day;
  readonly body: string;
  /** True once the typing is back on its sheet. */
  readonly back: boolean;
}

const enteredKey = 'round entered last';

interface Options {
  readonly openKey: string | null;
  readonly gestures: readonly GestureRow[] | undefined;
  change(update: (draft: SheetDraft) => SheetDraft): void;
  note(yard: number, day: Day, filled: number): void;
}

/** Remembers the round just entered; answers the function that does so. */
export function useEntered({ openKey, gestures, change, note }: Options): (entered: Omit<Entered, 'back'>) => void {
  const live = useRef<Entered | null | undefined>(undefined);

  const keep = useCallback((entered: Entered) => {
    live.current = entered;
    drafts.change(enteredKey, JSON.stringify(entered));
  }, []);

  useEffect(() => {
    if (openKey === null || gestures === undefined) return;
    let left = false;
    const act = async () => {
      if (live.current === undefined) {
        const answer = await drafts.fetch(enteredKey);
        if (left || live.current !== undefined) return;
        live.current = answer.ok && answer.value.body !== null ? readEntered(answer.value.body) : null;
      }
      const entered = live.current;
      const gesture = gestures.find((row) => row.id === entered?.gesture);
      if (!entered || !gesture || gesture.undone === entered.back) return;
      keep({ ...entered, back: gesture.undone });
      const swap = swapOf(entered.body, gesture.undone);
      const key = draftKey(entered.yard, entered.day);
      if (key === openKey) {
        change(swap);
        return;
      }
      const answer = await drafts.fetch(key);
      const before = answer.ok && answer.value.body !== null ? readDraft(answer.value.body) : freshSheet;
      if (!answer.ok || before === null) return;
      const after = swap(before);
      if (after === before) return;
      drafts.change(key, draftIsEmpty(after) ? null : writeDraft(after));
      note(entered.yard, entered.day, filledIn(after.typed));
    };
    void act();
    return () => {
      left = true;
    };
  }, [openKey, gestures, change, note, keep]);

  return useCallback((entered) => keep({ ...entered, back: false }), [keep]);
}

/** Puts the typing back on an empty sheet, or takes it off one that holds just it; other typing is never touched. */
function swapOf(body: string, undone: boolean): (draft: SheetDraft) => SheetDraft {
  const typing = readDraft(body);
  return (draft) => {
    if (typing === null) return draft;
    if (undone) return draftIsEmpty(draft) ? typing : draft;
    return writeDraft(draft) === writeDraft(typing) ? freshSheet : draft;
  };
}

function readEntered(text: string): Entered | null {
  try {
    const found = JSON.parse(text) as Partial<Entered> | null;
    return typeof found?.gesture === 'number' && typeof found.yard === 'number' && typeof found.body === 'string' ? (found as Entered) : null;
  } catch {
    return null;
  }
}
