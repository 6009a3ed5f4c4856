import { useMemo } from 'react';
import type { LedgerRow } from '#shared/contract/losses.ts';
import type { Season } from '#shared/seasons.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { BehindFigure, ColoniesBehind, useBehind, type Behind } from '../../parts/ColoniesBehind.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { cameTo, usedColumns, wentFrom, type FlowColumn } from './ledgerColumns.ts';
import { reviewWords } from './reviewWords.ts';
import { words } from './words.ts';

/** The season's account of colonies by yard, like one of money: start, what came, what went, end. */
export function LedgerSection({ season }: { readonly season: Season }) {
  const behind = useBehind();
  const { data: review, fault, stale } = useCalmRead('losses.ledger', { season }, { keep: true });
  const yards = useMemo(() => review?.ledger.filter((row) => row.yard !== 'all') ?? [], [review]);
  const { shown, more } = useFirstRows(yards, words.ledger);
  if (!review) return fault ? <FaultNote fault={fault} /> : <p className="soft review-waiting">{reviewWords.reading}</p>;
  const names = new Map(review.yards.map(({ code, name }) => [code, name]));
  const all = review.ledger.find((row) => row.yard === 'all');
  const { running } = review;
  const { came, went, leftOut } = usedColumns(review.ledger);
  return (
    <Awaited stale={stale}>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.ledger}>
        <table className="ledger">
          <caption className="visually-hidden">{words.ledger}</caption>
          <thead>
            <tr className="ledger-groups">
              <td />
              <td />
              {came.length > 0 && (
                <th scope="colgroup" colSpan={came.length}>
                  {words.came}
                </th>
              )}
              <th scope="colgroup" colSpan={went.length}>
                {words.went}
              </th>
              <td />
              <td />
            </tr>
            <tr>
              <th scope="col">{words.yard}</th>
              <Head text={words.columns.opening} />
              {[...came, ...went].map((column) => (
                <Head key={column} text={words.columns[column]} {...(isFirst(column, came, went) ? { first: true } : {})} />
              ))}
              <Head text={running ? words.columns.closingNow : words.columns.closing} first />
              <Head text={words.columns.aliveOn1October} />
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Line key={row.yard} row={row} name={names.get(row.yard) ?? row.yard} came={came} went={went} running={running} behind={behind} />
            ))}
          </tbody>
          {all && (
            <tfoot>
              <Line row={all} name={words.all} came={came} went={went} running={running} behind={behind} />
            </tfoot>
          )}
        </table>
      </div>
      {more}
      {all && review.balances && (
        <p className="after-table">{(running ? words.balances : words.balancesClosed)(all.opening, cameTo(all), wentFrom(all), all.closing)}</p>
      )}
      {!review.balances && <p className="fault-note">{words.unbalanced}</p>}
      {leftOut.length > 0 && (
        <p className="soft small">{words.leftOut(leftOut.map((column) => words.columns[column].replace('-', '').toLowerCase()).join(', '))}</p>
      )}
      <ColoniesBehind behind={behind} />
    </Awaited>
  );
}

function isFirst(column: FlowColumn, came: readonly FlowColumn[], went: readonly FlowColumn[]): boolean {
  return column === came[0] || column === went[0];
}

/** A column's head; a hyphen in the words is where a long one may break. */
function Head({ text, first = false }: { readonly text: string; readonly first?: boolean }) {
  return (
    <th scope="col" className={first ? 'number ledger-first' : 'number'}>
      {text.replace('-', '\u00ad')}
    </th>
  );
}

interface LineProps {
  readonly row: LedgerRow;
  readonly name: string;
  readonly came: readonly FlowColumn[];
  readonly went: readonly FlowColumn[];
  readonly running: boolean;
  readonly behind: Behind;
}

function Line({ row, name, came, went, running, behind }: LineProps) {
  const note = useMarginNote();
  const cell = (column: Column) => <Cell row={row} name={name} column={column} behind={behind} running={running} />;
  return (
    <tr {...note(<LineNote row={row} name={name} running={running} />)}>
      <th scope="row">{name}</th>
      <td className="number">{cell('opening')}</td>
      {[...came, ...went].map((column) => (
        <td key={column} className={isFirst(column, came, went) ? 'number ledger-first' : 'number'}>
          {cell(column)}
        </td>
      ))}
      <td className="number ledger-first">{cell('closing')}</td>
      <td className="number">{cell('aliveOn1October')}</td>
    </tr>
  );
}

type Column = FlowColumn | 'opening' | 'closing' | 'aliveOn1October';

/** A count that opens its colonies; nought stays a plain, soft figure. */
function Cell({ row, name, column, behind, running }: { readonly row: LedgerRow; readonly name: string; readonly column: Column; readonly behind: Behind; readonly running: boolean }) {
  if (row[column] === 0) return <span className="soft">0</span>;
  const head = words.columns[column === 'closing' && running ? 'closingNow' : column].replace('-', '').toLowerCase();
  return (
    <BehindFigure behind={behind} title={`${name}: ${head}`} selector={{ kind: 'ledger', season: row.season, yard: row.yard, column }}>
      {number(row[column])}
    </BehindFigure>
  );
}

function LineNote({ row, name, running }: { readonly row: LedgerRow; readonly name: string; readonly running: boolean }) {
  return (
    <MarginPart heading={name}>
      <p>{(running ? words.balances : words.balancesClosed)(row.opening, cameTo(row), wentFrom(row), row.closing)}</p>
      <p className="soft">{words.ledgerNote}</p>
    </MarginPart>
  );
}
