import { Link } from 'wouter';
import type { OrderDecision } from '#shared/contract/decision.ts';
import '../../charts/charts.css';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { download } from '../../parts/download.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number, percent } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { StockParts } from '../../parts/StockParts.tsx';
import { EarlierNotes } from '../losses/EarlierNotes.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { RuleList } from '../stock/RulesMargin.tsx';
import { CostSection } from './CostSection.tsx';
import { CurvesSection } from './CurvesSection.tsx';
import { EquipmentSection } from './EquipmentSection.tsx';
import { ForecastSection } from './ForecastSection.tsx';
import { OffersSection } from './OffersSection.tsx';
import { orderCsv, partsCsv } from './orderCsv.ts';
import '../stock/stock.css';
import './orders.css';
import { PlacedSection } from './PlacedSection.tsx';
import { PlansSection } from './PlansSection.tsx';
import { QuestionFields } from './QuestionFields.tsx';
import type { Question } from './readQuestion.ts';
import { SellerSection } from './SellerSection.tsx';
import { SourcesSection } from './SourcesSection.tsx';
import { SplitsSection } from './SplitsSection.tsx';
import { useQuestion } from './useQuestion.ts';
import { words } from './words.ts';

/** What to order before spring, by when, how sure, at what cost. */
export function OrdersScreen() {
  const { book } = useBook();
  const desk = useQuestion(book?.path ?? '');
  const { decision, typing, question, fault, working, stop } = desk;
  const nothingYet = decision !== undefined && decision.living === 0 && decision.target === 0;
  return (
    <Page
      title={words.title}
      line={words.line}
      asOf={decision?.asOf}
      action={
        nothingYet ? undefined : (
          <Link href="/print/orders" className="button main">
            {words.print}
          </Link>
        )
      }
    >
      <StockParts />
      {typing && <QuestionFields desk={desk} typing={typing} decision={decision} />}
      <div className="order-progress" role="status">
        {working ? (
          <p>
            {words.working}{' '}
            {decision === undefined ? null : (
              <button type="button" className="link" onClick={stop}>
                {words.stop}
              </button>
            )}
          </p>
        ) : null}
      </div>
      <FaultNote fault={fault} />
      {decision && nothingYet ? <Empty sentence={words.empty} action={<Link href="/book">{words.emptyAction}</Link>} /> : null}
      {decision && question && !nothingYet ? (
        <Awaited stale={desk.stale}>
          <Answer decision={decision} question={question} book={book?.name ?? ''} />
        </Awaited>
      ) : null}
      <Entering>
        <OffersSection />
        <PlacedSection />
        <PlansSection question={question} ready={decision !== undefined && !nothingYet} />
      </Entering>
      <HowMargin decision={decision} nothingYet={nothingYet} />
    </Page>
  );
}

/** Survivors, order and chance lead; what else should be known stands below them in the plain face. */
const leading = 3;

function Answer({ decision, question, book }: { readonly decision: OrderDecision; readonly question: Question; readonly book: string }) {
  const { answer } = decision;
  const save = (what: 'order' | 'equipment') => {
    if (answer !== null) download(words.csvName(book, what, decision.asOf), what === 'order' ? orderCsv(answer) : partsCsv(answer));
  };
  return (
    <>
      <p className="sentence">{decision.sentences.slice(0, leading).join(' ')}</p>
      {decision.sentences.slice(leading).map((sentence) => (
        <p key={sentence} className="order-more-said">
          {sentence}
        </p>
      ))}
      <Said heading={words.limits} lines={decision.limits.map(({ sentence }) => sentence)} needs />
      <Said heading={words.leftOut} lines={decision.leftOut.map(({ sentence }) => sentence)} />
      <Said heading={words.trouble} lines={decision.stockTrouble.map(({ sentence }) => sentence)} needs />
      {answer !== null && decision.outcome === 'impossible' && decision.reached !== null ? <p className="needs">{words.onlyReached(decision.reached, decision.target)}</p> : null}
      {decision.cautions.map((caution) => (
        <p key={caution} className="caution order-caution">
          {caution}
        </p>
      ))}
      {answer === null ? null : (
        <>
          <SellerSection answer={answer} />
          <p className="acts no-print">
            <button type="button" onClick={() => save('order')}>
              {words.csvBees}
            </button>
            <button type="button" onClick={() => save('equipment')}>
              {words.csvParts}
            </button>
          </p>
          <SplitsSection answer={answer} />
          <EquipmentSection answer={answer} />
          <CostSection answer={answer} />
        </>
      )}
      <CurvesSection decision={decision} question={question} />
      <SourcesSection />
      {decision.living > 0 ? <ForecastSection decision={decision} /> : null}
    </>
  );
}

function Said({ heading, lines, needs = false }: { readonly heading: string; readonly lines: readonly string[]; readonly needs?: boolean }) {
  if (lines.length === 0) return null;
  return (
    <section className="section" aria-label={heading}>
      <h2>{heading}</h2>
      <ul className="order-said">
        {lines.map((line) => (
          <li key={line} className={needs ? 'needs' : undefined}>
            {line}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** How the answer came about, and the numbers of the house behind it. */
function HowMargin({ decision, nothingYet }: { readonly decision: OrderDecision | undefined; readonly nothingYet: boolean }) {
  const { data } = useRead('rules.list', {});
  const rules = data?.rules.filter(({ room }) => room === 'decision' || room === 'order') ?? [];
  const solver = decision?.answer?.solver;
  return (
    <>
      {decision ? <EarlierNotes today={decision.asOf} /> : null}
      {decision ? (
        <MarginContent heading={words.howFrom}>
          <p>{decision.forecast.from}</p>
        </MarginContent>
      ) : null}
      {solver && decision.answer && !nothingYet ? (
        <MarginContent heading={words.how}>
          <p>{words.howSolver(solver.name, percent(solver.gap, 2))}</p>
          <p>{words.howSprings(number(solver.springs), percent(decision.answer.samplingError, 2))}</p>
          {decision.answer.chanceShortExact === null ? null : <p>{words.howExact(percent(decision.answer.chanceShortExact, 1))}</p>}
        </MarginContent>
      ) : null}
      {rules.length === 0 || decision === undefined ? null : (
        <MarginContent heading={words.rules}>
          <p>{words.rulesText}</p>
          <RulesLink room="order" />
          <details className="rule-parts">
            <summary>{words.rulesShow(rules.length)}</summary>
            <RuleList rules={rules} />
          </details>
        </MarginContent>
      )}
    </>
  );
}
