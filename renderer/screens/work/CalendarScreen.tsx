import { useId, useState, type ChangeEvent, type FormEvent } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { Fault } from '#shared/faults.ts';
import { useOffer } from '../../commands/offers.ts';
import { desk } from '../../desk/deskClient.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { download } from '../../parts/download.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayWithWeekday } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { hoursWords as words } from './hoursWords.ts';
import { clock } from './planWeeks.ts';
import { WorkNav } from './WorkNav.tsx';
import './work.css';

/** The plan out to the person's calendar, and other calendars' time in. */
export function CalendarScreen() {
  const { data, fault } = useRead('calendar.status', {});
  return (
    <Page title={words.calendarTitle} line={words.calendarLine}>
      <WorkNav />
      <FaultNote fault={fault} />
      {data === undefined ? null : (
        <Entering>
          <Out status={data} />
          <Busy status={data} />
        </Entering>
      )}
    </Page>
  );
}

type Status = OutputOf<'calendar.status'>;

function Out({ status }: { readonly status: Status }) {
  const id = useId();
  const told = useWrite('calendar.export');
  const follow = useWrite('calendar.follow');
  const { say } = useNotice();
  const [path, setPath] = useState(status.file?.path ?? '');
  const [fault, setFault] = useState<Fault | undefined>();
  const save = async () => {
    const answer = await told.send({});
    if (!answer.ok) return setFault(answer);
    setFault(undefined);
    // A file without an event is nothing to bring into a calendar.
    if (answer.value.events + answer.value.cancelled === 0) return say(words.nothingToTell);
    download(answer.value.fileName, answer.value.text, 'text/calendar;charset=utf-8');
    say(words.downloaded(answer.value.fileName, answer.value.events, answer.value.cancelled));
  };
  useOffer('save the calendar', told.busy ? null : () => void save());
  const keep = async (next: string | null) => {
    const answer = await follow.send({ path: next });
    setFault(answer.ok ? undefined : answer);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (path.trim() !== '') void keep(path.trim());
  };
  return (
    <section className="section work-part" aria-labelledby={id}>
      <h2 id={id}>{words.out}</h2>
      <p className="soft">{words.outHelp}</p>
      <p>{words.outCount(status.events)}</p>
      <div className="acts">
        <button type="button" disabled={told.busy} onClick={() => void save()}>
          {words.download}
        </button>
      </div>
      <h3>{words.live}</h3>
      <p className="soft">{words.liveHelp}</p>
      {status.file === null ? null : (
        <p>
          {words.following(status.file.path)} {status.file.written === null ? '' : words.written(status.file.written)} {status.file.trouble === null ? null : <span className="needs">{status.file.trouble}</span>}
        </p>
      )}
      <form onSubmit={submit} noValidate>
        <div className="field path-field">
          <label htmlFor={`${id}path`}>{words.path}</label>
          <input id={`${id}path`} type="text" autoComplete="off" spellCheck={false} value={path} aria-invalid={fault?.field === 'path' || undefined} onChange={(event) => setPath(event.target.value)} />
        </div>
        <FaultNote fault={fault} />
        <div className="acts">
          <button type="submit" disabled={follow.busy || path.trim() === ''}>
            {words.follow}
          </button>
          {status.file === null ? null : (
            <button type="button" className="quiet" disabled={follow.busy} onClick={() => void keep(null)}>
              {words.unfollow}
            </button>
          )}
        </div>
      </form>
      <MarginContent heading={words.marginCommand}>
        <p>{words.command}</p>
      </MarginContent>
      <MarginContent heading={words.marginTold}>
        <p>{words.marginToldText}</p>
      </MarginContent>
    </section>
  );
}

const largest = 8 * 1024 * 1024;
/** So many events that cannot be read are named at once; the others open. */
const unreadAtOnce = 10;

function Unread({ own }: { readonly own: readonly string[] }) {
  return (
    <ul>
      {own.map((one, at) => (
        // Two of them may say the same.
        <li key={`${at} ${one}`}>{one}</li>
      ))}
    </ul>
  );
}

