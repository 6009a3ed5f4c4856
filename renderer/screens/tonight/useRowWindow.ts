import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useRef, type RefCallback, type RefObject } from 'react';

/** Up to this many colonies every row is drawn; a yard has some 60 at most, a whole operation on one sheet has more. */
const allDrawn = 80;
/** Rows drawn out of sight, enough for Tab to find the next one. */
const spare = 12;

interface RowWindow {
  /** The rows drawn, each with the height of what is not drawn before it. */
  readonly shown: readonly { readonly index: number; readonly gap: number }[];
  /** The height of what is not drawn after the last. */
  readonly after: number;
  /** Draws a row that is out of sight, then calls back. */
  reveal(row: number, whenDrawn: () => void): void;
  /** The row the keyboard is in, which stays drawn wherever the sheet is scrolled to. */
  keep(row: number): void;
  readonly measure: RefCallback<HTMLTableSectionElement> | undefined;
}

/** Which rows of a long sheet are drawn. */
export function useRowWindow(count: number, height: number, scroll: RefObject<HTMLElement | null>): RowWindow {
  const kept = useRef(0);
  const wanted = useRef<{ row: number; whenDrawn: () => void } | null>(null);
  const windowed = count > allDrawn;
  const virtual = useVirtualizer({
    count,
    enabled: windowed,
    getScrollElement: () => scroll.current,
    estimateSize: () => height,
    overscan: spare,
    rangeExtractor: (range) => {
      const drawn = defaultRangeExtractor(range);
      const row = Math.min(kept.current, count - 1);
      return drawn.includes(row) ? drawn : [...drawn, row].toSorted((one, other) => one - other);
    },
  });

  useEffect(() => {
    const want = wanted.current;
    if (want === null || !virtual.getVirtualItems().some((item) => item.index === want.row)) return;
    wanted.current = null;
    want.whenDrawn();
  });

  const reveal = useCallback(
    (row: number, whenDrawn: () => void) => {
      wanted.current = { row, whenDrawn };
      virtual.scrollToIndex(row, { align: 'center' });
    },
    [virtual],
  );
  const keep = useCallback((row: number) => {
    kept.current = row;
  }, []);

  if (!windowed) return { shown: Array.from({ length: count }, (_, index) => ({ index, gap: 0 })), after: 0, reveal, keep, measure: undefined };
  const items = virtual.getVirtualItems();
  return {
    shown: items.map(({ index, start }, place) => ({ index, gap: start - (items[place - 1]?.end ?? 0) })),
    after: virtual.getTotalSize() - (items.at(-1)?.end ?? 0),
    reveal,
    keep,
    measure: virtual.measureElement,
  };
}
