import { useEffect, useId, useRef, useState } from 'react';
import { navigate } from 'wouter/use-hash-location';
import type { ImportReport } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { useOffer } from '../../commands/offers.ts';
import { desk } from '../../desk/deskClient.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { base64Of, largestFile } from '../../parts/fileIn.ts';
import { counted, percent } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { layOut } from '../sheets/sheetFile.ts';
import { takeOver } from './handover.ts';
import { ImportPreview } from './ImportPreview.tsx';
import { words } from './words.ts';

interface Chosen {
  readonly name: string;
  readonly base64: string;
}

const workbook = /\.xlsx?$/i;

/** Choose a file, look at what is in it, then enter it as one act. */
export function ImportRecords() {
  const enter = useWrite('import.enter');
  const { say } = useNotice();
  const [progress, setProgress] = useState<string | null>(null);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [report, setReport] = useState<ImportReport | null>(null);
  const [entered, setEntered] = useState(false);
  const [items, setItems] = useState<Readonly<Record<string, string>>>({});
  const [problem, setProblem] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const picker = useRef<HTMLInputElement>(null);
  const preview = useRef<HTMLDivElement>(null);
  /** The file now looked at; what comes back late for an earlier one is dropped. */
  const turn = useRef(0);
  const id = useId();

  const putAside = () => {
    turn.current += 1;
    setProgress(null);
    setChosen(null);
    setReport(null);
    setItems({});
    setEntered(false);
    setProblem(null);
    setFault(undefined);
  };

  const look = async (file: Chosen, meant: Readonly<Record<string, string>> = {}) => {
    const mine = ++turn.current;
    setFault(undefined);
    setReport(null);
    setEntered(false);
    setProgress(words.checking(file.name));
    const answer = workbook.test(file.name) ? null : await desk.call('import.preview', { file, items: meant });
    if (mine !== turn.current) return;
    // What is not in the exchange form may be a sheet of the person's own, with a page that asks what its columns mean.
    if (answer === null || (!answer.ok && answer.code === 'file-unreadable')) {
      const sheet = await desk.call('sheets.look', { file });
      if (mine !== turn.current) return;
      if (sheet.ok) {
        layOut(file);
        return navigate('/book/sheet');
      }
      setProgress(null);
      return setFault(answer ?? sheet);
    }
    setProgress(null);
    if (!answer.ok) return setFault(answer);
    setReport(answer.value);
  };

  const take = async (file: File) => {
    putAside();
    if (file.size > largestFile) return setProblem(words.tooLarge);
    const mine = ++turn.current;
    setProgress(words.reading(file.name, percent(0)));
    try {
      const base64 = await base64Of(file, (share) => {
        if (mine === turn.current) setProgress(words.reading(file.name, percent(share)));
      });
      if (mine !== turn.current) return;
      const read = { name: file.name, base64 };
      setChosen(read);
      await look(read);
    } catch {
      if (mine !== turn.current) return;
      setProgress(null);
      setProblem(words.unreadable);
    }
  };

  /** What is meant by an item changes what would be entered, so the preview is made again; what is shown stands until then. */
  const mean = async (file: Chosen, item: string, meant: string) => {
    const mine = ++turn.current;
    const next = { ...items, [item]: meant };
    setItems(next);
    const answer = await desk.call('import.preview', { file, items: next });
    if (mine !== turn.current) return;
    if (answer.ok) setReport(answer.value);
    else setFault(answer);
  };

  const send = async (seen: ImportReport, file: Chosen) => {
    setFault(undefined);
    setProgress(words.entering(counted(seen.entered, words.record, words.records)));
    const answer = await enter.send({ file, sha256: seen.sha256, position: seen.position, items });
    setProgress(null);
    if (!answer.ok) return setFault(answer);
    const done = answer.value;
    const rest = done.toSortOut.length > 0 ? words.enteredRest(counted(done.toSortOut.length, 'row', 'rows')) : '';
    const said = done.entered > 0 ? words.entered(counted(done.entered, words.record, words.records), done.file) + rest : words.kept(counted(done.toKeep, 'row', 'rows'), done.file);
    say(said, done.gesture === null ? {} : { undoGesture: done.gesture });
    setReport(done);
    setEntered(true);
  };

  // A file chosen on the start page comes along to the new book.
  useEffect(() => {
    const brought = takeOver();
    if (brought) void take(brought);
    // Once, when the screen appears.
  }, []);

  useOffer('choose a file', () => {
    picker.current?.scrollIntoView({ block: 'center' });
    picker.current?.focus();
  });

  useEffect(() => {
    if (report !== null) preview.current?.scrollIntoView({ block: 'nearest' });
  }, [report]);

  return (
    <section className="section" aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>{words.importHeading}</h2>
      <p className="soft">{words.importLine}</p>
      <div className="one-field">
        <div className="field">
          <label htmlFor={id}>{words.choose}</label>
          <input
            ref={picker}
            id={id}
            type="file"
            accept=".csv,.tsv,.txt,.xlsx,.xls,text/csv"
            disabled={enter.busy}
            // The same file, mended, can be chosen again.
            onClick={(event) => {
              event.currentTarget.value = '';
            }}
            onChange={(event) => {
              const file = event.target.files?.[0];
              if (file) void take(file);
            }}
          />
        </div>
      </div>
      <p role="status">{progress}</p>
      {problem ? (
        <div className="fault-note" role="alert">
          <p>{problem}</p>
        </div>
      ) : null}
      <FaultNote fault={fault} />
      {fault?.code === 'moved-on' && chosen ? (
        <button type="button" onClick={() => void look(chosen, items)}>
          {words.again}
        </button>
      ) : null}
      <div ref={preview}>
        {report && chosen ? (
          <ImportPreview
            report={report}
            entered={entered}
            items={items}
            busy={enter.busy}
            onMeant={(item, meant) => void mean(chosen, item, meant)}
            onEnter={() => void send(report, chosen)}
            onTakenBack={putAside}
            onPutAside={() => {
              putAside();
              if (picker.current) picker.current.value = '';
            }}
          />
        ) : null}
      </div>
    </section>
  );
}