function Busy({ status }: { readonly status: Status }) {
  const id = useId();
  const { data: hours } = useRead('work.hours', {});
  const keepBusy = useWrite('calendar.keepBusy');
  const drop = useWrite('calendar.dropBusy');
  const { say } = useNotice();
  const people = hours?.hours.people.map(({ name }) => name) ?? [];
  const [person, setPerson] = useState('');
  const [file, setFile] = useState<{ name: string; text: string } | null>(null);
  const [seen, setSeen] = useState<OutputOf<'calendar.look'> | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const whose = people.includes(person) ? person : (people[0] ?? '');
  const choose = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const chosen = target.files?.[0];
    setSeen(null);
    setFile(null);
    setFault(undefined);
    setSays(null);
    if (chosen === undefined) return;
    if (chosen.size > largest) return setSays(words.tooLarge);
    const text = await chosen.text().catch(() => null);
    if (text === null) return setSays(words.unreadable);
    const answer = await desk.call('calendar.look', { file: { name: chosen.name, text } });
    if (!answer.ok) return setFault(answer);
    setFile({ name: chosen.name, text });
    setSeen(answer.value);
  };
  const keep = async () => {
    if (file === null) return;
    const answer = await keepBusy.send({ file, person: whose });
    if (!answer.ok) return setFault(answer);
    say(words.busyKept(seen?.name ?? file.name, seen?.unread.length ?? 0));
    setSeen(null);
    setFile(null);
  };
  const dropped = async ({ key, name }: { readonly key: string; readonly name: string }) => {
    const answer = await drop.send({ key });
    if (answer.ok) say(words.busyDropped(name));
    else setFault(answer);
  };
  return (
    <section className="section work-part" aria-labelledby={id}>
      <h2 id={id}>{words.busy}</h2>
      <p className="soft">{words.busyHelp}</p>
      <div className="fields busy-file">
        <div className="field">
          <label htmlFor={`${id}file`}>{words.busyFile}</label>
          <input id={`${id}file`} type="file" accept=".ics,text/calendar" onChange={(event) => void choose(event)} />
        </div>
        <div className="field">
          <label htmlFor={`${id}person`}>{words.busyPerson}</label>
          <select id={`${id}person`} value={whose} onChange={(event) => setPerson(event.target.value)}>
            {people.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </div>
      </div>
      {says === null ? null : <p className="field-fault">{says}</p>}
      <FaultNote fault={fault} />
      {seen === null ? null : (
        <>
          <p role="status" className="busy-seen">{words.busyLook(seen.name, seen.days, seen.events, seen.free)}</p>
          {seen.unread.length === 0 ? null : (
            <>
              <p className="needs">{words.busyUnread(seen.unread.length)}</p>
              <Unread own={seen.unread.slice(0, unreadAtOnce)} />
              {seen.unread.length <= unreadAtOnce ? null : (
                <details>
                  <summary>{words.busyMore(seen.unread.length - unreadAtOnce)}</summary>
                  <Unread own={seen.unread.slice(unreadAtOnce)} />
                </details>
              )}
            </>
          )}
          <ol className="lines work-days busy-spans" tabIndex={0} aria-label={words.busy}>
            {seen.spans.map((span) => (
              <li key={`${span.day} ${span.from} ${span.what}`}>
                <span>{dayWithWeekday(span.day)}</span>
                <span>
                  {span.from === null || span.until === null ? words.allDay : `${clock(span.from)}–${clock(span.until)}`}, {span.what}
                </span>
              </li>
            ))}
          </ol>
          <div className="acts">
            <button type="button" disabled={keepBusy.busy || seen.spans.length === 0} onClick={() => void keep()}>
              {words.busyKeep}
            </button>
          </div>
        </>
      )}
      <h3>{words.busyList}</h3>
      {status.busy.length === 0 ? <p className="soft">{words.busyNone}</p> : null}
      <ul>
        {status.busy.map((one) => (
          <li key={one.key}>
            {one.person}: {one.name}, {words.busyDays(new Set(one.spans.map(({ day }) => day)).size, one.unread, one.at)}{' '}
            <button type="button" className="link" disabled={drop.busy} onClick={() => void dropped(one)}>
              {words.busyDrop}
              <span className="visually-hidden"> ({one.name})</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
