import type { LedgerRow, LossReview } from '#shared/contract/losses.ts';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { cameTo, usedColumns, wentFrom, type FlowColumn } from './ledgerColumns.ts';
import { words } from './words.ts';

/** The season's account of colonies by yard, like one of money: start, what came, what went, end. */
export function LedgerSection({ review }: { readonly review: LossReview }) {
  const names = new Map(review.yards.map(({ code, name }) => [code, name]));
  const yards = review.ledger.filter((row) => row.yard !== 'all');
  const all = review.ledger.find((row) => row.yard === 'all');
  const running = review.seasons.find(({ season }) => season === review.season)?.complete === false;
  const { came, went, leftOut } = usedColumns(review.ledger);
  return (
    <section className="section" aria-label={words.ledger}>
      <h2>{words.ledger}</h2>
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
            {yards.map((row) => (
              <Line key={row.yard} row={row} name={names.get(row.yard) ?? row.yard} came={came} went={went} running={running} />
            ))}
          </tbody>
          {all && (
            <tfoot>
              <Line row={all} name={words.all} came={came} went={went} running={running} />
            </tfoot>
          )}
        </table>
      </div>
      {all && review.balances && (
        <p className="after-table">{(running ? words.balances : words.balancesClosed)(all.opening, cameTo(all), wentFrom(all), all.closing)}</p>
      )}
      {!review.balances && <p className="fault-note">{words.unbalanced}</p>}
      {leftOut.length > 0 && (
        <p className="soft small">{words.leftOut(leftOut.map((column) => words.columns[column].replace('-', '').toLowerCase()).join(', '))}</p>
      )}
    </section>
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
}

function Line({ row, name, came, went, running }: LineProps) {
  const note = useMarginNote();
  return (
    <tr tabIndex={0} {...note(<LineNote row={row} name={name} running={running} />)}>
      <th scope="row">{name}</th>
      <td className="number">{number(row.opening)}</td>
      {[...came, ...went].map((column) => (
        <td key={column} className={isFirst(column, came, went) ? 'number ledger-first' : 'number'}>
          {row[column] === 0 ? <span className="soft">0</span> : number(row[column])}
        </td>
      ))}
      <td className="number ledger-first">{number(row.closing)}</td>
      <td className="number soft">{number(row.aliveOn1October)}</td>
    </tr>
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
