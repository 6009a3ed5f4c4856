import { useDeferredValue, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { RuleRoom } from '#shared/contract/rules.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { RuleRow } from './RuleRow.tsx';
import { fittingRules, type RuleShow } from './ruleFilter.ts';
import { words } from './words.ts';
import './rules.css';

const shows = Object.keys(words.shows) as RuleShow[];

/** Every number of the house on one page; `room` is the heading to open it at. */
export function RulesScreen({ room }: { readonly room?: string | undefined }) {
  const { data, fault, loading } = useRead('rules.book', {});
  const [show, setShow] = useState<RuleShow>('all');
  const [typed, setTyped] = useState('');
  const search = useRef<HTMLInputElement>(null);
  const wanted = useDeferredValue(typed);
  const rooms = useMemo(() => (data ? fittingRules(data.rooms, show, wanted) : []), [data, show, wanted]);
  useSlash(search);

  const ready = data !== undefined;
  useEffect(() => {
    if (ready && room !== undefined) document.querySelector<HTMLElement>(`[data-room="${CSS.escape(room)}"]`)?.focus();
  }, [ready, room]);

  const all = data?.rooms.flatMap((one) => one.rules) ?? [];
  const clear = () => {
    setShow('all');
    setTyped('');
  };
  return (
    <Page title={words.title} line={words.line}>
      <search className="choices">
        <label className="inline-choice">
          {words.show}{' '}
          <select value={show} onChange={(event) => setShow(shows.find((one) => one === event.target.value) ?? 'all')}>
            {shows.map((one) => (
              <option key={one} value={one}>
                {words.shows[one]}
              </option>
            ))}
          </select>
        </label>
        {data ? <p role="status">{words.count(rooms.reduce((sum, { rules }) => sum + rules.length, 0), all.length, all.filter(({ changed }) => changed).length)}</p> : null}
        <label className="inline-choice push">
          {words.search}{' '}
          <input
            ref={search}
            type="search"
            className="search"
            autoComplete="off"
            placeholder={words.searchHint}
            value={typed}
            onKeyDown={(event) => {
              if (event.key === 'Escape') setTyped('');
            }}
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
      </search>
      <FaultNote fault={fault} />
      {loading ? <p role="status">{frameWords.loading}</p> : null}
      <Entering>
        {rooms.map((one) => (
          <Room key={one.key} room={one} />
        ))}
      </Entering>
      {data && rooms.length === 0 ? (
        <Empty
          sentence={show === 'changed' && typed.trim() === '' ? words.noneChanged : words.noneFits}
          action={
            <button type="button" onClick={clear}>
              {words.clear}
            </button>
          }
        />
      ) : null}
      <MarginContent heading={words.marginHeading}>
        <p>{words.marginText}</p>
        <p>{words.marginBook}</p>
        <p>{words.marginMemory}</p>
      </MarginContent>
    </Page>
  );
}

function Room({ room }: { readonly room: RuleRoom }) {
  const heading = useId();
  const { send, busy } = useWrite('rules.reset');
  const notice = useNotice();
  const changed = room.rules.filter((rule) => rule.changed).length;
  const reset = async () => {
    const answer = await send({ room: room.key });
    notice.say(answer.ok ? words.roomReset(answer.value.reset.length, room.heading) : faultText(answer));
  };
  return (
    <section className="section" aria-labelledby={heading}>
      <div className="rule-head">
        <h2 id={heading} tabIndex={-1} data-room={room.key}>
          {room.heading}
        </h2>
        <p className="soft small">{room.line}</p>
        {changed > 0 ? (
          <button type="button" className="link" disabled={busy} onClick={() => void reset()}>
            {words.resetRoom(changed)}
            <span className="visually-hidden"> ({room.heading})</span>
          </button>
        ) : null}
      </div>
      <div className="rule-wide">
        <table className="rule-table" aria-labelledby={heading}>
          <thead>
            <tr>
              <th scope="col">{words.rule}</th>
              <th scope="col">{words.now}</th>
              <th scope="col">{words.byDefault}</th>
              <th scope="col">{words.range}</th>
              <th scope="col">{words.source}</th>
            </tr>
          </thead>
          <tbody>
            {room.rules.map((rule) => (
              <RuleRow key={rule.key} rule={rule} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

/** `/` goes to the search from anywhere on the page but a field. */
function useSlash(search: { readonly current: HTMLInputElement | null }): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      // In a number's field the key cannot be meant as text; in a rule of words it can.
      const typing = target instanceof HTMLElement && target.matches('input.rule-words, select');
      if (event.key !== '/' || typing || target === search.current || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      search.current?.focus();
      search.current?.select();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [search]);
}
