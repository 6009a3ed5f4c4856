import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { GestureId } from '#shared/brands.ts';
import type { Fault } from '#shared/faults.ts';
import { useBook } from '../desk/useBook.ts';
import { useWrite } from '../desk/useDesk.ts';
import { words } from './words.ts';

export interface NoticeOptions {
  /** The act that Undo takes back. */
  readonly undoGesture?: GestureId;
  /** Takes back what is no act of the journal; answers with the sentence that is said next. */
  readonly takeBack?: () => Promise<string>;
  /** Offers to bring back what was undone last. */
  readonly redo?: true;
}

export interface NoticeWriter {
  say(sentence: string, options?: NoticeOptions): void;
  /** Takes back what was said last that is no act of the journal; false where the journal's last act is the last of all. */
  takeLastBack(): Promise<boolean>;
}

interface Said extends NoticeOptions {
  readonly sentence: string;
  readonly turn: number;
}

const Writer = createContext<NoticeWriter | null>(null);
/** Long enough to read and to change one's mind; the act can be undone on Tonight afterwards too. */
const stays = 30_000;

/** Says what was saved, at the foot of the window, and offers to take it back. */
export function NoticeProvider({ children }: { readonly children: ReactNode }) {
  const [said, setSaid] = useState<Said | null>(null);
  const turn = useRef(0);
  const { book } = useBook();
  /** What was done, the last at the end: what takes it back, or `journal`, which the journal itself does. It outlives its message. */
  const done = useRef<((() => Promise<string>) | 'journal')[]>([]);
  // What was done in one book is not taken back in another, and an act of the journal has a number that another book may have too.
  useEffect(() => {
    done.current = [];
    setSaid((last) => (last?.undoGesture === undefined && last?.takeBack === undefined && last?.redo === undefined ? last : null));
  }, [book?.path]);
  const say = useCallback((sentence: string, options: NoticeOptions = {}) => {
    turn.current += 1;
    if (options.takeBack !== undefined) done.current.push(options.takeBack);
    else if (options.undoGesture !== undefined) done.current.push('journal');
    else if (options.redo === true && done.current.at(-1) === 'journal') done.current.pop();
    setSaid({ sentence, turn: turn.current, ...options });
  }, []);
  const takeLastBack = useCallback(async () => {
    const last = done.current.at(-1);
    if (last === undefined || last === 'journal') return false;
    done.current.pop();
    say(await last());
    return true;
  }, [say]);
  const writer = useMemo(() => ({ say, takeLastBack }), [say, takeLastBack]);
  return (
    <Writer value={writer}>
      {children}
      <Notice said={said} say={say} takeLastBack={takeLastBack} onClose={() => setSaid(null)} />
    </Writer>
  );
}

export function useNotice(): NoticeWriter {
  const writer = useContext(Writer);
  if (writer === null) throw new Error('a notice is said outside its provider');
  return writer;
}

function Notice({ said, say, takeLastBack, onClose }: NoticeWriter & { readonly said: Said | null; readonly onClose: () => void }) {
  const undo = useWrite('journal.undo');
  const redo = useWrite('journal.redo');
  const box = useRef<HTMLDivElement>(null);
  /** Where the keyboard was before it came here. */
  const came = useRef<Element | null>(null);
  const within = useRef(false);

  // A button that has done its work goes, and the keyboard stays with the message, or goes back once that is closed.
  useEffect(() => {
    if (!within.current || (document.activeElement !== null && document.activeElement !== document.body)) return;
    if (said !== null) box.current?.querySelector('button')?.focus();
    else {
      within.current = false;
      const back = came.current?.isConnected ? came.current : document.querySelector('h1');
      if (back instanceof HTMLElement) back.focus();
    }
  }, [said]);

  useEffect(() => {
    if (said === null) return;
    const timer = setInterval(() => {
      if (!box.current?.contains(document.activeElement)) onClose();
    }, stays);
    return () => clearInterval(timer);
  }, [said, onClose]);

  const [taking, setTaking] = useState(false);
  const takeBack = async () => {
    if (said?.takeBack !== undefined) {
      setTaking(true);
      await takeLastBack();
      setTaking(false);
    }
    if (said?.undoGesture === undefined) return;
    const answer = await undo.send({ gesture: said.undoGesture });
    if (answer.ok) say(answer.value.sentence, { redo: true });
    else say(faultText(answer));
  };
  const bringBack = async () => {
    const answer = await redo.send({});
    if (answer.ok) say(answer.value.sentence, { undoGesture: answer.value.gesture });
    else say(faultText(answer));
  };

  return (
    <div
      className="notice-place"
      ref={box}
      onFocus={({ relatedTarget }) => {
        if (!within.current) came.current = relatedTarget;
        within.current = true;
      }}
      onBlur={({ relatedTarget }) => {
        if (relatedTarget !== null) within.current = false;
      }}
    >
      <div role="status">{said ? <p key={said.turn}>{said.sentence}</p> : null}</div>
      {said ? (
        <div className="notice-acts">
          {said.undoGesture !== undefined || said.takeBack !== undefined ? (
            <button type="button" className="plain" disabled={undo.busy || taking} onClick={() => void takeBack()}>
              {words.undo}
            </button>
          ) : null}
          {said.redo ? (
            <button type="button" className="plain" disabled={redo.busy} onClick={() => void bringBack()}>
              {words.redo}
            </button>
          ) : null}
          <button type="button" className="plain" aria-label={words.dismiss} onClick={onClose}>
            ✕
          </button>
        </div>
      ) : null}
    </div>
  );
}

/** A refusal as one line for the message. */
export function faultText({ sentence, mend }: Fault): string {
  return [sentence, mend].filter(Boolean).join(' ');
}
