import { useState } from 'react';
import { Link } from 'wouter';
import type { AnswerSheets } from '#shared/contract/answers.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { copyText } from '../../parts/copyText.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import './answers.css';
import { AnswerSheetTable } from './AnswerSheetTable.tsx';
import { allText } from './answerText.ts';
import { words } from './words.ts';

/** The counts that public loss surveys ask for, to copy or print. */
export function AnswersScreen() {
  const { book } = useBook();
  const { say } = useNotice();
  const [chosen, setChosen] = useState<{ season?: number; quarter?: AnswerSheets['quarter'] }>({});
  const { data, fault, stale } = useRead('losses.answers', chosen, { keep: true });
  const copy = (text: string, what: string) => void copyText(text).then((done) => say(done ? words.copied(what) : words.notCopied));
  if (!data || !book || data.seasons.length === 0) {
    return (
      <Page title={words.title} line={words.line} asOf={data?.asOf}>
        <FaultNote fault={fault} />
        {data ? <Empty sentence={words.empty} action={<Link href="/book">{words.back}</Link>} /> : null}
      </Page>
    );
  }
  const head = words.book(book.name, dayText(data.asOf));
  const soFar = (name: string, complete: boolean) => (complete ? name : `${name}, ${words.soFar}`);
  return (
    <div className="answers">
      <Page
        title={words.title}
        line={words.line}
        asOf={data.asOf}
        action={
          <button type="button" className="main no-print" onClick={() => copy(allText(head, data.sheets), words.title)}>
            {words.copyAll}
          </button>
        }
      >
        <p className="answers-book">{head}</p>
        <div className="choices no-print">
          <label className="inline-choice">
            {words.season}{' '}
            <select value={data.season} onChange={(event) => setChosen({ ...chosen, season: Number(event.target.value) })}>
              {data.seasons.map(({ season, name, complete }) => (
                <option key={season} value={season}>
                  {soFar(name, complete)}
                </option>
              ))}
            </select>
          </label>
          <label className="inline-choice">
            {words.quarter}{' '}
            <select
              value={`${data.quarter.year} ${data.quarter.quarter}`}
              onChange={(event) => {
                const found = data.quarters.find(({ year, quarter }) => `${year} ${quarter}` === event.target.value);
                if (found) setChosen({ ...chosen, quarter: { year: found.year, quarter: found.quarter } });
              }}
            >
              {data.quarters.map(({ year, quarter, name, complete }) => (
                <option key={name} value={`${year} ${quarter}`}>
                  {soFar(name, complete)}
                </option>
              ))}
            </select>
          </label>
          <button type="button" onClick={() => window.print()}>
            {words.print}
          </button>
          <Link href="/losses">{words.back}</Link>
        </div>
        <FaultNote fault={fault} />
        <Awaited stale={stale}>
          {data.sheets.map((sheet) => (
            <AnswerSheetTable key={sheet.key} sheet={sheet} onCopy={copy} />
          ))}
        </Awaited>
        <MarginContent heading={words.marginHow}>
          <p>{words.marginHowText}</p>
        </MarginContent>
      </Page>
    </div>
  );
}
