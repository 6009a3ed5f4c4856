import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { drafts } from './drafts.ts';
import type { KeepState } from './draftKeeper.ts';
import { draftIsEmpty, freshSheet, readDraft, writeDraft, type SheetDraft } from './sheetDraft.ts';

interface Held {
  readonly key: string;
  readonly draft: SheetDraft;
  /** A kept text of this key that this program cannot read: it is left alone, nothing is kept over it. */
  readonly unread: boolean;
}

export interface DraftHere {
  /** Null while what was kept is being fetched. */
  readonly draft: SheetDraft | null;
  readonly unread: boolean;
  readonly kept: KeepState;
  change(update: (draft: SheetDraft) => SheetDraft): void;
  /** The newest draft, for handlers that must not wait for the next drawing. */
  now(): SheetDraft | null;
}

/** The typing of one sheet: brought back when the sheet opens, kept while it changes. */
export function useDraft(key: string | null): DraftHere {
  const [held, setHeld] = useState<Held | null>(null);
  const live = useRef<Held | null>(null);
  const kept = useSyncExternalStore(drafts.subscribe, drafts.state);

  const hold = useCallback((next: Held) => {
    live.current = next;
    setHeld(next);
  }, []);

  useEffect(() => {
    if (key === null) return;
    let left = false;
    void drafts.fetch(key).then((answer) => {
      if (left) return;
      const body = answer.ok ? answer.value.body : null;
      const draft = body === null ? freshSheet : readDraft(body);
      // A draft that could not be fetched may still be there: typing over it would lose it.
      hold({ key, draft: draft ?? freshSheet, unread: draft === null || !answer.ok });
    });
    return () => {
      left = true;
      void drafts.flush();
    };
  }, [key, hold]);

  useEffect(() => {
    const flush = () => void drafts.flush();
    document.addEventListener('visibilitychange', flush);
    window.addEventListener('pagehide', flush);
    window.addEventListener('blur', flush);
    return () => {
      document.removeEventListener('visibilitychange', flush);
      window.removeEventListener('pagehide', flush);
      window.removeEventListener('blur', flush);
    };
  }, []);

  const now = useCallback(() => (live.current !== null && live.current.key === key ? live.current.draft : null), [key]);

  const change = useCallback(
    (update: (draft: SheetDraft) => SheetDraft) => {
      const before = live.current;
      if (before === null || before.key !== key) return;
      const draft = update(before.draft);
      if (draft === before.draft) return;
      hold({ ...before, draft });
      if (!before.unread) drafts.change(before.key, draftIsEmpty(draft) ? null : writeDraft(draft));
    },
    [key, hold],
  );

  const here = held !== null && held.key === key ? held : null;
  return { draft: here?.draft ?? null, unread: here?.unread ?? false, kept, change, now };
}
