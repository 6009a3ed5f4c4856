import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { memo, useEffect, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import type { ColonyId } from '#shared/brands.ts';
import type { ColonyRow } from '#shared/contract/colonies.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import type { ColonyColumn } from './colonyColumns.tsx';
import { ColonyNote } from './ColonyNote.tsx';
import type { ColonyView } from './colonyView.ts';
import { words } from './words.ts';

export interface ColonyTableProps {
  readonly rows: readonly ColonyRow[];
  /** How many there are before the yard and the search are applied. */
  readonly all: number;
  readonly columns: readonly ColonyColumn[];
  readonly view: ColonyView;
  readonly onSort: (key: string) => void;
}

const rowHeight = 34;
/** Where the list was left, so that coming back from a colony finds its line in sight. */
let leftAt: ColonyId | null = null;
/** Height of the sticky head and foot, so that a row moved to is not hidden under them. */
const headHeight = 50;

/** The table keeps only the rows in sight in the page; arrow keys move through all of them. */
export function ColonyTable({ rows, all, columns, view, onSort }: ColonyTableProps) {
  const scroll = useRef<HTMLDivElement>(null);
  const [active, setActive] = useState(() => Math.max(0, rows.findIndex(({ id }) => id === leftAt)));
  const moving = useRef(false);
  const here = Math.min(active, Math.max(0, rows.length - 1));

  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => rowHeight,
    overscan: 12,
    initialOffset: Math.max(0, active * rowHeight - 6 * rowHeight),
    scrollPaddingStart: headHeight,
    scrollPaddingEnd: rowHeight + 4,
    getItemKey: (index) => rows[index]?.id ?? index,
    // The row that has the keyboard stays in the page when it is scrolled out of sight, or the keyboard would be lost.
    rangeExtractor: (range) => {
      const seen = defaultRangeExtractor(range);
      if (seen.includes(here) || rows.length === 0) return seen;
      return here < (seen[0] ?? 0) ? [here, ...seen] : [...seen, here];
    },
  });
  const items = virtual.getVirtualItems();

  const moveTo = (index: number) => {
    const next = Math.max(0, Math.min(rows.length - 1, index));
    moving.current = true;
    setActive(next);
    virtual.scrollToIndex(next);
  };
  const openRow = rows[here]?.id ?? null;
  useEffect(() => {
    leftAt = openRow;
  }, [openRow]);
  useEffect(() => {
    if (!moving.current) return;
    moving.current = false;
    scroll.current?.querySelector<HTMLElement>(`tr[data-index="${here}"] a`)?.focus({ preventScroll: true });
  });

  const onKey = (event: KeyboardEvent) => {
    const page = Math.max(1, Math.floor((scroll.current?.clientHeight ?? 400) / rowHeight) - 3);
    const step: Record<string, number> = {
      ArrowDown: here + 1,
      ArrowUp: here - 1,
      PageDown: here + page,
      PageUp: here - page,
      Home: 0,
      End: rows.length - 1,
    };
    const next = step[event.key];
    if (next === undefined || event.altKey || event.metaKey) return;
    event.preventDefault();
    moveTo(next);
  };

  // One flat list: nested ones would give a line a new place, and so a new element without the keyboard, at every scroll.
  const lines: ReactNode[] = [];
  let above = 0;
  for (const item of items) {
    const row = rows[item.index];
    if (!row) continue;
    if (item.start > above) lines.push(<Spacer key={`above-${item.key}`} height={item.start - above} columns={columns.length} />);
    lines.push(<ColonyLine key={item.key} row={row} index={item.index} here={item.index === here} columns={columns} onHere={setActive} />);
    above = item.end;
  }
  return (
    <div className="scroll colonies" ref={scroll}>
      <table aria-label={words.table} aria-rowcount={rows.length + 2}>
        <colgroup>
          {columns.map((column) => (
            <col key={column.key} style={{ width: column.width }} />
          ))}
        </colgroup>
        <thead>
          <tr aria-rowindex={1}>
            {columns.map((column) => (
              <th
                key={column.key}
                scope="col"
                className={column.number ? 'number' : undefined}
                aria-sort={view.sortBy === column.key ? (view.down ? 'descending' : 'ascending') : undefined}
              >
                <button type="button" className="sort" onClick={() => onSort(column.key)}>
                  {column.head}
                  {column.unit ? (
                    <>
                      <br />
                      {column.unit}
                    </>
                  ) : null}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody onKeyDown={onKey}>
          {lines}
          <Spacer height={virtual.getTotalSize() - above} columns={columns.length} />
        </tbody>
        <tfoot>
          <tr aria-rowindex={rows.length + 2}>
            {columns.map((column, place) =>
              place === 0 ? (
                <th key={column.key} scope="row" colSpan={2}>
                  {words.totals(rows.length, all)}
                </th>
              ) : place === 1 ? null : (
                <td key={column.key} className={column.number ? 'number' : undefined}>
                  {column.total?.(rows)}
                </td>
              ),
            )}
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

interface ColonyLineProps {
  readonly row: ColonyRow;
  readonly index: number;
  readonly here: boolean;
  readonly columns: readonly ColonyColumn[];
  readonly onHere: (index: number) => void;
}

/** One colony. Kept from drawing again while it only moves past. */
const ColonyLine = memo(function ColonyLine({ row, index, here, columns, onHere }: ColonyLineProps) {
  const [, navigate] = useLocation();
  const marginProps = useMarginNote();
  const address = `/colonies/${row.id}`;
  return (
    <tr
      data-index={index}
      aria-rowindex={index + 2}
      className="row-open"
      onClick={() => {
        onHere(index);
        navigate(address);
      }}
      {...marginProps(() => <ColonyNote row={row} />)}
    >
      {columns.map((column, place) =>
        place === 0 ? (
          <th key={column.key} scope="row">
            <Link href={address} tabIndex={here ? 0 : -1} onFocus={() => onHere(index)} onClick={(event) => event.stopPropagation()}>
              {column.show(row)}
            </Link>
          </th>
        ) : (
          <td key={column.key} className={column.number ? 'number' : undefined}>
            {column.show(row)}
          </td>
        ),
      )}
    </tr>
  );
});

/** Stands for the rows out of sight. */
function Spacer({ height, columns }: { readonly height: number; readonly columns: number }) {
  if (height <= 0) return null;
  return (
    <tr aria-hidden="true" className="spacer">
      <td colSpan={columns} style={{ height }} />
    </tr>
  );
}
