import { useId } from 'react';
import { asOfDay } from '../../desk/asOfDay.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { words } from './words.ts';

const shown = 8;

/** In the place of the round sheet while another day is looked at. */
export function PastTonight() {
  const { data, fault } = useRead('journal.recent', { limit: shown });
  const id = useId();
  return (
    <Page title={words.title} line={words.line}>
      <p className="sentence">{words.resting}</p>
      <p className="section">
        <button type="button" onClick={asOfDay.backToToday}>
          {words.back}
        </button>
      </p>
      <section className="section" aria-labelledby={id}>
        <h2 id={id}>{words.entered}</h2>
        <FaultNote fault={fault} />
        {data?.gestures.length === 0 ? <p className="soft">{words.none}</p> : null}
        <ol className="lines">
          {data?.gestures.map(({ id: act, title, entries, firstDay, lastDay }) => (
            <li key={act}>
              <span>{words.days(dayText(firstDay), dayText(lastDay))}</span>
              <span>{words.act(title, entries)}</span>
            </li>
          ))}
        </ol>
      </section>
      <MarginContent heading={words.margin}>
        <p>{words.marginText}</p>
        <p>{words.marginNow}</p>
      </MarginContent>
    </Page>
  );
}
