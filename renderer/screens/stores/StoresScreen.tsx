import { useState } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { StoresList } from '#shared/contract/stores.ts';
import { useBook } from '../../desk/useBook.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { download } from '../../parts/download.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { ColoniesTable } from './ColoniesTable.tsx';
import './stores.css';
import { massText, storesCsv } from './storesText.ts';
import { SupersSection } from './SupersSection.tsx';
import { UniteSection } from './UniteSection.tsx';
import { WinterSection } from './WinterSection.tsx';
import { words } from './words.ts';
import { YardsTable } from './YardsTable.tsx';

/** Stores of every colony on a day against what winter asks, and how far each is made ready for it; of one yard where the address names it. */
export function StoresScreen({ at }: { readonly at: YardId | null }) {
  const { book } = useBook();
  const { data, fault } = useCalmRead('stores.list', {}, { keep: true });
  const [asked, setAsked] = useState<YardId | null>(at);
  if (!book) return null;
  const unit = book.massUnit;
  // A yard may be gone on another day.
  const yard = data?.yards.some(({ id }) => id === asked) ? asked : null;
  const shown = data?.yards.filter(({ id }) => yard === null || id === yard) ?? [];
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <NeedsNav />
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {data?.yards.length === 0 ? <Empty sentence={words.empty} action={<Link href="/colonies">{words.emptyNext}</Link>} /> : null}
      {data === undefined || data.yards.length === 0 ? null : (
        <>
          <section className="section" aria-label={words.yards}>
            <p className="sentence">{data.sentence}</p>
            <p className="soft stores-phase">{phaseText(data)}</p>
            <YardsTable list={data} unit={unit} chosen={yard} onChoose={setAsked} />
          </section>
          <div className="choices stores-choices">
            <label className="inline-choice">
              {words.yard}{' '}
              <select value={yard ?? ''} onChange={(event) => setAsked(data.yards.find(({ id }) => String(id) === event.target.value)?.id ?? null)}>
                <option value="">{words.all}</option>
                {data.yards.map(({ id, code, name }) => (
                  <option key={id} value={id}>{`${code} ${name}`}</option>
                ))}
              </select>
            </label>
            <button type="button" className="link push" onClick={() => download(words.csvName(data.asOf), storesCsv(data, unit))}>
              {words.csv}
            </button>
            <Link href="/print/stores">{words.print}</Link>
          </div>
          <ColoniesTable key={`colonies ${yard}`} yards={shown} unit={unit} />
          <SupersSection key={`supers ${yard}`} list={data} yards={shown} />
          <UniteSection key={`unite ${yard}`} list={data} yards={shown} />
          <WinterSection key={`winter ${yard}`} yard={yard} />
          <MarginContent heading={words.marginHow}>
            <p>{words.place(data.place, massText(data.target, unit))}</p>
            {words.how.map((text) => (
              <p key={text}>{text}</p>
            ))}
            <RulesLink room="stores" />
          </MarginContent>
        </>
      )}
    </Page>
  );
}

function phaseText({ phase, feedBy, daysLeft, autumnFrom }: StoresList): string {
  switch (phase) {
    case 'summer':
      return words.phase.summer(dayText(autumnFrom));
    case 'autumn':
      return words.phase.autumn(dayText(feedBy), words.daysLeft(daysLeft));
    case 'winter':
      return words.phase.winter(dayText(feedBy));
  }
}
