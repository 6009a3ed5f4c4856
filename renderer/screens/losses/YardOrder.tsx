import { Fragment, useState } from 'react';
import type { LossFactors, PooledYard } from '#shared/contract/lossFactors.ts';
import { IntervalDot, intervalEnd, IntervalScale } from '../../charts/IntervalDots.tsx';
import { percent, percentRange, rate } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { BehindFigure, FigureButton, type Asked } from './BehindFigure.tsx';
import { factorWords as words } from './factorWords.ts';

const pictureWidth = 150;

/** Yards in the order of their losses, after each was pulled towards the whole. */
export function YardOrder({ found }: { readonly found: LossFactors }) {
  const { sentence, rows } = found.yards;
  const [open, setOpen] = useState<string | null>(null);
  const { shown, more } = useFirstRows(rows, words.yardsTable);
  const end = intervalEnd(rows.map((row) => ({ label: row.name, rate: row.pooled, interval: row.range })));
  return (
    <>
      <h3>{words.yards}</h3>
      <p className="sentence factor-sentence">{sentence}</p>
      {rows.length > 0 && (
        <table className="tight yard-order">
          <caption className="visually-hidden">{words.yardsTable}</caption>
          <thead>
            <tr>
              <th scope="col">{words.yard}</th>
              <th scope="col" className="number">{words.own}</th>
              <th scope="col" className="number">{words.pulled}</th>
              <th scope="col">
                {words.range}
                <IntervalScale end={end} width={pictureWidth} />
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Fragment key={row.yard}>
                <Line row={row} end={end} open={open === row.yard} onToggle={() => setOpen(open === row.yard ? null : row.yard)} />
                {open === row.yard && (
                  <tr>
                    <td colSpan={4}>
                      <BehindFigure asked={askedOf(row)} season={found.season} scope={found.scope} />
                    </td>
                  </tr>
                )}
              </Fragment>
            ))}
          </tbody>
        </table>
      )}
      {more}
    </>
  );
}

function askedOf({ yard }: PooledYard): Asked {
  return { factor: 'yard', group: yard };
}

function Line({ row, end, open, onToggle }: { readonly row: PooledYard; readonly end: number; readonly open: boolean; readonly onToggle: () => void }) {
  const note = useMarginNote();
  return (
    <tr {...note(<YardNote row={row} />)}>
      <th scope="row">{row.name}</th>
      <td className="number">
        <FigureButton text={rate(row.lost, row.atRisk, row.wilson)} name={row.name} open={open} onToggle={onToggle} />
      </td>
      <td className="number">{`${percent(row.pooled)}  ${percentRange(row.range)}`}</td>
      <td>
        <IntervalDot row={{ label: row.name, rate: row.pooled, interval: row.range }} end={end} width={pictureWidth} />
      </td>
    </tr>
  );
}

function YardNote({ row }: { readonly row: PooledYard }) {
  return (
    <MarginPart heading={row.name}>
      <p>{words.yardNote(row.name, row.lost, row.atRisk, percent(row.rate), percent(row.pooled))}</p>
      <p className="soft">{words.yardMethod}</p>
    </MarginPart>
  );
}
