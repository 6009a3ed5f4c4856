import { Fragment, useEffect, useId, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { WaitingRow } from '#shared/contract/sortOut.ts';
import { grouped } from '#shared/grouped.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { missing, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { MendForm } from './MendForm.tsx';
import './sortOut.css';
import { words } from './words.ts';

const pageLength = 100;
const most = 500;

/** The rows of imported files that could not stand, each to be mended and entered, or set aside. */
export function SortOutScreen() {
  const { status, book } = useBook();
  const [which, setWhich] = useState<'waiting' | 'aside'>('waiting');
  const [shown, setShown] = useState(pageLength);
  const [open, setOpen] = useState<string | null>(null);
  const { data, fault, stale } = useRead('sortOut.list', { which, from: 0, limit: shown }, { keep: true });
  const enterReady = useWrite('sortOut.enterReady');
  const bringBack = useWrite('sortOut.bringBack');
  const { say } = useNotice();
  const table = useRef<HTMLDivElement>(null);
  /** The row whose button the keyboard goes to once the list is there without the one just done. */
  const goTo = useRef<string | null>(null);
  const id = useId();

  useEffect(() => {
    if (goTo.current === null || open !== null) return;
    const button = table.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(goTo.current)}"] button`);
    (button ?? document.querySelector<HTMLElement>('main h1'))?.focus();
    goTo.current = null;
  }, [data, open]);

  if (!status || !book || data === undefined) {
    return (
      <Page title={words.title} line={words.line}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  const { counts, rows, total } = data;
  const close = (next: string) => {
    goTo.current = next;
    setOpen(null);
  };
  /** The row after this one, or the one before at the end. */
  const neighbour = (key: string) => {
    const at = rows.findIndex((row) => row.key === key);
    return (rows[at + 1] ?? rows[at - 1])?.key ?? '';
  };
  const sendReady = async () => {
    const answer = await enterReady.send({});
    say(answer.ok ? answer.value.sentence : faultText(answer), answer.ok ? { undoGesture: answer.value.gesture } : {});
  };
  const sendBack = async (row: WaitingRow) => {
    goTo.current = neighbour(row.key);
    const answer = await bringBack.send({ key: row.key });
    say(answer.ok ? words.backDone(row.line, row.file) : faultText(answer));
  };
  const more = Math.min(pageLength, total - rows.length, most - rows.length);
  const files = grouped(rows, (row) => row.file);

  return (
    <Page
      title={words.title}
      line={words.line}
      action={
        counts.ready > 0 && which === 'waiting' ? (
          <button type="button" className="main" title={words.readyLine} disabled={enterReady.busy} onClick={() => void sendReady()}>
            {words.enterReady(counts.ready)}
          </button>
        ) : undefined
      }
    >
      {counts.waiting + counts.aside > 0 ? (
        <div className="choices">
          <span className="inline-choice">
            <label htmlFor={id}>{words.show}</label>{' '}
            <select
              id={id}
              value={which}
              onChange={(event) => {
                setOpen(null);
                setShown(pageLength);
                setWhich(event.target.value === 'aside' ? 'aside' : 'waiting');
              }}
            >
              <option value="waiting">{words.waiting(counts.waiting)}</option>
              <option value="aside">{words.aside(counts.aside)}</option>
            </select>
          </span>
          {counts.entered > 0 ? <span className="soft">{words.entered(counts.entered)}</span> : null}
        </div>
      ) : null}
      <FaultNote fault={fault} />
      <Awaited stale={stale}>
        {rows.length === 0 ? (
          which === 'waiting' ? <Empty sentence={words.none} action={<Link href="/book">{words.toBook}</Link>} /> : <p>{words.noneAside}</p>
        ) : (
          <div ref={table} className="sort-out-list">
            {[...files].map(([file, of]) => (
              <section key={file} className="section" aria-label={file}>
                <h2>
                  <bdi>{words.file(file, of.length)}</bdi>
                </h2>
                <table className="tight sort-out">
                  <thead>
                    <tr>
                      <th scope="col" className="number">
                        {words.lineNumber}
                      </th>
                      <th scope="col">{words.column}</th>
                      <th scope="col">{words.value}</th>
                      <th scope="col">{which === 'aside' ? words.reason : words.sentence}</th>
                      <td />
                    </tr>
                  </thead>
                  <tbody>
                    {of.map((row) => (
                      <Fragment key={row.key}>
                        <tr data-row={row.key}>
                          <th scope="row" className="number">
                            {number(row.line)}
                          </th>
                          <td>
                            <bdi>{row.column ?? missing}</bdi>
                          </td>
                          <td className="value">
                            <bdi>{row.value === '' ? missing : row.value}</bdi>
                          </td>
                          <td>
                            {row.aside ? (
                              <bdi>{words.asideSince(row.aside.at, row.aside.reason)}</bdi>
                            ) : (
                              <span className={row.ready === null ? '' : 'ready'}>
                                <bdi>{row.ready === null ? row.sentence : words.ready(row.ready)}</bdi>
                              </span>
                            )}
                          </td>
                          <td className="number">
                            {row.aside ? (
                              <button type="button" className="link" aria-label={words.bringBackName(row.line, row.file)} disabled={bringBack.busy} onClick={() => void sendBack(row)}>
                                {words.bringBack}
                              </button>
                            ) : open === row.key ? null : (
                              <button type="button" className="link" aria-label={words.openName(row.line, row.file)} onClick={() => setOpen(row.key)}>
                                {words.open}
                              </button>
                            )}
                          </td>
                        </tr>
                        {open === row.key ? (
                          <tr>
                            <td colSpan={5}>
                              <MendForm row={row} book={book} today={status.today} onLeave={() => close(row.key)} onDone={() => close(neighbour(row.key))} />
                            </td>
                          </tr>
                        ) : null}
                      </Fragment>
                    ))}
                  </tbody>
                </table>
              </section>
            ))}
            {more > 0 ? (
              <div className="acts">
                <button type="button" onClick={() => setShown(rows.length + more)}>
                  {words.more(more)}
                </button>
              </div>
            ) : null}
          </div>
        )}
      </Awaited>
      <MarginContent heading={words.margin}>
        <p>{words.marginText}</p>
      </MarginContent>
    </Page>
  );
}
