import { Fragment, useImperativeHandle, useRef, type FocusEvent, type KeyboardEvent, type Ref } from 'react';
import type { RoundRow } from '#shared/contract/journal.ts';
import { columnKeys, sheetColumns, type ColumnKey } from './sheetColumns.ts';
import { freshSheet, keptQuestion } from './sheetDraft.ts';
import { moveForKey, moveFrom, type Cell } from './sheetMoves.ts';
import { cellWrittenOut, remarksOnRow } from './sheetRound.ts';
import { runsOn } from './sheetMarks.ts';
import { readRow } from './sheetRow.ts';
import { SheetRow } from './SheetRow.tsx';
import type { Round } from './useRound.ts';
import { useRowWindow } from './useRowWindow.ts';
import { words } from './words.ts';

interface RoundSheetProps {
  readonly round: Round;
  readonly caption: string;
  readonly ref: Ref<SheetHandle>;
  onHere(row: RoundRow, column: ColumnKey): void;
  onEnd(): void;
}

export interface SheetHandle {
  /** Puts the keyboard into a cell and selects what is in it. */
  goTo(cell: Cell): void;
}

/** Up to this many colonies a row has its full height; more stand tight, so that a yard fits the window. */
export const roomy = 10;

/** The sheet of paper: colonies down, questions across. */
export function RoundSheet({ round, caption, ref, onHere, onEnd }: RoundSheetProps) {
  const { rows, draft, type, keepQuestion } = round;
  /** What stood in the cell when the keyboard came into it. */
  const before = useRef('');
  /** Across while Tab leads on: then marks do not run on down the column. */
  const walk = useRef<'down' | 'across'>('down');
  const scroll = useRef<HTMLDivElement>(null);
  const { shown, after, reveal, keep, measure } = useRowWindow(rows.length, rows.length > roomy ? 28 : 34, scroll);
  const typed = draft.draft?.typed ?? freshSheet.typed;
  const wide = draft.draft?.wide ?? freshSheet.wide;

  const textOf = (row: RoundRow, key: ColumnKey) => draft.now()?.typed[row.colony]?.[key] ?? '';

  const goTo = (cell: Cell, whenThere?: () => void) => {
    const find = () => scroll.current?.querySelector<HTMLInputElement>(`[data-cell="${cell.row},${cell.column}"]`);
    const into = (input: HTMLInputElement | null | undefined) => {
      input?.focus();
      input?.select();
      if (input) whenThere?.();
    };
    const input = find();
    if (input) into(input);
    else reveal(cell.row, () => into(find()));
  };
  useImperativeHandle(ref, () => ({ goTo: (cell) => goTo(cell) }));

  const onFocus = (event: FocusEvent) => {
    const at = placeOf(event.target, rows);
    if (at === null) return;
    before.current = textOf(at.row, at.key);
    at.input.select();
    keep(at.cell.row);
    onHere(at.row, at.key);
  };

  // Short marks are written out once the cell is left, so that the sheet shows what will be entered.
  const onBlur = (event: FocusEvent) => {
    const at = placeOf(event.target, rows);
    if (at === null) return;
    const text = textOf(at.row, at.key);
    const out = cellWrittenOut(at.key, text);
    if (out !== text) type(at.row, at.key, out);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const at = placeOf(event.target, rows);
    if (at === null || event.nativeEvent.isComposing || event.altKey) return;
    const ctrl = event.ctrlKey || event.metaKey;
    const text = textOf(at.row, at.key);
    if (ctrl && event.key.toLowerCase() === 'd') {
      event.preventDefault();
      const above = rows[at.cell.row - 1];
      if (above && textOf(above, at.key) !== '') type(at.row, at.key, textOf(above, at.key));
      return;
    }
    if (event.key === 'Escape') {
      if (text !== before.current) type(at.row, at.key, before.current);
      return;
    }
    const { selectionStart, selectionEnd, value } = at.input;
    const caret = { start: selectionStart ?? 0, end: selectionEnd ?? value.length, length: value.length };
    if (event.key === 'Tab') walk.current = 'across';
    const below = rows[at.cell.row + 1];
    const typedNow = text !== before.current && caret.start === caret.length && caret.end === caret.length;
    if (below && !ctrl && walk.current === 'down' && typedNow && runsOn(at.key, text, event.key)) {
      event.preventDefault();
      goTo({ row: at.cell.row + 1, column: at.cell.column }, () => type(below, at.key, event.key));
      return;
    }
    const move = moveForKey({ key: event.key, shift: event.shiftKey, ctrl }, caret);
    if (move === null) return;
    event.preventDefault();
    walk.current = 'down';
    if (move === 'enter' && text === before.current) keepQuestions(at.row, at.key);
    const next = moveFrom(at.cell, move, rows.length);
    if (next !== null) goTo(next);
    else if (move === 'enter') onEnd();
  };

  const keepQuestions = (row: RoundRow, key: ColumnKey) => {
    const all = draft.now();
    if (all === null) return;
    for (const remark of remarksOnRow(row.colony, readRow(all.typed[row.colony] ?? {}, all.wide))) {
      if (remark.column === key && remark.state === 'question' && !all.kept.includes(keptQuestion(remark))) keepQuestion(remark);
    }
  };

  return (
    <div className="scroll round-scroll" ref={scroll}>
      <table
        className={rows.length > roomy ? 'sheet round-sheet tight' : 'sheet round-sheet'}
        onFocus={onFocus}
        onBlur={onBlur}
        onKeyDown={onKeyDown}
      >
        <caption className="visually-hidden">{caption}</caption>
        <colgroup>
          <col className="col-colony" />
          <col className="col-queen-mark" />
          {columnKeys.map((key) => (
            <col key={key} className={`col-${key}`} />
          ))}
        </colgroup>
        <thead>
          <tr>
            <th scope="col" className="round-colony">
              {words.colony}
            </th>
            <th scope="col">{words.queen}</th>
            {columnKeys.map((key) => (
              <th key={key} scope="col" className={sheetColumns[key].numeric ? 'number' : ''}>
                {words.heads[key].filter(Boolean).map((line, place) => (
                  <span key={line} className="round-head">
                    {place > 0 ? ' ' : ''}
                    {line}
                  </span>
                ))}
              </th>
            ))}
          </tr>
        </thead>
        {shown.map(({ index, gap }) => {
          const row = rows[index];
          return row ? (
            <Fragment key={row.colony}>
              {gap > 0 ? <Gap height={gap} /> : null}
              <tbody data-index={index} ref={measure}>
                <SheetRow
                  row={row}
                  index={index}
                  typed={typed[row.colony]}
                  wide={wide}
                  kept={draft.draft?.kept ?? freshSheet.kept}
                  refused={round.refused[row.colony]}
                  onType={type}
                />
              </tbody>
            </Fragment>
          ) : null;
        })}
        {after > 0 ? <Gap height={after} /> : null}
      </table>
    </div>
  );
}

/** Stands for the rows that are out of sight on a very long sheet. */
function Gap({ height }: { readonly height: number }) {
  return (
    <tbody aria-hidden="true">
      <tr>
        <td className="round-gap" colSpan={columnKeys.length + 2} style={{ height }} />
      </tr>
    </tbody>
  );
}

function placeOf(target: EventTarget, rows: readonly RoundRow[]): { input: HTMLInputElement; cell: Cell; row: RoundRow; key: ColumnKey } | null {
  if (!(target instanceof HTMLInputElement)) return null;
  const [row, column] = (target.dataset['cell'] ?? '').split(',').map(Number);
  if (row === undefined || column === undefined) return null;
  const [colony, key] = [rows[row], columnKeys[column]];
  return colony && key ? { input: target, cell: { row, column }, row: colony, key } : null;
}
