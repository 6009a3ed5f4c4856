import { useCallback, useEffect, useRef } from 'react';
import { desk } from '../desk/deskClient.ts';

const pause = 400;

/**
 * Keeps what is typed in the book a moment after the last keystroke, so that a crash or a closed window loses nothing.
 * `restore` is called once with what was kept the last time, if anything was.
 */
export function useDraft(key: string, restore: (body: string) => void): { keep(body: string): void; drop(): void } {
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const waiting = useRef<string | null>(null);
  const restoring = useRef(restore);
  restoring.current = restore;

  const flush = useCallback(() => {
    clearTimeout(timer.current);
    if (waiting.current !== null) void desk.call('draft.keep', { key, body: waiting.current });
    waiting.current = null;
  }, [key]);

  useEffect(() => {
    let here = true;
    void desk.call('draft.fetch', { key }).then((answer) => {
      // What is being typed already is newer than what was kept.
      if (here && waiting.current === null && answer.ok && answer.value.body !== null) restoring.current(answer.value.body);
    });
    return () => {
      here = false;
      flush();
    };
  }, [key, flush]);

  const keep = useCallback(
    (body: string) => {
      waiting.current = body;
      clearTimeout(timer.current);
      timer.current = setTimeout(flush, pause);
    },
    [flush],
  );
  const drop = useCallback(() => {
    clearTimeout(timer.current);
    waiting.current = null;
    void desk.call('draft.drop', { key });
  }, [key]);
  return { keep, drop };
}
