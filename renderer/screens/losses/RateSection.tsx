import { useState } from 'react';
import { IntervalDot, intervalEnd, IntervalScale, type IntervalRow } from '../../charts/IntervalDots.tsx';
import type { LossReview, LossRow } from '#shared/contract/losses.ts';
import type { Period } from '#shared/seasons.ts';
import { missing, number, percentRange } from '../../parts/format.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { fewColonies, isAbove, rangeOf, ratesOf } from './lossChoice.ts';
import { RateNote } from './RateNote.tsx';
import { words } from './words.ts';

const pictureWidth = 118;

/** Loss by yard: counts, rate and range; the range as a dot on its line, or in figures. */
export function RateSection({ review, period }: { readonly review: LossReview; readonly period: Period }) {
  const { yards, all } = ratesOf(review, period);
  const names = new Map(review.yards.map(({ code, name }) => [code, name]));
  const heading = all && !all.complete ? `${words.rateHeading[period]}, ${words.soFar}` : words.rateHeading[period];
  return (
    <section className="figured" aria-label={heading}>
      <h2>{heading}</h2>
      {!all || all.atRisk === 0 ? (
        <p className="soft">{words.noRates}</p>
      ) : (
        <RateTable review={review} rows={yards} total={all} nameOf={(row) => names.get(row.group) ?? row.group} headOfNames={words.yard} caption={heading} />
      )}
      {all && all.atRisk > 0 && all.quasi === null && all.quasiWhy !== null && <p className="soft small after-table">{words.allWilson(all.quasiWhy)}</p>}
    </section>
  );
}

export interface RateTableProps {
  readonly review: LossReview;
  readonly rows: readonly LossRow[];
  readonly total?: LossRow;
  readonly nameOf: (row: LossRow) => string;
  readonly headOfNames: string;
  readonly caption: string;
}

export function RateTable({ review, rows, total, nameOf, headOfNames, caption }: RateTableProps) {
  const [asTable, setAsTable] = useState(false);
  const drawn = (row: LossRow, label: string): IntervalRow => ({ label, rate: row.rate, interval: rangeOf(row), marked: isAbove(row, total) });
  const shown = [...rows, ...(total ? [total] : [])];
  const end = intervalEnd(shown.map((row) => drawn(row, row.group)));
  const line = (row: LossRow, name: string) => (
    <RateLine key={`${row.season} ${row.group}`} review={review} row={row} name={name} above={isAbove(row, total)}>
      {asTable ? percentRange(rangeOf(row)) || missing : <IntervalDot row={drawn(row, name)} end={end} width={pictureWidth} />}
    </RateLine>
  );
  return (
    <>
      <button type="button" className="link figure-switch no-print" onClick={() => setAsTable(!asTable)}>
        {asTable ? words.asPicture : words.asTable}
        <span className="visually-hidden"> ({caption})</span>
      </button>
      <table className="rates">
        <caption className="visually-hidden">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{headOfNames}</th>
            <th scope="col" className="number">
              {words.atRisk}
            </th>
            <th scope="col" className="number">
              {words.lost}
            </th>
            <th scope="col" className="number">
              {words.rate}
            </th>
            <th scope="col" className={asTable ? 'number' : 'rate-picture'}>
              {asTable ? words.rangeTable : words.range}
              {!asTable && <IntervalScale end={end} width={pictureWidth} />}
            </th>
          </tr>
        </thead>
        <tbody>{rows.map((row) => line(row, nameOf(row)))}</tbody>
        {total && <tfoot>{line(total, words.all)}</tfoot>}
      </table>
    </>
  );
}

interface RateLineProps {
  readonly review: LossReview;
  readonly row: LossRow;
  readonly name: string;
  readonly above: boolean;
  readonly children: React.ReactNode;
}

function RateLine({ review, row, name, above, children }: RateLineProps) {
  const note = useMarginNote();
  const few = row.atRisk > 0 && row.atRisk < fewColonies;
  return (
    <tr tabIndex={0} {...note(<RateNote review={review} row={row} name={name} above={above} />)}>
      <th scope="row">{name}</th>
      <td className="number">{number(row.atRisk)}</td>
      <td className="number">{row.atRisk === 0 ? missing : number(row.lost)}</td>
      <td className="number">
        {few && <span className="rate-few">{words.few}</span>}
        <span className={few ? 'soft' : undefined}>{row.rate === null ? missing : number(row.rate * 100)}</span>
      </td>
      <td className={typeof children === 'string' ? 'number' : 'rate-picture'}>{children}</td>
    </tr>
  );
}
