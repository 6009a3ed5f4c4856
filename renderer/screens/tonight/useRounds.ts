import { useCallback, useEffect, useRef, useState } from 'react';
import type { Day } from '#shared/days.ts';
import { drafts } from './drafts.ts';
import { indexKey, noRounds, noteRound, readIndex, writeIndex, type RoundIndex } from './roundIndex.ts';

export interface Rounds {
  /** Null until the kept list is there. */
  readonly index: RoundIndex | null;
  note(yard: number, day: Day, filled: number): void;
}

/** Which sheets hold typing and which was open last, kept in the book like the drafts themselves. */
export function useRounds(): Rounds {
  const [index, setIndex] = useState<RoundIndex | null>(null);
  const live = useRef<RoundIndex | null>(null);

  useEffect(() => {
    let left = false;
    void drafts.fetch(indexKey).then((answer) => {
      if (left) return;
      live.current = answer.ok && answer.value.body !== null ? readIndex(answer.value.body) : noRounds;
      setIndex(live.current);
    });
    return () => {
      left = true;
    };
  }, []);

  const note = useCallback((yard: number, day: Day, filled: number) => {
    if (live.current === null) return;
    const next = noteRound(live.current, yard, day, filled);
    if (writeIndex(next) === writeIndex(live.current)) return;
    live.current = next;
    setIndex(next);
    drafts.change(indexKey, writeIndex(next));
  }, []);

  return { index, note };
}
