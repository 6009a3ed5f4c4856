import { Link } from 'wouter';
import type { LotPage } from '#shared/contract/lots.ts';
import type { MassUnit } from '#shared/units.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { download } from '../../parts/download.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, fixed } from '../../parts/format.ts';
import { labelsAddress, lotIn } from '../../parts/lotAddress.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { ActForm } from './ActForm.tsx';
import './honey.css';
import { massText } from './honeyText.ts';
import { LotAccount } from './LotAccount.tsx';
import { LotEvents } from './LotEvents.tsx';
import { LotFate } from './LotFate.tsx';
import { LotOrigin } from './LotOrigin.tsx';
import { lotWords as words } from './lotWords.ts';
import { traceCsv } from './traceCsv.ts';

/** One lot: its account, what was done with it, the hives behind it, and where it went. */
export function LotScreen({ lot }: { readonly lot: string }) {
  const code = lotIn(lot);
  const { book, today } = useBook();
  const { data, fault } = useRead('lots.page', { lot: code }, { keep: true });
  if (!book) return null;
  const unit = book.massUnit;
  return (
    <Page title={words.title(data?.line.code ?? code)} line={words.line} asOf={data?.asOf}>
      <FaultNote fault={fault} />
      <p className="choices no-print">
        <Link href="/honey">{words.back}</Link>
        {data ? (
          <>
            {data.line.jars.some(({ filled }) => filled > 0) ? <Link href={labelsAddress(data.line.code)}>{words.labels}</Link> : null}
            <button type="button" className="link" onClick={() => download(words.csvName(data.line.code), traceCsv(data, unit))}>
              {words.csv}
            </button>
          </>
        ) : null}
      </p>
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {data ? (
        <>
          <section className="section" aria-label={words.account}>
            <p className="sentence">{data.balanceSentence}</p>
            {data.line.troubles.map((trouble) => (
              <p key={trouble} className="needs">
                {trouble}
              </p>
            ))}
            <div className="honey-halves">
              <LotAccount page={data} unit={unit} />
              <Water page={data} unit={unit} />
            </div>
          </section>
          {today ? (
            <Entering>
              <ActForm key={data.line.code} page={data} unit={unit} order={book.dateOrder} today={today} />
            </Entering>
          ) : null}
          <LotEvents page={data} unit={unit} />
          <LotOrigin page={data} unit={unit} />
          <LotFate page={data} unit={unit} />
          <MarginContent heading={words.marginHow}>
            {words.marginText.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </MarginContent>
          <MarginContent heading={words.limits}>
            <Limits page={data} />
          </MarginContent>
        </>
      ) : null}
    </Page>
  );
}

/** Its water, and what that means where the honey is sold. */
function Water({ page, unit }: { readonly page: LotPage; readonly unit: MassUnit }) {
  const over = page.line.within === false;
  const own = page.limits.find(({ place }) => place === page.place);
  const below = `${fixed(page.keepsBelow, 1)}\u00a0%`;
  return (
    <div className="honey-water">
      <h2>{words.water}</h2>
      <p>{page.waterSentence}</p>
      <p className={over ? 'needs' : undefined}>{page.limitSentence}</p>
      {own === undefined ? null : <p className="soft small">{`${own.label}: ${own.source} (${own.confidence}). ${words.law}`}</p>}
      {page.keeps === null ? null : <p>{page.keeps ? words.keeps(below) : words.keepsNot(below)}</p>}
      {page.grade === null ? null : <p>{page.grade === 'substandard' ? words.gradeNot : words.grade(page.grade)}</p>}
      {page.atStandard === null ? null : <p>{words.atStandard(`${fixed(page.standard, 1)}\u00a0%`, massText(page.atStandard, unit))}</p>}
      {page.line.until === null ? null : <p className="soft small">{`${words.harvested}: ${page.line.from === page.line.until ? dayText(page.line.from) : `${dayText(page.line.from)} – ${dayText(page.line.until)}`}`}</p>}
    </div>
  );
}

function Limits({ page }: { readonly page: LotPage }) {
  return (
    <>
      <ul className="rules">
        {page.limits.map(({ place, label, limit, within, source, confidence }) => (
          <li key={place}>
            <p>{`${label}: ${fixed(limit, 1)}\u00a0%, ${within === null ? words.notKnown : within ? words.isWithin : words.isOver}`}</p>
            <p className="soft small">{`${source} (${confidence})`}</p>
          </li>
        ))}
      </ul>
      <RulesLink room="honey" />
    </>
  );
}
