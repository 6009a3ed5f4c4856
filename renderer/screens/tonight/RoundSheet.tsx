import { Fragment, useImperativeHandle, useRef, type FocusEvent, type KeyboardEvent, type Ref } from 'react';
import type { RoundRow } from '#shared/contract/journal.ts';
import type { RoundColumn } from '#shared/roundSheets.ts';
import { undoKeyOf } from '../../parts/undoKeyOf.ts';
import { isActKey, rowIsEmpty, sheetColumns, type ActKey, type ColumnKey } from './sheetColumns.ts';
import { draftIsEmpty, freshSheet, keptQuestion } from './sheetDraft.ts';
import { moveForKey, moveFrom, type Cell } from './sheetMoves.ts';
import { cellWrittenOut, remarksOnRow, type Place } from './sheetRound.ts';
import { runsOn } from './sheetMarks.ts';
import { readRow } from './sheetRow.ts';
import { columnWidth, sheetWidth } from './sheetWidths.ts';
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
  /** Puts the keyboard where a sentence belongs. */
  goToPlace(place: Place): void;
  /** Puts the keyboard into a cell and selects what is in it. */
  goTo(cell: Cell): void;
}

/** Up to this many colonies a row has its full height; more stand tight, so that a yard fits the window. */
export const roomy = 10;

