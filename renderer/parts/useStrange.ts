import { useRef } from 'react';
import type { Cells } from '#shared/entryForms.ts';
import { strangeIn, type Strange } from '#shared/ordinary.ts';
import { entryWords } from './entryWords.ts';

/** Asks once about each figure that is out of the ordinary: the questions, or none when they were all asked before. `kept` are cells that stand in the book already. */
export function useStrange(kept: Cells = {}): (row: Cells) => readonly Strange[] {
  const asked = useRef(new Set<string>());
  return (row) => {
    const before = new Set(strangeIn(kept).map(({ sentence }) => sentence));
    const open = strangeIn(row).filter(({ column, sentence }) => !before.has(sentence) && !asked.current.has(`${column} ${sentence}`));
    for (const { column, sentence } of open) asked.current.add(`${column} ${sentence}`);
    return open.map(({ column, sentence }) => ({ column, sentence: `${sentence} ${entryWords.ifSo}` }));
  };
}

/** The sentences of a form's fields, the desk's refusals before what is asked. */
export function withStrange(refused: ReadonlyMap<string, string>, strange: readonly Strange[]): ReadonlyMap<string, string> {
  return strange.length === 0 ? refused : new Map([...strange.map(({ column, sentence }): [string, string] => [column, sentence]), ...refused]);
}
