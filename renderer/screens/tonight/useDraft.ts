import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import type { Answer } from '#shared/faults.ts';
import { drafts } from './drafts.ts';
import type { KeepState, KeptDraft } from './draftKeeper.ts';
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
  /** Another window has kept other typing for this sheet. */
  readonly apart: boolean;
  /** Of two windows' typing, theirs or this one's stays. */
  takeTheirs(): void;
  keepMine(): void;
  /** False once another window's typing is what is kept. */
  agrees(): Promise<boolean>;
  change(update: (draft: SheetDraft) => SheetDraft): void;
  /** The newest draft, for handlers that must not wait for the next drawing. */
  now(): SheetDraft | null;
}

/** The typing of one sheet: brought back when the sheet opens, kept while it changes. */
export function useDraft(key: string | null): DraftHere {
  const [held, setHeld] = useState<Held | null>(null);
  const live = useRef<Held | null>(null);
  const kept = useSyncExternalStore(drafts.subscribe, drafts.state);
  const apart = useSyncExternalStore(drafts.subscribe, drafts.apart);

  const hold = useCallback((next: Held) => {
    live.current = next;
    setHeld(next);
  }, []);

  useEffect(() => {
    if (key === null) return;
    let left = false;
    void drafts.fetch(key).then((answer) => {
      if (!left) hold(heldFrom(key, answer));
    });
    return () => {
      left = true;
      void drafts.flush();
    };
  }, [key, hold]);

  // Coming back to a window left open: what another one has kept meanwhile is shown, if nothing was typed here since.
  useEffect(() => {
    if (key === null) return;
    const look = async () => {
      const before = live.current;
      const newer = await drafts.newer(key);
      if (newer !== null && live.current === before) hold(heldFrom(key, { ok: true, value: newer }));
    };
    const onFocus = () => void look();
    window.addEventListener('focus', onFocus);
    return () => window.removeEventListener('focus', onFocus);
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

  const takeTheirs = useCallback(() => {
    if (key !== null) void drafts.takeTheirs(key).then((answer) => hold(heldFrom(key, answer)));
  }, [key, hold]);
  const keepMine = useCallback(() => {
    const draft = now();
    if (key !== null && draft !== null) void drafts.keepMine(key, draftIsEmpty(draft) ? null : writeDraft(draft));
  }, [key, now]);
  const agrees = useCallback(() => (key === null ? Promise.resolve(true) : drafts.agrees(key)), [key]);

  const here = held !== null && held.key === key ? held : null;
  return { draft: here?.draft ?? null, unread: here?.unread ?? false, kept, apart: key !== null && apart.has(key), takeTheirs, keepMine, agrees, change, now };
}

function heldFrom(key: string, answer: Answer<KeptDraft>): Held {
  const body = answer.ok ? answer.value.body : null;
  const draft = body === null ? freshSheet : readDraft(body);
  // A draft that could not be fetched may still be there: typing over it would lose it.
  return { key, draft: draft ?? freshSheet, unread: draft === null || !answer.ok };
}