/** The sheet of paper: colonies down, questions across. */
export function RoundSheet({ round, caption, ref, onHere, onEnd }: RoundSheetProps) {
  const { rows, columns, setting, draft, type, keepQuestion } = round;
  /** What stood in the cell when the keyboard came into it. */
  const before = useRef('');
  /** Across while Tab leads on: then marks do not run on down the column. */
  const walk = useRef<'down' | 'across'>('down');
  /** Whether the cell was typed in since the keyboard came, and what Ctrl Z took out of it again. */
  const typedIn = useRef(false);
  const takenBack = useRef<string | null>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const { shown, after, reveal, keep, measure } = useRowWindow(rows.length, rows.length > roomy ? 28 : 34, scroll);
  const typed = draft.draft?.typed ?? freshSheet.typed;
  const wide = draft.draft?.wide ?? freshSheet.wide;

  const textOf = (row: RoundRow, key: ColumnKey) => draft.now()?.typed[row.colony]?.[key] ?? '';

  const into = (selector: string, row: number, whenThere?: () => void) => {
    const find = () => scroll.current?.querySelector<HTMLInputElement>(selector);
    const enter = (input: HTMLInputElement | null | undefined) => {
      input?.focus();
      input?.select();
      if (input) whenThere?.();
    };
    const input = find();
    if (input) enter(input);
    else reveal(row, () => enter(find()));
  };
  const goTo = (cell: Cell, whenThere?: () => void) => into(`[data-cell="${cell.row},${cell.column}"]`, cell.row, whenThere);
  const goToPlace = ({ colony, column }: Place) => {
    const row = rows.findIndex((one) => one.colony === colony);
    if (isActKey(column)) into(`[data-field="${row},${column}"]`, row);
    else goTo({ row, column: Math.max(0, columns.indexOf(column)) });
  };
  useImperativeHandle(ref, () => ({ goTo: (cell) => goTo(cell), goToPlace }));

  const onFocus = (event: FocusEvent) => {
    const at = placeOf(event.target, rows, columns);
    if (at === null) return;
    before.current = textOf(at.row, at.key);
    typedIn.current = false;
    takenBack.current = null;
    at.input.select();
    keep(at.cell.row);
    onHere(at.row, at.key);
  };

  // Short marks are written out once the cell is left, so that the sheet shows what will be entered.
  const onBlur = (event: FocusEvent) => {
    const at = placeOf(event.target, rows, columns);
    if (at === null) return;
    const text = textOf(at.row, at.key);
    const out = cellWrittenOut(at.key, text, setting);
    if (out !== text) type(at.row, at.key, out);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const at = placeOf(event.target, rows, columns);
    if (at === null || event.nativeEvent.isComposing || event.altKey) return;
    const ctrl = event.ctrlKey || event.metaKey;
    const text = textOf(at.row, at.key);
    const undoKey = ctrl ? undoKeyOf(event) : null;
    if (undoKey !== null) {
      takeBack(event, at, undoKey);
      return;
    }
    if (ctrl && event.key.toLowerCase() === 'd') {
      event.preventDefault();
      if (at.field !== null) return;
      if (event.shiftKey) {
        repeatDown(at.cell.row, at.key, text);
        return;
      }
      const above = rows[at.cell.row - 1];
      if (above && textOf(above, at.key) !== '') type(at.row, at.key, textOf(above, at.key));
      return;
    }
    if (event.key === 'Escape') {
      if (text !== before.current) type(at.row, at.key, before.current);
      return;
    }
    if (at.field !== null) {
      const next = fieldAfter(at, event, columns);
      if (next === null) return;
      event.preventDefault();
      next();
      return;
    }
    const { selectionStart, selectionEnd, value } = at.input;
    const caret = { start: selectionStart ?? 0, end: selectionEnd ?? value.length, length: value.length };
    if (event.key === 'Tab') walk.current = 'across';
    const below = rows[at.cell.row + 1];
    const typedNow = text !== before.current && caret.start === caret.length && caret.end === caret.length;
    if (below && !ctrl && walk.current === 'down' && typedNow && runsOn(at.key, text, event.key, setting)) {
      event.preventDefault();
      goTo({ row: at.cell.row + 1, column: at.cell.column }, () => type(below, at.key, event.key));
      return;
    }
    const move = moveForKey({ key: event.key, shift: event.shiftKey, ctrl }, caret);
    if (move === null) return;
    event.preventDefault();
    walk.current = 'down';
    if (move === 'enter' && text === before.current) keepQuestions(at.row, at.key);
    // From a split, a new queen or a combination on to its few fields.
    const field = move === 'enter' && at.key === 'act' ? fieldInputs(at.cell.row)[0] : undefined;
    if (field !== undefined) {
      field.focus();
      return;
    }
    const next = moveFrom(at.cell, move, rows.length, columns.length);
    if (next !== null) goTo(next);
    else if (move === 'enter') onEnd();
  };

  /**
   * The browser's own undo reaches past the cell: once a round is entered it would put old typing into cells that are
   * empty again. Here the keys take back what was typed in this cell; on a sheet with no typing they are the book's.
   */
  const takeBack = (event: KeyboardEvent, at: SheetPlace, undoKey: 'undo' | 'redo') => {
    const text = textOf(at.row, at.key);
    if (undoKey === 'undo' && typedIn.current && text !== before.current) {
      event.preventDefault();
      takenBack.current = text;
      typedIn.current = false;
      type(at.row, at.key, before.current);
    } else if (undoKey === 'redo' && takenBack.current !== null) {
      event.preventDefault();
      type(at.row, at.key, takenBack.current);
      takenBack.current = null;
      typedIn.current = true;
    } else if (undoKey === 'undo' && !draftIsEmpty(draft.now() ?? freshSheet)) event.preventDefault();
    else takenBack.current = null;
  };

  /** Fills the empty cells below with this cell's text, in rows that have anything typed: those not looked at stay empty. */
  const repeatDown = (from: number, key: ColumnKey, text: string) => {
    const all = draft.now();
    if (all === null || text.trim() === '') return;
    for (const row of rows.slice(from + 1)) {
      const typedHere = all.typed[row.colony] ?? {};
      if (!rowIsEmpty(typedHere) && (typedHere.act ?? '') === '' && (typedHere[key] ?? '').trim() === '') type(row, key, cellWrittenOut(key, text, setting));
    }
  };

  const fieldInputs = (row: number) => [...(scroll.current?.querySelectorAll<HTMLInputElement>(`[data-field^="${row},"]`) ?? [])];

  /** Enter and the up and down arrows among the fields under a row; null for a key that is the field's own. */
  const fieldAfter = (at: SheetPlace, event: KeyboardEvent, shown: readonly RoundColumn[]): (() => void) | null => {
    const { row } = at.cell;
    const act = shown.indexOf('act');
    const fields = fieldInputs(row);
    const here = fields.indexOf(at.input);
    const toAct = (to: number) => () => goTo({ row: to, column: Math.max(0, act) });
    const onward = row + 1 < rows.length ? toAct(row + 1) : onEnd;
    if (event.ctrlKey || event.metaKey) return null;
    if (event.key === 'Enter') {
      const next = fields[event.shiftKey ? here - 1 : here + 1];
      if (next !== undefined) return () => next.focus();
      return event.shiftKey ? toAct(row) : onward;
    }
    if (event.shiftKey) return null;
    if (event.key === 'ArrowUp') return toAct(row);
    return event.key === 'ArrowDown' ? onward : null;
  };

  const keepQuestions = (row: RoundRow, key: ColumnKey) => {
    const all = draft.now();
    if (all === null) return;
    for (const remark of remarksOnRow(row.colony, readRow(all.typed[row.colony] ?? {}, all.wide, setting))) {
      if (remark.column === key && remark.state === 'question' && !all.kept.includes(keptQuestion(remark))) keepQuestion(remark);
    }
  };

  return (
    <div className="scroll round-scroll" ref={scroll}>
      <table
        className={rows.length > roomy ? 'sheet round-sheet tight' : 'sheet round-sheet'}
        style={{ minWidth: sheetWidth(columns) }}
        data-undo="book"
        onInput={() => {
          typedIn.current = true;
          takenBack.current = null;
        }}
        onFocus={onFocus}
        onBlur={onBlur}
        onKeyDown={onKeyDown}
      >
        <caption className="visually-hidden">{caption}</caption>
        <colgroup>
          <col className="col-colony" />
          <col className="col-queen-mark" />
          {columns.map((key) => (
            <col key={key} style={{ width: columnWidth(key, columns) }} />
          ))}
        </colgroup>
        <thead>
          <tr>
            <th scope="col" className="round-colony">
              {words.colony}
            </th>
            <th scope="col">{words.queen}</th>
            {columns.map((key) => (
              <th key={key} scope="col" className={sheetColumns[key].numeric ? 'number' : ''}>
                {words.headOf(key, setting.massUnit).map((line, place) => (
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
              {gap > 0 ? <Gap height={gap} span={columns.length + 2} /> : null}
              <tbody data-index={index} ref={measure}>
                <SheetRow
                  row={row}
                  index={index}
                  columns={columns}
                  setting={setting}
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
        {after > 0 ? <Gap height={after} span={columns.length + 2} /> : null}
      </table>
    </div>
  );
}

/** Stands for the rows that are out of sight on a very long sheet. */
function Gap({ height, span }: { readonly height: number; readonly span: number }) {
  return (
    <tbody aria-hidden="true">
      <tr>
        <td className="round-gap" colSpan={span} style={{ height }} />
      </tr>
    </tbody>
  );
}

interface SheetPlace {
  readonly input: HTMLInputElement;
  /** For a field under the row, the cell of its act. */
  readonly cell: Cell;
  readonly row: RoundRow;
  readonly key: ColumnKey;
  readonly field: ActKey | null;
}

function placeOf(target: EventTarget, rows: readonly RoundRow[], columns: readonly RoundColumn[]): SheetPlace | null {
  if (!(target instanceof HTMLInputElement)) return null;
  const [place, name] = (target.dataset['field'] ?? target.dataset['cell'] ?? '').split(',');
  const row = rows[Number(place)];
  if (place === undefined || place === '' || row === undefined || name === undefined) return null;
  if (target.dataset['field'] !== undefined) {
    const key = name as ActKey;
    return { input: target, cell: { row: Number(place), column: columns.indexOf('act') }, row, key, field: key };
  }
  const key = columns[Number(name)];
  return key ? { input: target, cell: { row: Number(place), column: Number(name) }, row, key, field: null } : null;
}
