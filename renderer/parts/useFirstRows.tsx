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

/** A long table a page at a time, so that the window never stands still to draw it; on paper it is whole. */
export function useFirstRows<Row>(rows: readonly Row[], name: string): FirstRows<Row> {
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
  if (onPaper || rows.length <= most) return { shown: rows, more: null };
  return {
    shown: rows.slice(0, most),
    more: (
      <button type="button" className="link no-print" onClick={() => setMost(most + page)}>
        {words.moreRows(number(rows.length - most))}
        <span className="visually-hidden"> ({name})</span>
      </button>
    ),
  };
}
