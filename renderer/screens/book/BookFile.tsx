import { useId, useState, type FormEvent } from 'react';
import type { OpenBook } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, number } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** Where the book is, what it holds, and how days and masses are written in it. */
export function BookFile({ book, program }: { readonly book: OpenBook; readonly program: string }) {
  const settings = useWrite('book.settings');
  const close = useWrite('book.close');
  const { say } = useNotice();
  const [name, setName] = useState(book.name);
  const [fault, setFault] = useState<Fault | undefined>();
  const id = useId();

  const keep = async (change: Parameters<typeof settings.send>[0], sentence: string) => {
    setFault(undefined);
    const answer = await settings.send(change);
    if (answer.ok) say(sentence);
    else setFault(answer);
  };
  const rename = (event: FormEvent) => {
    event.preventDefault();
    void keep({ name: name.trim() }, words.named(name.trim()));
  };
  const leave = async () => {
    const answer = await close.send({});
    if (!answer.ok) setFault(answer);
  };

  return (
    <section className="section" aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>{words.fileHeading}</h2>
      <FaultNote fault={fault} />
      <Entering>
        <dl className="facts">
          <dt>
            <label htmlFor={`${id}-name`}>{words.name}</label>
          </dt>
          <dd>
            <form className="inline-form" onSubmit={rename}>
              <input id={`${id}-name`} type="text" maxLength={80} value={name} onChange={(event) => setName(event.target.value)} />
              {name.trim() !== book.name && name.trim() !== '' ? (
                <button type="submit" disabled={settings.busy}>
                  {words.rename}
                </button>
              ) : null}
            </form>
          </dd>
          <dt>{words.where}</dt>
          <dd>{book.path}</dd>
          <dt>{words.entries}</dt>
          <dd>
            {book.entries === 0 ? words.entriesNone : words.entriesFrom(number(book.entries), dayText(book.firstDay), dayText(book.lastDay))}
          </dd>
          <dt>{words.colonies}</dt>
          <dd>{number(book.living)}</dd>
          <dt>{words.program}</dt>
          <dd>{program}</dd>
          <dt>
            <label htmlFor={`${id}-dates`}>{words.dates}</label>
          </dt>
          <dd>
            <select
              id={`${id}-dates`}
              value={book.dateOrder}
              onChange={(event) =>
                void keep({ dateOrder: event.target.value === 'day-first' ? 'day-first' : 'month-first' }, words.settingKept)
              }
            >
              <option value="month-first">{words.monthFirst}</option>
              <option value="day-first">{words.dayFirst}</option>
            </select>
          </dd>
          <dt>
            <label htmlFor={`${id}-mass`}>{words.mass}</label>
          </dt>
          <dd>
            <select
              id={`${id}-mass`}
              value={book.massUnit}
              onChange={(event) => void keep({ massUnit: event.target.value === 'kg' ? 'kg' : 'lb' }, words.settingKept)}
            >
              <option value="lb">{words.pounds}</option>
              <option value="kg">{words.kilograms}</option>
            </select>
          </dd>
        </dl>
      </Entering>
      <div className="acts">
        <button type="button" disabled={close.busy} onClick={() => void leave()}>
          {words.close}
        </button>
      </div>
    </section>
  );
}
