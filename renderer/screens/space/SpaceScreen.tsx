import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { SpaceList, SpaceYard } from '#shared/contract/space.ts';
import { monthDayInWords, type Day } from '#shared/days.ts';
import { useBook } from '../../desk/useBook.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { download } from '../../parts/download.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { BoxesSection } from './BoxesSection.tsx';
import { ColoniesTable } from './ColoniesTable.tsx';
import './space.css';
import { isSeason, spaceCsv } from './spaceText.ts';
import { SplitsSection } from './SplitsSection.tsx';
import { words } from './words.ts';
import { YardsTable } from './YardsTable.tsx';

/** Room, swarm risk and splits of every colony on a day; out of season it says so and asks for nothing. Of one yard where the address names it. */
export function SpaceScreen({ at }: { readonly at: YardId | null }) {
  const { book } = useBook();
  const { data, fault } = useCalmRead('space.list', {}, { keep: true });
  const [asked, setAsked] = useState<YardId | null>(at);
  // A yard may be gone on another day.
  const yard = data?.yards.some(({ id }) => id === asked) ? asked : null;
  const shown = useMemo(() => data?.yards.filter(({ id }) => yard === null || id === yard) ?? [], [data, yard]);
  if (!book) return null;
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <NeedsNav />
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {data?.yards.length === 0 ? <Empty sentence={words.empty} action={<Link href="/colonies">{words.emptyNext}</Link>} /> : null}
      {data === undefined || data.yards.length === 0 ? null : isSeason(data) ? <InSeason list={data} yards={shown} yard={yard} onYard={setAsked} /> : <OutOfSeason list={data} />}
      {data === undefined || data.yards.length === 0 ? null : (
        <MarginContent heading={words.marginHow}>
          {words.how.map((text) => (
            <p key={text}>{text}</p>
          ))}
          <RulesLink room="space" />
        </MarginContent>
      )}
    </Page>
  );
}

interface SeasonProps {
  readonly list: SpaceList;
  readonly yards: readonly SpaceYard[];
  readonly yard: YardId | null;
  onYard(yard: YardId | null): void;
}

function InSeason({ list, yards, yard, onYard }: SeasonProps) {
  return (
    <>
      <section className="section" aria-label={words.yards}>
        <p className="sentence">{list.sentence}</p>
        <p className="soft space-seasons">{words.seasons(spanText(list.adding), spanText(list.swarming))}</p>
        <YardsTable list={list} chosen={yard} onChoose={onYard} />
      </section>
      <div className="choices space-choices">
        <label className="inline-choice">
          {words.yard}{' '}
          <select value={yard ?? ''} onChange={(event) => onYard(list.yards.find(({ id }) => String(id) === event.target.value)?.id ?? null)}>
            <option value="">{words.all}</option>
            {list.yards.map(({ id, code, name }) => (
              <option key={id} value={id}>{`${code} ${name}`}</option>
            ))}
          </select>
        </label>
        <button type="button" className="link push" onClick={() => download(words.csvName(list.asOf), spaceCsv(list))}>
          {words.csv}
        </button>
        <Link href="/print/space">{words.print}</Link>
      </div>
      <ColoniesTable key={`colonies ${yard}`} list={list} yards={yards} />
      <BoxesSection key={`boxes ${yard}`} list={list} yards={yards} />
      <SplitsSection key={`splits ${yard}`} list={list} yards={yards} />
    </>
  );
}

function OutOfSeason({ list }: { readonly list: SpaceList }) {
  return (
    <section className="section" aria-label={words.colonies}>
      <p className="sentence">{list.sentence}</p>
      <p className="space-seasons">{words.later(monthDayInWords(list.adding.from))}</p>
      <p className="soft space-seasons">{words.laterSeasons(spanText(list.swarming), spanText({ from: list.splits.from, until: lastSplit(list) }))}</p>
      <p>
        <Link href="/stock">{words.laterNext}</Link>
      </p>
    </section>
  );
}

function spanText({ from, until }: Pick<SpaceList['adding'], 'from' | 'until'>): string {
  return words.span(monthDayInWords(from), monthDayInWords(until));
}

function lastSplit({ splits: { from, latest } }: SpaceList): Day {
  return latest.reduce((last, { day }) => (day > last ? day : last), from);
}
