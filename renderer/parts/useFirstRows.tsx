import { useEffect, useState, type ReactNode } from 'react';
import { flushSync } from 'react-dom';
import { number } from './format.ts';
import { words } from './words.ts';

/** So many rows of figures are drawn in well under a tenth of a second; an operation of this many yards is rare. */
const page = 50;

interface FirstRows<Row> {
  readonly shown: readonly Row[];
  /** Opens the next rows; null where all are shown. */
  readonly more: ReactNode;
}

/** Rows of which only the first are in the window yet. */
export interface RowsToCome {
  /** All there are. */
  readonly total: number;
  /** Asks for the next; `rows` then grow. */
  readonly load: () => void;
}

/** A long table a page at a time, so that the window never stands still to draw it; on paper all that is in the window. */
export function useFirstRows<Row>(rows: readonly Row[], name: string, toCome?: RowsToCome): FirstRows<Row> {
  const [most, setMost] = useState(page);
  const [onPaper, setOnPaper] = useState(false);
  const long = rows.length > page;
  useEffect(() => {
    if (!long) return undefined;
    const before = () => flushSync(() => setOnPaper(true));
    const after = () => setOnPaper(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, [long]);
  const total = Math.max(toCome?.total ?? 0, rows.length);
  const shown = onPaper || rows.length <= most ? rows : rows.slice(0, most);
  const left = total - shown.length;
  if (left === 0) return { shown, more: null };
  if (onPaper) return { shown, more: <p>{words.moreRows(number(left))}</p> };
  const onMore = () => {
    setMost(most + page);
    if (most + page > rows.length && rows.length < total) toCome?.load();
  };
  return {
    shown,
    more: (
      <button type="button" className="link no-print" onClick={onMore}>
        {words.moreRows(number(left))}
        <span className="visually-hidden"> ({name})</span>
      </button>
    ),
  };
}
