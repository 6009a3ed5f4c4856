import { useId, useState } from 'react';
import { lineGroupings, type LineGrouping, type LineRow, type LinesPicture } from '#shared/contract/lines.ts';
import type { MassUnit } from '#shared/units.ts';
import { fixed, massFromPounds, missing, number, rate } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { useLineRows } from './useLineRows.ts';
import { words } from './words.ts';

/** How the colonies of each line did, all seasons and yards; the whole operation below. */
export function LineTable({ picture, unit }: { readonly picture: LinesPicture; readonly unit: MassUnit }) {
  const [by, setBy] = useState<LineGrouping>('bees');
  const heading = useId();
  const { rows, total, load } = useLineRows(picture, by);
  const { shown, more } = useFirstRows(rows, words.howDid, { total, load });
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{words.howDid}</h2>
      <div className="choices">
        <label className="inline-choice">
          {words.by}{' '}
          <select value={by} onChange={(event) => setBy(lineGroupings.find((one) => one === event.target.value) ?? 'bees')}>
            {lineGroupings.map((one) => (
              <option key={one} value={one}>
                {words.groupings[one]}
              </option>
            ))}
          </select>
        </label>
      </div>
      {rows.length === 0 ? <p className="soft">{words.noRecord}</p> : <p className="soft">{words.ranges}</p>}
      <div className="scroll lines-table" tabIndex={0} role="group" aria-labelledby={heading}>
        <table className="tight" aria-labelledby={heading}>
          <thead>
            <tr>
              <th scope="col">{words.groupHeads[by]}</th>
              <th scope="col" className="number">
                {words.colonies}
              </th>
              <th scope="col" className="number">
                {words.aliveNow}
              </th>
              <th scope="col" className="number">
                {words.lostOfWintered}
              </th>
              <th scope="col" className="number">
                {words.yield(unit)}
              </th>
              <th scope="col" className="number">
                {words.temper}
              </th>
              <th scope="col" className="number">
                {words.swarmed}
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Line key={row.name} row={row} unit={unit} />
            ))}
          </tbody>
          <tfoot>
            <Line row={picture.lines.all} unit={unit} />
          </tfoot>
        </table>
      </div>
      {more}
    </section>
  );
}

function Line({ row, unit }: { readonly row: LineRow; readonly unit: MassUnit }) {
  const { yield: honey, temper, swarming } = row;
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td className="number">{number(row.colonies)}</td>
      <td className="number">{number(row.alive)}</td>
      <td className="number">
        <span className="line-rate">{rate(row.lost, row.wintered, row.wilson)}</span>
        <span className="line-says soft small"> {row.says}</span>
      </td>
      <td className="number line-rate">{meanText(honey.n, massFromPounds(honey.lb, unit), honey.interval?.map((limit) => massFromPounds(limit, unit)))}</td>
      <td className="number line-rate">{meanText(temper.n, fixed(temper.mean, 1), temper.interval?.map((limit) => fixed(limit, 1)))}</td>
      <td className="number line-rate">{rate(swarming.count, swarming.of, swarming.interval)}</td>
    </tr>
  );
}

/** `62  (55–69), n 24`; an en dash where nothing is known, the range left out where one value has none. */
function meanText(n: number, mean: string, limits: readonly string[] | undefined): string {
  if (n === 0) return missing;
  return `${mean}${limits === undefined ? '' : `  (${limits.join('–')})`}, n ${number(n)}`;
}
