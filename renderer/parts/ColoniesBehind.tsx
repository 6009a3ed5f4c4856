import { useCallback, useId, useMemo, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { BehindSelector } from '#shared/contract/lossSections.ts';
import { useRead } from '../desk/useDesk.ts';
import './behind.css';
import { FaultNote } from './FaultNote.tsx';
import { counted, dayText, missing } from './format.ts';
import { words } from './words.ts';

/** Which figure of a section is opened; one at a time. */
export interface Behind {
  readonly id: string;
  readonly shown: { readonly title: string; readonly selector: BehindSelector } | null;
  show(title: string, selector: BehindSelector, from: HTMLElement): void;
  hide(): void;
}

/** Gives a section one place in which the colonies behind any of its figures are shown. */
export function useBehind(): Behind {
  const id = useId();
  const [shown, setShown] = useState<Behind['shown']>(null);
  const from = useRef<HTMLElement | null>(null);
  const show = useCallback((title: string, selector: BehindSelector, figure: HTMLElement) => {
    from.current = figure;
    setShown((before) => (before?.title === title ? null : { title, selector }));
  }, []);
  const hide = useCallback(() => {
    setShown(null);
    from.current?.focus();
  }, []);
  return useMemo(() => ({ id, shown, show, hide }), [id, shown, show, hide]);
}

export interface BehindFigureProps {
  readonly behind: Behind;
  /** What the colonies are, for the list's head: "Quarry: lost in winter". */
  readonly title: string;
  readonly selector: BehindSelector;
  /** The figure as it is shown. */
  readonly children: string;
}

/** A figure that opens the colonies it counted. */
export function BehindFigure({ behind, title, selector, children }: BehindFigureProps) {
  const open = behind.shown?.title === title;
  return (
    <button type="button" className="figure-behind" aria-expanded={open} aria-controls={behind.id} aria-label={`${children}, ${words.behind.open(title)}`} onClick={(event) => behind.show(title, selector, event.currentTarget)}>
      {children}
    </button>
  );
}

/** The list of the colonies behind the opened figure, where the section puts it. */
export function ColoniesBehind({ behind }: { readonly behind: Behind }) {
  return (
    <div id={behind.id} className="behind-place" aria-live="polite">
      {behind.shown === null ? null : <BehindList key={behind.shown.title} title={behind.shown.title} selector={behind.shown.selector} onClose={behind.hide} />}
    </div>
  );
}

const page = 50;

function BehindList({ title, selector, onClose }: { readonly title: string; readonly selector: BehindSelector; readonly onClose: () => void }) {
  const [most, setMost] = useState(page);
  const { data, fault } = useRead('losses.behind', { selector, most }, { keep: true });
  return (
    <section className="behind" aria-label={words.behind.heading(title)}>
      <div className="behind-head">
        <h3>{words.behind.heading(title)}</h3>
        <button type="button" className="link" onClick={onClose}>
          {words.behind.close}
        </button>
      </div>
      <FaultNote fault={fault} />
      {data?.note && <p className="soft small">{data.note}</p>}
      {data && data.colonies.length === 0 && <p className="soft">{words.behind.none}</p>}
      {data && data.colonies.length > 0 && (
        <div className="scroll behind-list" tabIndex={0} role="group" aria-label={title}>
          <table className="tight">
            <caption className="visually-hidden">{title}</caption>
            <thead>
              <tr>
                <th scope="col">{words.behind.colony}</th>
                <th scope="col">{words.behind.yard}</th>
                <th scope="col">{words.behind.since}</th>
                <th scope="col">{words.behind.ended}</th>
                <th scope="col">{words.behind.how}</th>
              </tr>
            </thead>
            <tbody>
              {data.colonies.map((colony) => (
                <tr key={colony.id}>
                  <th scope="row">
                    <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
                  </th>
                  <td>{colony.yard}</td>
                  <td>{dayText(colony.start)}</td>
                  <td>{colony.end === null ? missing : dayText(colony.end)}</td>
                  <td>
                    {words.behind.endings[colony.how]}
                    {colony.causes.length > 0 && `: ${colony.causes.join('; ')}`}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {data && data.total > data.colonies.length && (
        <p className="soft small">
          {words.behind.more(data.colonies.length, counted(data.total, 'colony', 'colonies'))}{' '}
          <button type="button" className="link" onClick={() => setMost(Math.min(2000, most * 4))}>
            {words.behind.showMore}
          </button>
        </p>
      )}
    </section>
  );
}
