import { useEffect, useId, useMemo, useRef, useState, type FormEvent } from 'react';
import { Link, useLocation } from 'wouter';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { Page } from '../../parts/Page.tsx';
import './deadOut.css';
import { words } from './words.ts';

const mostOffers = 40;

/** Which colony's dead-out is looked at: any living one by its label, or one lost without a cause. */
export function DeadOutPick() {
  const list = useRead('colonies.list', { which: 'all' });
  const [typed, setTyped] = useState('');
  const [missed, setMissed] = useState(false);
  const [, go] = useLocation();
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  const rows = useMemo(() => list.data?.rows ?? [], [list.data]);
  const open = useMemo(() => rows.filter(({ how }) => how === 'alive' || how === 'lost').sort((a, b) => (b.end ?? '9').localeCompare(a.end ?? '9')), [rows]);
  const without = open.filter(({ how, causes }) => how === 'lost' && causes.every((cause) => cause === 'unknown'));
  const wanted = typed.trim().toLowerCase();
  useEffect(() => field.current?.focus(), []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    // The living first, then the one lost last: a label may have been used again.
    const found = open.find(({ label }) => label.toLowerCase() === wanted);
    setMissed(found === undefined);
    if (found) go(`/colonies/${found.id}/dead-out`);
  };
  return (
    <Page title={words.pickTitle} line={words.pickLine} asOf={list.data?.asOf}>
      <FaultNote fault={list.fault} />
      <form className="inline-form dead-out-pick" onSubmit={submit} noValidate>
        <div className="field">
          <label htmlFor={id}>{words.pick}</label>
          <input
            ref={field} id={id} type="text" autoComplete="off" list={`${id}-offers`} value={typed} aria-invalid={missed} aria-describedby={missed ? `${id}-fault` : undefined}
            onChange={(event) => {
              setTyped(event.target.value);
              setMissed(false);
            }}
          />
          <datalist id={`${id}-offers`}>
            {open.filter(({ label }) => label.toLowerCase().startsWith(wanted)).slice(0, mostOffers).map((row) => (
              <option key={row.id} value={row.label}>
                {row.yardName}
              </option>
            ))}
          </datalist>
          {missed ? (
            <p className="field-fault" id={`${id}-fault`} role="alert">
              {words.pickNone(typed.trim())}
            </p>
          ) : null}
        </div>
        <button type="submit" className="main">
          {words.pickGo}
        </button>
      </form>
      <section className="section" aria-label={words.without}>
        <h2>{words.without}</h2>
        {list.data && without.length === 0 ? <p className="soft">{words.withoutNone}</p> : null}
        {without.length > 0 ? (
          <table className="tight">
            <caption className="visually-hidden">{words.without}</caption>
            <thead>
              <tr>
                <th scope="col">{words.lost}</th>
                <th scope="col">{words.colony}</th>
                <th scope="col">{words.yard}</th>
                <th scope="col">{words.withoutLook}</th>
              </tr>
            </thead>
            <tbody>
              {without.map((row) => (
                <tr key={row.id}>
                  <td>{dayText(row.end)}</td>
                  <th scope="row">
                    <Link href={`/colonies/${row.id}`}>{row.label}</Link>
                  </th>
                  <td>{row.yardName}</td>
                  <td>
                    <Link href={`/colonies/${row.id}/dead-out`} aria-label={`${words.pickGo}: ${row.label}`}>
                      {words.pickGo}
                    </Link>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        ) : null}
      </section>
    </Page>
  );
}
