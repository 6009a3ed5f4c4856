import { Fragment, useState } from 'react';
import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { IntervalDot, intervalEnd, IntervalScale } from '../../charts/IntervalDots.tsx';
import { number, rate } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { BehindFigure, FigureButton, sameAsked, type Asked } from './BehindFigure.tsx';
import { factorWords as words } from './factorWords.ts';

const pictureWidth = 190;

/** The causes that were written down, as shares of all that were lost, and by yard. */
export function CausesSection({ found }: { readonly found: LossFactors }) {
  const { causes } = found;
  const note = useMarginNote();
  const [open, setOpen] = useState<Asked | null>(null);
  const toggle = (asked: Asked) => setOpen(sameAsked(open, asked) ? null : asked);
  const rows = causes.shares.map((share) => ({ ...share, row: { label: share.cause, rate: share.share, interval: share.range } }));
  const end = intervalEnd(rows.map(({ row }) => row));
  return (
    <div className="causes">
      <p className="sentence factor-sentence">{causes.sentence}</p>
      {causes.lost > 0 && (
        <table className="tight cause-table">
          <caption className="visually-hidden">{words.causesTable}</caption>
          <thead>
            <tr>
              <th scope="col">{words.cause}</th>
              <th scope="col" className="number">{words.named}</th>
              <th scope="col">
                {words.share}
                <IntervalScale end={end} width={pictureWidth} />
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ cause, count, of, range, row }) => {
              const asked: Asked = { factor: 'cause', group: cause };
              return (
                <Fragment key={cause}>
                  <tr {...note(<CauseNote cause={cause} />)}>
                    <th scope="row">{cause}</th>
                    <td className="number">
                      <FigureButton text={rate(count, of, range)} name={cause} open={sameAsked(open, asked)} onToggle={() => toggle(asked)} />
                    </td>
                    <td>
                      <IntervalDot row={row} end={end} width={pictureWidth} />
                    </td>
                  </tr>
                  {sameAsked(open, asked) && (
                    <tr>
                      <td colSpan={3}>
                        <BehindFigure asked={asked} season={found.season} scope={found.scope} />
                      </td>
                    </tr>
                  )}
                </Fragment>
              );
            })}
          </tbody>
        </table>
      )}
      <CausesByYard found={found} open={open} onToggle={toggle} />
    </div>
  );
}

function CausesByYard({ found, open, onToggle }: { readonly found: LossFactors; readonly open: Asked | null; readonly onToggle: (asked: Asked) => void }) {
  const { byYard } = found.causes;
  const { shown, more } = useFirstRows(byYard.rows, words.byYard);
  if (byYard.rows.length === 0) return null;
  return (
    <>
      <h3>{words.byYard}</h3>
      <p className="sentence factor-sentence">{byYard.sentence}</p>
      {byYard.rows.length > 1 && (
        <div className="scroll" tabIndex={0} role="group" aria-label={words.byYard}>
          <table className="tight cause-yards">
            <caption className="visually-hidden">{words.byYard}</caption>
            <thead>
              <tr>
                <th scope="col">{words.yard}</th>
                {byYard.causes.map((cause) => (
                  <th key={cause} scope="col" className="number">{cause}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map(({ yard, name, counts }) => (
                <Fragment key={yard}>
                  <tr>
                    <th scope="row">{name}</th>
                    {counts.map((count, at) => {
                      const asked: Asked = { factor: 'causeByYard', group: byYard.causes[at] ?? '', yard };
                      return (
                        <td key={byYard.causes[at]} className="number">
                          {count === 0 ? <span className="soft">0</span> : <FigureButton text={number(count)} name={`${name}, ${byYard.causes[at] ?? ''}`} open={sameAsked(open, asked)} onToggle={() => onToggle(asked)} />}
                        </td>
                      );
                    })}
                  </tr>
                  {open?.factor === 'causeByYard' && open.yard === yard && (
                    <tr>
                      <td colSpan={byYard.causes.length + 1}>
                        <BehindFigure asked={open} season={found.season} scope={found.scope} />
                      </td>
                    </tr>
                  )}
                </Fragment>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {byYard.rows.length > 1 && more}
    </>
  );
}

function CauseNote({ cause }: { readonly cause: string }) {
  return (
    <MarginPart heading={`${cause.charAt(0).toUpperCase()}${cause.slice(1)}`}>
      <p>{words.causesNote}</p>
    </MarginPart>
  );
}
