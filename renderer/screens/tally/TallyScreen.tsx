import { Link } from 'wouter';
import { tallyVerdicts, type NeedsTally } from '#shared/contract/tally.ts';
import { download } from '../../parts/download.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words as frameWords } from '../../parts/words.ts';
import '../needs/needs.css';
import './tally.css';
import { RuleLine } from './RuleLine.tsx';
import { tallyCsv } from './tallyCsv.ts';
import { useTally } from './useTally.ts';
import { words } from './words.ts';

/** What the rules of the list asked for in past seasons, what was done, and what came of it. */
export function TallyScreen() {
  const { data, fault } = useTally();
  return (
    <Page title={words.title} line={words.line}>
      <NeedsNav />
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {data?.state === 'nothing' ? <Empty sentence={words.nothing} action={<Link href="/needs">{words.nothingNext}</Link>} /> : null}
      {data?.state === 'running' || data?.state === 'moved' ? <Working weeks={data.weeks} of={data.of} /> : null}
      {data?.state === 'done' ? <Rules tally={data} /> : null}
      <MarginContent heading={words.how}>
        <p>{words.howText}</p>
        <RulesLink room="needs" />
      </MarginContent>
    </Page>
  );
}

function Working({ weeks, of }: Pick<NeedsTally, 'weeks' | 'of'>) {
  return (
    <div className="section">
      <p>{words.working(weeks, of)}</p>
      <progress value={weeks} max={of} aria-label={words.working(weeks, of)} />
      <p className="soft small">{words.workingHow}</p>
    </div>
  );
}

const compared: ReadonlySet<string> = new Set(['bore out', 'against', 'open']);

function Rules({ tally }: { readonly tally: NeedsTally }) {
  const { rules, seasons, from, until, caveat } = tally;
  const count = (verdict: string) => rules.filter((rule) => rule.verdict === verdict).length;
  return (
    <section aria-label={words.list}>
      <p className="sentence">{words.sentence(seasons.length, rules.filter(({ verdict }) => compared.has(verdict)).length, count('bore out'), count('against'))}</p>
      {from === null || until === null ? null : <p className="soft tally-span">{words.span(dayText(from), dayText(until))}</p>}
      <p className="tally-caveat">
        <strong>{words.caution}.</strong> {caveat}
      </p>
      <div className="choices">
        <button type="button" className="link push" onClick={() => download(words.csvName(until ?? ''), tallyCsv(tally))}>
          {words.csv}
        </button>
      </div>
      {tallyVerdicts.map((verdict) => {
        const own = rules.filter((rule) => rule.verdict === verdict);
        return own.length === 0 ? null : (
          <section key={verdict} aria-label={words.groups[verdict]}>
            <h2>{words.groups[verdict]}</h2>
            <ul className="needs-lines">
              {own.map((rule) => (
                <RuleLine key={rule.rule} tally={rule} />
              ))}
            </ul>
          </section>
        );
      })}
    </section>
  );
}
