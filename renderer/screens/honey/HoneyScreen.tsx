import { useState } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { MassUnit } from '#shared/units.ts';
import { seasonName } from '#shared/seasons.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { download } from '../../parts/download.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { EntryForm } from '../../parts/EntryForm.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { fixed } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words as frameWords } from '../../parts/words.ts';
import './honey.css';
import { JarSearch } from './JarSearch.tsx';
import { lotsCsv } from './lotsCsv.ts';
import { LotsTable } from './LotsTable.tsx';
import { NewLot } from './NewLot.tsx';
import { TraceSection } from './TraceSection.tsx';
import { words } from './words.ts';
import { YieldSection } from './YieldSection.tsx';

type Lots = OutputOf<'lots.list'>;

/** The lots of honey by season, a new lot from harvests, and honey traced from the jar back and from the hives forward. */
export function HoneyScreen() {
  const { book, today } = useBook();
  const { data, fault } = useRead('lots.list', {}, { keep: true });
  const [entering, setEntering] = useState(false);
  if (!book) return null;
  const nothing = data !== undefined && data.lots.length === 0 && data.loose.length === 0;
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {nothing && !entering ? (
        <Empty
          sentence={words.empty}
          action={
            <Entering>
              <button type="button" className="main" onClick={() => setEntering(true)}>
                {words.emptyNext}
              </button>
            </Entering>
          }
        />
      ) : null}
      {entering && today ? (
        <Entering>
          <EntryForm book={book} today={today} firstKind="harvest" onClose={() => setEntering(false)} />
        </Entering>
      ) : null}
      {data === undefined || nothing ? null : (
        <>
          {data.lots.length === 0 ? null : <LotsSection data={data} unit={book.massUnit} />}
          {today && data.loose.length > 0 ? (
            <Entering>
              <NewLot key={data.nextCode} loose={data.loose} lots={data.lots} nextCode={data.nextCode} unit={book.massUnit} order={book.dateOrder} today={today} />
            </Entering>
          ) : null}
          <TraceSection yards={book.yards} seasons={data.seasons} unit={book.massUnit} order={book.dateOrder} />
        </>
      )}
      <MarginContent heading={words.marginHow}>
        {words.marginText.map((text) => (
          <p key={text}>{text}</p>
        ))}
        {data ? <OwnLimit data={data} /> : null}
        <RulesLink room="honey" />
      </MarginContent>
      {/* After the margin’s own part, so that its part stands below. */}
      <YieldSection />
    </Page>
  );
}

function LotsSection({ data, unit }: { readonly data: Lots; readonly unit: MassUnit }) {
  const [asked, setAsked] = useState<number | 'all' | null>(null);
  const choose = useWrite('lots.choosePlace');
  const { say } = useNotice();
  // A season may be gone on another day.
  const season = asked !== null && (asked === 'all' || data.seasons.includes(asked)) ? asked : (data.seasons[0] ?? 'all');
  const shown = data.lots.filter((lot) => season === 'all' || lot.season === season);
  const name = season === 'all' ? words.allSeasons : seasonName(season);
  const onPlace = async (value: string) => {
    const found = data.limits.find(({ place }) => place === value);
    if (found === undefined) return;
    const answer = await choose.send({ place: found.place });
    say(answer.ok ? answer.value.sentence : faultText(answer));
  };
  return (
    <section className="section" aria-label={words.lots}>
      <p className="sentence">{data.sentence}</p>
      <div className="choices honey-choices">
        <label className="inline-choice">
          {words.season}{' '}
          <select value={season} onChange={(event) => setAsked(event.target.value === 'all' ? 'all' : Number(event.target.value))}>
            {data.seasons.map((one) => (
              <option key={one} value={one}>
                {seasonName(one)}
              </option>
            ))}
            <option value="all">{words.allSeasons}</option>
          </select>
        </label>
        <Entering>
          <label className="inline-choice">
            {words.against}{' '}
            <select value={data.place} disabled={choose.busy} onChange={(event) => void onPlace(event.target.value)}>
              {data.limits.map(({ place, label, limit }) => (
                <option key={place} value={place}>{`${label}, ${fixed(limit, 1)} %`}</option>
              ))}
            </select>
          </label>
        </Entering>
        <button type="button" className="link push" onClick={() => download(words.csvName(name), lotsCsv(shown, unit))}>
          {words.csv}
        </button>
      </div>
      <LotsTable key={season} lots={shown} unit={unit} limit={data.limit} />
      {data.salesWithout === 0 ? null : <p className="soft">{words.unplaced(data.salesWithout)}</p>}
      <JarSearch codes={data.lots.map(({ code }) => code)} />
    </section>
  );
}

function OwnLimit({ data }: { readonly data: Lots }) {
  const own = data.limits.find(({ place }) => place === data.place);
  if (own === undefined) return null;
  return (
    <>
      <p>{words.marginRule(own.label, `${fixed(own.limit, 1)}\u00a0%`)}</p>
      <p className="soft small">{`${own.source} (${own.confidence})`}</p>
    </>
  );
}
