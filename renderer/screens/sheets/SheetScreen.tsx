import { useId, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { ImportReport } from '#shared/contract/book.ts';
import type { SheetMapping } from '#shared/contract/sheets.ts';
import type { Fault } from '#shared/faults.ts';
import { desk } from '../../desk/deskClient.ts';
import { useBook } from '../../desk/useBook.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { ImportPreview } from '../book/ImportPreview.tsx';
import { words as bookWords } from '../book/words.ts';
import { SheetChoices } from './SheetChoices.tsx';
import { SheetColumns } from './SheetColumns.tsx';
import { fileLaidOut, layOut, type SheetFile } from './sheetFile.ts';
import { SheetSample } from './SheetSample.tsx';
import './sheets.css';
import { useSheet } from './useSheet.ts';
import { words } from './words.ts';

/** Somebody's own spreadsheet: what its columns are, how its rows will be read, and what of it is new to the book. */
export function SheetScreen() {
  const [file] = useState(fileLaidOut);
  if (file === null) {
    return (
      <Page title={words.title} line="">
        <Empty sentence={words.noFile} action={<Link href="/book">{words.toBook}</Link>} />
      </Page>
    );
  }
  return <SheetPage file={file} />;
}

function SheetPage({ file }: { readonly file: SheetFile }) {
  const { book } = useBook();
  const [, goTo] = useLocation();
  const { look, mapping, fault, waiting, origin, change, choose } = useSheet(file);
  const enter = useWrite('sheets.enter');
  const { say } = useNotice();
  const [report, setReport] = useState<ImportReport | null>(null);
  const [entered, setEntered] = useState(false);
  const [items, setItems] = useState<Readonly<Record<string, string>>>({});
  const [refusal, setRefusal] = useState<Fault | undefined>();
  const [progress, setProgress] = useState<string | null>(null);
  const id = useId();

  const clear = () => {
    setReport(null);
    setItems({});
    setEntered(false);
    setRefusal(undefined);
  };
  const decide = (next: SheetMapping) => {
    clear();
    change(next);
  };
  const again = (how: Parameters<typeof choose>[0]) => {
    clear();
    choose(how);
  };
  const putAside = () => {
    layOut(null);
    goTo('/book');
  };

  if (look === null || mapping === null || !book) {
    return (
      <Page title={words.title} line={words.line(file.name)}>
        <p role="status">{fault ? null : words.looking(file.name)}</p>
        <FaultNote fault={fault} />
        {fault ? <Link href="/book">{words.toBook}</Link> : null}
      </Page>
    );
  }

  const choice = { file, sheet: look.sheet, mapping };
  const preview = async () => {
    clear();
    setProgress(words.checking);
    const answer = await desk.call('sheets.preview', choice);
    setProgress(null);
    if (answer.ok) setReport(answer.value);
    else setRefusal(answer);
  };
  const mean = async (item: string, meant: string) => {
    const next = { ...items, [item]: meant };
    setItems(next);
    const answer = await desk.call('sheets.preview', { ...choice, items: next });
    if (answer.ok) setReport(answer.value);
    else setRefusal(answer);
  };
  const send = async (seen: ImportReport) => {
    setRefusal(undefined);
    setProgress(bookWords.entering(counted(seen.entered, bookWords.record, bookWords.records)));
    const answer = await enter.send({ ...choice, sha256: seen.sha256, position: seen.position, items });
    setProgress(null);
    if (!answer.ok) return setRefusal(answer);
    const done = answer.value;
    const rest = done.toSortOut.length > 0 ? bookWords.enteredRest(counted(done.toSortOut.length, 'row', 'rows')) : '';
    const said = done.entered > 0 ? bookWords.entered(counted(done.entered, bookWords.record, bookWords.records), done.file) + rest : bookWords.kept(counted(done.toKeep, 'row', 'rows'), done.file);
    say(said, done.gesture === null ? {} : { undoGesture: done.gesture });
    setReport(done);
    setEntered(true);
  };

  const rows = look.sheets.find(({ name }) => name === look.sheet)?.rows ?? 0;
  return (
    <Page title={words.title} line={words.line(file.name)}>
      <div className="choices">
        {look.sheets.length > 1 ? (
          <span className="inline-choice">
            <label htmlFor={`${id}-sheet`}>{words.sheet}</label>{' '}
            <select id={`${id}-sheet`} value={look.sheet} onChange={(event) => again({ sheet: event.target.value })}>
              {look.sheets.map(({ name, rows: count, problem }) => (
                <option key={name} value={name} disabled={problem !== null}>
                  {problem === null ? words.sheetWith(name, counted(count, 'row', 'rows')) : words.sheetWithout(name)}
                </option>
              ))}
            </select>
          </span>
        ) : null}
        <span>{origin === 'saved' ? words.saved : words.guessed}</span>
        <button type="button" className="link" onClick={() => again({ afresh: true })}>
          {words.afresh}
        </button>
      </div>
      {look.above.length > 0 ? <p className="soft">{`${words.headAt(number(look.headerLine))} ${words.above(look.above.map((text) => `“${text}”`).join(', '))}`}</p> : null}
      <FaultNote fault={fault} />
      <SheetChoices look={look} mapping={mapping} bookOrder={book.dateOrder} onChange={decide} onKind={(kind) => again({ kind })} />
      <SheetColumns look={look} mapping={mapping} onChange={decide} />
      <SheetSample sample={look.sample} />
      <section className="section" aria-label={words.questions(number(look.questions.length))}>
        {look.questions.length > 0 ? (
          <>
            <h2 id={`${id}-open`}>{words.questions(number(look.questions.length))}</h2>
            <ul className="open-questions" aria-labelledby={`${id}-open`}>
              {look.questions.map(({ about, header, column, sentence }) => (
                <li key={`${about} ${header ?? ''} ${column ?? ''}`}>{sentence}</li>
              ))}
            </ul>
          </>
        ) : null}
        <div className="acts">
          {look.questions.length === 0 && report === null ? (
            <button type="button" className="main" disabled={waiting || progress !== null} onClick={() => void preview()}>
              {words.seeAll(counted(rows, 'row', 'rows'))}
            </button>
          ) : null}
          {report === null ? (
            <button type="button" onClick={putAside}>
              {words.putAside}
            </button>
          ) : null}
        </div>
        <p role="status">{progress}</p>
        <FaultNote fault={refusal} />
        {refusal?.code === 'moved-on' ? (
          <button type="button" onClick={() => void preview()}>
            {bookWords.again}
          </button>
        ) : null}
        {report ? <ImportPreview report={report} entered={entered} items={items} busy={enter.busy} onMeant={(item, meant) => void mean(item, meant)} onEnter={() => void send(report)} onPutAside={putAside} onTakenBack={clear} /> : null}
      </section>
      <MarginContent heading={words.marginHow}>
        <p>{words.marginHowText}</p>
      </MarginContent>
      <MarginContent heading={words.marginKinds}>
        <p>{words.marginKindsText}</p>
      </MarginContent>
      <MarginContent heading={words.marginKept}>
        <p>{words.marginKeptText}</p>
      </MarginContent>
    </Page>
  );
}
