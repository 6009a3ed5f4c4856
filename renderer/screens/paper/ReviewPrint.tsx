import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { useOffer } from '../../commands/offers.ts';
import { desk } from '../../desk/deskClient.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { groupings, type Grouping } from '#shared/contract/lossSections.ts';
import { runningLine } from '#shared/paperLayout.ts';
import type { Fault } from '#shared/faults.ts';
import { download } from '../../parts/download.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { reviewWords } from '../losses/reviewWords.ts';
import { useUnited } from '../losses/useUnited.ts';
import './paper.css';
import { PaperSections } from './PaperSections.tsx';
import { words } from './words.ts';

/** Groupings that are not on paper unless they are asked for. */
const extra: readonly Grouping[] = ['source', 'queenAge', 'line', 'treated', 'mites', 'stores'];

/** No season has this number: what stood in the address is none. */
const none = -1;

/** The season review on paper, as tables in files, and as one page to send. */
export function ReviewPrint({ season }: { readonly season?: string }) {
  const { book } = useBook();
  const { say } = useNotice();
  const [united] = useUnited();
  const [chosen, setChosen] = useState<number | undefined>(season === undefined ? undefined : /^\d{4}$/.test(season) ? Number(season) : none);
  const [fault, setFault] = useState<Fault | undefined>();
  const [opened, setOpened] = useState(false);
  const [by, setBy] = useState<Grouping | ''>('');
  const asked = { united, ...(by === '' ? {} : { by }), ...(chosen === undefined || chosen === none ? {} : { season: chosen }) };
  const { data: paper, fault: unread, stale } = useRead('losses.paper', asked, { keep: true });
  const { data: found } = useRead('losses.files', asked, { keep: true, enabled: opened });
  // A season that the book does not have is answered with its last one, which nobody asked for.
  const known = paper !== undefined && (chosen === undefined || paper.seasons.some((one) => one.season === chosen));
  // The title is the file's name when the page is printed into one.
  const title = paper && book && known ? `${paper.title}, ${book.name}` : paper || unread ? words.page : words.loading;
  useEffect(() => {
    document.title = title;
  }, [title]);
  const ready = known && book !== undefined && !stale && paper.sections.length > 0;
  useOffer('print the review', ready ? () => window.print() : null);
  const save = (name: string, text: string) => {
    download(name, text);
    say(words.saved(name));
  };
  const saveHtml = async () => {
    if (paper === undefined) return;
    const answer = await desk.call('losses.report', { ...asked, format: 'html', season: paper.season });
    setFault(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    download(answer.value.name, answer.value.text, 'text/html;charset=utf-8');
    say(words.saved(answer.value.name));
  };
  const saveAll = () => {
    for (const { name, text } of found?.files ?? []) download(name, text);
    say(words.savedAll(found?.files.length ?? 0));
  };
  return (
    <main className="review-paper">
      <div className="review-paper-acts no-print">
        {ready || stale ? (
          <>
            <button type="button" className="main" disabled={!ready} onClick={() => window.print()}>
              {words.print}
            </button>
            <button type="button" disabled={!ready} onClick={() => void saveHtml()}>
              {words.html}
            </button>
          </>
        ) : null}
        {paper && known && paper.seasons.length > 1 ? (
          <label className="inline-choice">
            {words.season}{' '}
            <select value={paper.season} onChange={(event) => setChosen(Number(event.target.value))}>
              {paper.seasons.map((one) => (
                <option key={one.season} value={one.season}>
                  {one.name}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <label className="inline-choice">
          {words.by}{' '}
          <select value={by} onChange={(event) => setBy(groupings.find((known) => known === event.target.value) ?? '')}>
            <option value="">{words.byUsual}</option>
            {extra.map((known) => (
              <option key={known} value={known}>
                {reviewWords.groupings[known]}
              </option>
            ))}
          </select>
        </label>
        <Link href="/losses">{words.back}</Link>
      </div>
      {ready ? (
        <details className="no-print review-paper-files" onToggle={(event) => setOpened(event.currentTarget.open)}>
          <summary>{words.files}</summary>
          <button type="button" disabled={!found} onClick={saveAll}>
            {words.allFiles}
          </button>
          <ul>
            {(found?.files ?? []).map(({ name, title: what, rows, text }) => (
              <li key={name}>
                <button type="button" className="link" onClick={() => save(name, text)}>
                  {name}
                </button>{' '}
                <span className="soft">{words.fileOf(what, rows)}</span>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <FaultNote fault={fault ?? unread} />
      {paper && book && known ? (
        <article>
          <style>{`@page review-paper { @top-right { content: ${runningLine(words.line(book.name, dayText(paper.asOf)))}; font: 9pt sans-serif; } }`}</style>
          <h1>{paper.title}</h1>
          <p>{words.line(book.name, dayText(paper.asOf))}</p>
          {paper.sections.length === 0 ? <p>{words.empty}</p> : null}
          <PaperSections sections={paper.sections} />
        </article>
      ) : (
        <>
          <h1>{paper || unread ? words.page : words.loading}</h1>
          {paper && !known && !stale ? <p>{words.noSeason(season ?? '')}</p> : null}
        </>
      )}
    </main>
  );
}
