import { Fragment, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { GestureId } from '#shared/brands.ts';
import type { ActLine } from '#shared/contract/acts.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { TakeBack } from '../../parts/TakeBack.tsx';
import { takeBackWords } from '../../parts/takeBackWords.ts';
import { words as frame } from '../../parts/words.ts';
import { NowhereScreen } from '../nowhere/NowhereScreen.tsx';
import './acts.css';
import { words } from './words.ts';

const pageLength = 200;

/** One act at the desk: what it entered, struck or brought back, and taking it back as a whole. */
export function ActScreen({ id }: { readonly id: string }) {
  return /^[1-9]\d{0,14}$/.test(id) ? <Act id={Number(id) as GestureId} /> : <NowhereScreen />;
}

function Act({ id }: { readonly id: GestureId }) {
  const [from, setFrom] = useState(0);
  const { data, fault } = useRead('act.page', { id, from, limit: pageLength }, { keep: true });
  const redo = useWrite('journal.redo');
  const { say } = useNotice();
  const list = useRef<HTMLElement>(null);
  if (data === undefined) {
    return (
      <Page key={fault ? 'fault' : 'wait'} title={fault ? words.noSuch : words.margin} line={fault ? '' : frame.loading}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  const { act, about, canRedo, total, lines, unsorted } = data;
  const turn = (next: number) => {
    setFrom(next);
    list.current?.focus();
  };
  const bringBack = async () => {
    const answer = await redo.send({});
    say(answer.ok ? answer.value.sentence : faultText(answer), answer.ok ? { undoGesture: answer.value.gesture } : {});
  };
  const taken = act.kind === 'undo' || act.kind === 'redo';
  return (
    <Page title={act.title} line={`${words.when(act)} ${words.holds(total)}`}>
      {act.undone ? <p className="needs">{words.undone}</p> : null}
      {about ? (
        <p>
          {words.about} <Link href={`/acts/${about.id}`}>{about.title}</Link>
        </p>
      ) : null}
      {unsorted > 0 ? (
        <p>
          {words.unsorted(unsorted)} {act.undone ? null : <Link href="/book/sort-out">{words.toSortOut}</Link>}
        </p>
      ) : null}
      <div className="acts">
        {taken || act.undone ? null : <TakeBack act={id} label={act.kind === 'import' ? takeBackWords.openImport : takeBackWords.open} />}
        {act.undone && canRedo ? (
          <button type="button" disabled={redo.busy} onClick={() => void bringBack()}>
            {takeBackWords.bringBack}
          </button>
        ) : null}
      </div>
      {total > 0 ? (
        <section ref={list} className="section" aria-label={words.entries} tabIndex={-1}>
          {total > pageLength ? (
            <div className="acts">
              <span>{words.shown(number(from + 1), number(from + lines.length), number(total))}</span>
              <button type="button" disabled={from === 0} onClick={() => turn(Math.max(0, from - pageLength))}>
                {words.earlier}
              </button>
              <button type="button" disabled={from + pageLength >= total} onClick={() => turn(from + pageLength)}>
                {words.later}
              </button>
            </div>
          ) : null}
          <table className="tight act-lines" aria-label={words.entries}>
            <thead>
              <tr>
                <th scope="col">{words.day}</th>
                <th scope="col">{words.entry}</th>
                <th scope="col">{words.colonies}</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <Line key={`${line.what} ${line.entry.id}`} line={line} undone={act.undone} />
              ))}
            </tbody>
          </table>
        </section>
      ) : null}
      <MarginContent heading={words.margin}>
        <p>{words.marginText}</p>
      </MarginContent>
    </Page>
  );
}

function Line({ line: { what, entry, colonies }, undone }: { readonly line: ActLine; readonly undone: boolean }) {
  return (
    <tr>
      <td>{dayText(entry.day)}</td>
      <td>
        {words.what[what]}
        <Link href={`/entries/${entry.id}`}>
          <bdi>{entry.struck ? <s>{entry.sentence}</s> : entry.sentence}</bdi>
        </Link>
        {entry.note !== null && entry.kind !== 'note' ? (
          <>
            {' '}
            <bdi className="soft">{entry.note}</bdi>
          </>
        ) : null}
        {entry.struck && what === 'entered' && !undone ? <span className="needs"> {words.noLonger}</span> : null}
      </td>
      <td>
        {colonies.map((colony, place) => (
          <Fragment key={colony.id}>
            {place > 0 ? ', ' : ''}
            <Link href={`/colonies/${colony.id}`}>
              <bdi>{colony.label}</bdi>
            </Link>
          </Fragment>
        ))}
      </td>
    </tr>
  );
}
