import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState, type FormEvent } from 'react';
import type { OpenBook } from '#shared/contract/book.ts';
import { dayFromTyped, type Day } from '#shared/days.ts';
import { anotherDay, backToToday } from '../commands/commands.ts';
import { shortcutText } from '../commands/shortcut.ts';
import { asOfDay, useAsOf, useChoosing } from '../desk/asOfDay.ts';
import { desk } from '../desk/deskClient.ts';
import { useRead } from '../desk/useDesk.ts';
import './asOf.css';
import { DayField } from './DayField.tsx';
import { faultText } from './Notice.tsx';
import { dayText } from './format.ts';
import { words } from './words.ts';

/** What things that cannot be used now are described by. */
export const lookingId = 'looking-at';

/** Above every screen: which day is looked at, the way back, and the choice of another day. */
export function AsOfBar() {
  const day = useAsOf();
  const choosing = useChoosing();
  // Asked as of today whatever is looked at; kept asked, so that going back finds it at hand.
  const { data } = useRead('book.status', {}, { now: true });
  const book = data?.book ?? null;
  // Kept off paper even while it is empty: anything before a document with pages of its own would take a page.
  if (data === undefined || book === null || (day === null && !choosing)) return <div className="no-print" role="status" />;
  return (
    <>
      <div className={day === null ? 'no-print' : 'looking no-print'} role="status">
        {day === null ? null : (
          <>
            <p id={lookingId}>
              {words.lookingAt} <strong>{dayText(day)}</strong>. {words.nothingEntered}
            </p>
            <button type="button" className="plain" title={hint(anotherDay)} onClick={asOfDay.choose}>
              {words.anotherDay}
            </button>
            <button type="button" className="main" title={hint(backToToday)} onClick={leave}>
              {words.backToToday}
            </button>
          </>
        )}
      </div>
      {choosing ? <DayChoice key={day ?? ''} book={book} today={data.today} first={day ?? data.today} /> : null}
    </>
  );
}

const hint = ({ shortcut }: typeof anotherDay) => (shortcut ? shortcutText(shortcut) : undefined);

/** The button goes with the banner, so the keyboard goes to the page. */
function leave(): void {
  asOfDay.backToToday();
  toPage();
}

function toPage(): void {
  document.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
}

interface DayChoiceProps {
  readonly book: OpenBook;
  readonly today: Day;
  readonly first: Day;
}

function DayChoice({ book, today, first }: DayChoiceProps) {
  const client = useQueryClient();
  const [typed, setTyped] = useState<string>(first);
  const [fault, setFault] = useState<string | null>(null);
  const box = useRef<HTMLFormElement>(null);
  const back = useRef<Element | null>(null);

  useEffect(() => {
    back.current = document.activeElement;
    const field = box.current?.querySelector('input');
    field?.focus();
    field?.select();
  }, []);
  const close = () => {
    asOfDay.leaveChoosing();
    if (back.current instanceof HTMLElement && back.current.isConnected && back.current !== document.body) back.current.focus();
    else toPage();
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const day = dayFromTyped(typed, book.dateOrder);
    if (day === null) return setFault(words.lookUnknown);
    if (day === today) return leave();
    const answer = await desk.call('book.status', { asOf: day });
    if (!answer.ok) return setFault(faultText(answer));
    // At hand before the window turns to that day, so that no screen is taken down meanwhile.
    client.setQueryData(['book.status', { asOf: day }], answer);
    asOfDay.lookAt(day);
    toPage();
  };

  return (
    <form
      ref={box}
      className="day-choice no-print"
      aria-label={anotherDay.name}
      noValidate
      onSubmit={(event) => void submit(event)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        close();
      }}
    >
      <DayField
        label={words.lookAtDay}
        name="as-of"
        value={typed}
        today={today}
        order={book.dateOrder}
        fault={fault}
        onChange={(value) => {
          setTyped(value);
          setFault(null);
        }}
      />
      <div className="acts">
        <button type="submit" className="main">
          {words.look}
        </button>
        <button type="button" onClick={close}>
          {words.leaveDay}
        </button>
      </div>
      <p className="soft small">
        {book.firstDay === null ? '' : words.lookHelp(dayText(book.firstDay), dayText(today))} {words.lookWhy}
      </p>
    </form>
  );
}
