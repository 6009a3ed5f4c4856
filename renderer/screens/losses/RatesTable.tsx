import { useState, type ReactNode } from 'react';
import type { BehindSelector } from '#shared/contract/lossSections.ts';
import { IntervalDot, intervalEnd, IntervalScale, type IntervalRow } from '../../charts/IntervalDots.tsx';
import { BehindFigure, type Behind } from '../../parts/ColoniesBehind.tsx';
import { missing, number, percentRange } from '../../parts/format.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { fewColonies } from '#shared/lossChoice.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { reviewWords } from './reviewWords.ts';
import { words } from './words.ts';

export interface RatedRow {
  readonly key: string;
  readonly name: string;
  readonly atRisk: number;
  readonly lost: number;
  readonly rate: number | null;
  readonly range: readonly [number, number] | null;
  /** Its whole range lies above that of the whole. */
  readonly marked?: boolean;
  /** A part of the row above. */
  readonly part?: boolean;
  readonly note: ReactNode;
  readonly behind?: { readonly atRisk: BehindSelector; readonly lost: BehindSelector };
  /** The last column, where the table has one. */
  readonly more?: string;
}

export interface RatesTableProps {
  readonly rows: readonly RatedRow[];
  readonly total?: RatedRow | undefined;
  readonly headOfNames: string;
  readonly caption: string;
  readonly behind: Behind;
  readonly more?: string;
}

const pictureWidth = 118;

/** Counts, rate and range, the range as a dot on its line or in figures; the counts open the colonies behind them. */
export function RatesTable({ rows, total, headOfNames, caption, behind, more }: RatesTableProps) {
  const [asTable, setAsTable] = useState(false);
  const { shown, more: further } = useFirstRows(rows, caption);
  const drawn = (row: RatedRow): IntervalRow => ({ label: row.name, rate: row.rate, interval: row.range, marked: row.marked === true });
  const end = intervalEnd([...rows, ...(total ? [total] : [])].map(drawn));
  const line = (row: RatedRow) => (
    <RateLine key={row.key} row={row} behind={behind} more={more !== undefined}>
      {asTable ? percentRange(row.range) || missing : <IntervalDot row={drawn(row)} end={end} width={pictureWidth} />}
    </RateLine>
  );
  return (
    <>
      <button type="button" className="link figure-switch no-print" onClick={() => setAsTable(!asTable)}>
        {asTable ? words.asPicture : words.asTable}
        <span className="visually-hidden"> ({caption})</span>
      </button>
      <div className="scroll" tabIndex={0} role="group" aria-label={caption}>
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
              {more !== undefined && (
                <th scope="col" className="number">
                  {more}
                </th>
              )}
            </tr>
          </thead>
          <tbody>{shown.map(line)}</tbody>
          {total && <tfoot>{line(total)}</tfoot>}
        </table>
      </div>
      {further}
    </>
  );
}

function RateLine({ row, behind, more, children }: { readonly row: RatedRow; readonly behind: Behind; readonly more: boolean; readonly children: ReactNode }) {
  const note = useMarginNote();
  const few = row.atRisk > 0 && row.atRisk < fewColonies;
  return (
    <tr {...note(row.note)}>
      <th scope="row" className={row.part === true ? 'rate-part' : undefined}>
        {row.name}
      </th>
      <td className="number">
        <Count row={row} part="atRisk" count={row.atRisk} behind={behind} />
      </td>
      <td className="number">{row.atRisk === 0 ? missing : <Count row={row} part="lost" count={row.lost} behind={behind} />}</td>
      <td className="number">
        {few && <span className="rate-few">{words.few}</span>}
        <span className={few ? 'soft' : undefined}>{row.rate === null ? missing : number(row.rate * 100)}</span>
      </td>
      <td className={typeof children === 'string' ? 'number' : 'rate-picture'}>{children}</td>
      {more && <td className="number">{row.more ?? missing}</td>}
    </tr>
  );
}

function Count({ row, part, count, behind }: { readonly row: RatedRow; readonly part: 'atRisk' | 'lost'; readonly count: number; readonly behind: Behind }) {
  if (count === 0 || row.behind === undefined) return number(count);
  return (
    <BehindFigure behind={behind} title={reviewWords.lossTitle(row.name, part)} selector={row.behind[part]}>
      {number(count)}
    </BehindFigure>
  );
}
