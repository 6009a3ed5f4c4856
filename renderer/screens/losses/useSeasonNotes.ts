import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import { desk } from '../../desk/deskClient.ts';
import { useRead } from '../../desk/useDesk.ts';

const pause = 400;

export interface SeasonNotesKept {
  /** Null until the book has answered. */
  readonly text: string | null;
  readonly kept: string | null;
  /** True while what is typed could not be kept. */
  readonly failed: boolean;
  readonly before: { readonly season: number; readonly name: string; readonly text: string } | null;
  readonly write: (text: string) => void;
}

/** Keeps a season's notes a moment after the last key, and at once when the page is left; typing is never overwritten by what is read. */
export function useSeasonNotes(season: number): SeasonNotesKept {
  const client = useQueryClient();
  const { data } = useRead('losses.notes', { season });
  const [typed, setTyped] = useState<string | null>(null);
  const [kept, setKept] = useState<string | null>(null);
  const [failed, setFailed] = useState(false);
  const waiting = useRef<string | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const flush = useCallback(async () => {
    clearTimeout(timer.current);
    const text = waiting.current;
    if (text === null) return;
    waiting.current = null;
    const answer = await desk.call('losses.keepNotes', { season, text });
    setFailed(!answer.ok);
    if (answer.ok) {
      setKept(answer.value.kept);
      // The next visit reads what was written, without every screen being asked again at each pause.
      void client.invalidateQueries({ queryKey: ['losses.notes'], refetchType: 'none' });
    } else waiting.current ??= text;
  }, [client, season]);

  useEffect(() => {
    const leave = () => void flush();
    window.addEventListener('pagehide', leave);
    return () => {
      window.removeEventListener('pagehide', leave);
      leave();
    };
  }, [flush]);

  const write = (text: string) => {
    setTyped(text);
    waiting.current = text;
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void flush(), pause);
  };
  return { text: typed ?? data?.text ?? null, kept: kept ?? data?.kept ?? null, failed, before: data?.before ?? null, write };
}
