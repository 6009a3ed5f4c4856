import { Fragment } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import { gramsPerPound } from '#shared/units.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { dayText, massFromPounds, missing, money, number, rate } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

type Row = OutputOf<'order.compare'>['rows'][number];

/** A package or a nuc, for this person: side by side, each figure with where it comes from. */
export function SourcesSection() {
  const { book } = useBook();
  const { data } = useRead('order.compare', {});
  const note = useMarginNote();
  if (data === undefined || book === undefined) return null;
  const mass = (grams: number) => massFromPounds(grams / gramsPerPound, book.massUnit);
  const lines: { head: string; of: (row: Row) => string; notes: (row: Row) => string }[] = [
    { head: words.rowPrice, of: ({ price }) => money(price?.each), notes: ({ price }) => price?.from ?? '' },
    {
      head: words.rowHoney(book.massUnit), of: ({ honey }) => `${mass(honey.grams)}${honey.low === null || honey.high === null ? '' : ` (${mass(honey.low)}–${mass(honey.high)})`}`,
      notes: ({ honey }) => words.sourceNote(honey.own ? honey.source : `${honey.source} (${honey.confidence})`, honey.own ? honey.colonies : 0, honey.seasons),
    },
    { head: words.rowLived, of: ({ lived }) => (lived === null ? missing : rate(lived.alive, lived.of, [lived.low, lived.high])), notes: ({ lived }) => (lived === null ? 'None is in the record.' : 'From your own record, with the 95 % interval.') },
    { head: words.rowComb, of: ({ combs }) => number(combs), notes: () => 'House rule.' },
    { head: words.rowMinutes, of: ({ minutes }) => number(minutes), notes: () => 'House rule.' },
    { head: words.rowFirst, of: ({ firstYear }) => money(firstYear === null ? null : Math.round(firstYear / 100) * 100), notes: () => 'Price and work less the honey of the first year at the house’s price. Below 0 it has earned itself.' },
  ];
  return (
    <section className="section" aria-label={words.sources}>
      <h2>{words.sources}</h2>
      <p className="said">{data.sentences.join(' ')}</p>
      <table className="tight narrow">
        <caption className="visually-hidden">{words.sources}</caption>
        <thead>
          <tr>
            <td />
            {data.rows.map(({ kind }) => (
              <th key={kind} scope="col" className="number">
                {words.sourceKinds[kind]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ head, of, notes }) => (
            <tr
              key={head}
              tabIndex={0}
              {...note(
                <MarginPart heading={head}>
                  {data.rows.map((row) => (
                    <p key={row.kind}>
                      {words.sourceKinds[row.kind]}: {notes(row)}
                    </p>
                  ))}
                </MarginPart>,
              )}
            >
              <th scope="row">{head}</th>
              {data.rows.map((row) => (
                <td key={row.kind} className="number figure-range">
                  {of(row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {data.paid.length === 0 ? null : (
        <details className="order-past">
          <summary>{words.paidBefore}</summary>
          <ul className="lines">
            {data.paid.slice(0, 40).map((one) => (
              <li key={`${one.day} ${one.kind} ${one.seller ?? ''} ${one.each}`}>
                <span>{dayText(one.day)}</span>
                <span>
                  {words.paidLine(number(one.quantity), one.item, one.seller === null ? '' : ` from ${one.seller}`)}
                  <Fragment>: {money(Math.round(one.each))}</Fragment>
                </span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
