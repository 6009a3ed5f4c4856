import { useId, useState } from 'react';
import { calendarStarts, type CalendarStart } from '#shared/contract/breeders.ts';
import { dayFromTyped, dayNumber, type DateOrder, type Day } from '#shared/days.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { csvText } from '../../parts/csv.ts';
import { DayField } from '../../parts/DayField.tsx';
import { download } from '../../parts/download.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayWithWeekday } from '../../parts/format.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { SourcesPart } from './SourcesPart.tsx';
import { words } from './queensWords.ts';

/** The days of a queen from the day on which something was done. */
export function CalendarSection() {
  const { book, today } = useBook();
  return book && today ? <Days key={today} today={today} order={book.dateOrder} /> : null;
}

function Days({ today, order }: { readonly today: Day; readonly order: DateOrder }) {
  const [start, setStart] = useState<CalendarStart>('graft');
  const [typed, setTyped] = useState<string>(today);
  const on = dayFromTyped(typed, order);
  const id = useId();
  const note = useMarginNote();
  const { data, fault, stale } = useRead('queens.calendar', { start, on: on ?? today }, { keep: true });
  const steps = on === null ? [] : (data?.steps ?? []);
  const after = (day: Day) => (on === null ? '' : String(dayNumber(day) - dayNumber(on)));
  return (
    <section className="section" aria-label={words.calendar}>
      <h2>{words.calendar}</h2>
      <div className="fields queens-from">
        <div className="field">
          <label htmlFor={id}>{words.start}</label>
          <select id={id} value={start} onChange={(event) => setStart(calendarStarts.find((one) => one === event.target.value) ?? 'graft')}>
            {calendarStarts.map((one) => (
              <option key={one} value={one}>
                {words.starts[one]}
              </option>
            ))}
          </select>
        </div>
        <DayField label={words.on} name="on" value={typed} today={today} order={order} fault={null} onChange={setTyped} />
      </div>
      <FaultNote fault={fault} />
      {steps.length === 0 || on === null ? null : (
        <>
          <Awaited stale={stale}>
            <div className="scroll" tabIndex={0} role="group" aria-label={words.calendar}>
              <table className="narrow">
                <caption className="visually-hidden">{words.calendar}</caption>
                <thead>
                  <tr>
                    <th scope="col">{words.step}</th>
                    <th scope="col">{words.days}</th>
                    <th scope="col" className="number">
                      {words.after}
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {steps.map(({ step, from, until, sources }) => (
                    <tr key={step} {...note(() => <SourcesPart sources={sources} room="queens" />)}>
                      <th scope="row">{step}</th>
                      <td>{from === until ? dayWithWeekday(from) : `${dayWithWeekday(from)} – ${dayWithWeekday(until)}`}</td>
                      <td className="number">{from === until ? after(from) : `${after(from)}–${after(until)}`}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          </Awaited>
          <p className="acts no-print">
            <button type="button" disabled={stale} onClick={() => download(words.csvName(start, on), csvText(words.csvHead, steps.map(({ step, from, until }) => [step, from, until])))}>
              {words.csv}
            </button>
          </p>
        </>
      )}
    </section>
  );
}
