import { useEffect, useRef } from 'react';
import { useWrite } from '../desk/useDesk.ts';
import { faultText, useNotice } from './Notice.tsx';
import { undoKeyOf } from './undoKeyOf.ts';

/**
 * Ctrl Z takes the last act back (what was done last beside the journal first), Ctrl Shift Z or Ctrl Y brings it back; in a text field they are the field's own,
 * except within what is marked as leaving them to the book and did not take the key itself.
 */
export function useUndoKeys(): void {
  const { send: undo } = useWrite('journal.undo');
  const { send: redo } = useWrite('journal.redo');
  const { say, takeLastBack } = useNotice();
  // One after another, so that a key pressed before the last answer came is not lost.
  const turn = useRef(Promise.resolve());

  useEffect(() => {
    const act = async (back: boolean) => {
      if (back && (await takeLastBack())) return;
      const answer = back ? await undo({}) : await redo({});
      if (!answer.ok) say(faultText(answer));
      else say(answer.value.sentence, back ? { redo: true } : { undoGesture: answer.value.gesture });
    };
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return;
      if (isTextField(event.target) && !leftToTheBook(event.target)) return;
      const undoKey = undoKeyOf(event);
      if (undoKey === null) return;
      event.preventDefault();
      if (event.repeat) return;
      const back = undoKey === 'undo';
      turn.current = turn.current.then(() => act(back));
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [undo, redo, say, takeLastBack]);
}

const noText: ReadonlySet<string> = new Set(['button', 'checkbox', 'color', 'file', 'image', 'radio', 'range', 'reset', 'submit']);

function isTextField(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !noText.has(target.type);
  return target instanceof HTMLTextAreaElement || (target instanceof HTMLElement && target.isContentEditable);
}

function leftToTheBook(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('[data-undo="book"]') !== null;
}
