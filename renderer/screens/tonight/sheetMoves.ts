/** A cell by its place: row from 0 down the colonies, column from 0 across. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

export type Move = 'up' | 'down' | 'left' | 'right' | 'enter' | 'enter-back' | 'first' | 'last' | 'page-up' | 'page-down';

/** Rows that Page Up and Page Down go. */
const page = 10;

/** Where a key leads from a cell on a sheet with so many rows and columns; null when there is nowhere further. */
export function moveFrom(from: Cell, move: Move, rows: number, columns: number): Cell | null {
  const lastColumn = columns - 1;
  const at = (row: number, column: number): Cell | null =>
    row < 0 || row >= rows || column < 0 || column > lastColumn ? null : { row, column };
  switch (move) {
    case 'up':
      return at(from.row - 1, from.column);
    case 'down':
      return at(from.row + 1, from.column);
    case 'left':
      return at(from.row, from.column - 1);
    case 'right':
      return at(from.row, from.column + 1);
    case 'enter':
      return at(from.row + 1, from.column) ?? at(0, from.column + 1);
    case 'enter-back':
      return at(from.row - 1, from.column) ?? at(rows - 1, from.column - 1);
    case 'page-up':
      return at(Math.max(0, from.row - page), from.column);
    case 'page-down':
      return at(Math.min(rows - 1, from.row + page), from.column);
    case 'first':
      return at(0, 0);
    case 'last':
      return at(rows - 1, lastColumn);
  }
}

/** What a press means in a cell; `caret` says where the caret stands, so that arrows first move within typed text. */
export function moveForKey(
  press: { readonly key: string; readonly shift: boolean; readonly ctrl: boolean },
  caret: { readonly start: number; readonly end: number; readonly length: number },
): Move | null {
  const all = caret.start === 0 && caret.end === caret.length;
  if (press.ctrl) {
    if (press.key === 'Home') return 'first';
    return press.key === 'End' ? 'last' : null;
  }
  if (press.key === 'Enter') return press.shift ? 'enter-back' : 'enter';
  if (press.shift) return null;
  switch (press.key) {
    case 'ArrowUp':
      return 'up';
    case 'ArrowDown':
      return 'down';
    case 'PageUp':
      return 'page-up';
    case 'PageDown':
      return 'page-down';
    case 'ArrowLeft':
      return all || (caret.start === 0 && caret.end === 0) ? 'left' : null;
    case 'ArrowRight':
      return all || (caret.start === caret.length && caret.end === caret.length) ? 'right' : null;
    default:
      return null;
  }
}
