import { Link, useLocation } from 'wouter';
import { seasonName } from '#shared/seasons.ts';
import '../../charts/charts.css';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { FactorParts } from './FactorParts.tsx';
import { LedgerSection } from './LedgerSection.tsx';
import './losses.css';
import { RatesSection } from './RatesSection.tsx';
import { ReviewContents, ReviewSection } from './ReviewSection.tsx';
import { reviewWords } from './reviewWords.ts';
import { SurvivalSection } from './SurvivalSection.tsx';
import { useSeason } from './useSeason.ts';
import { words } from './words.ts';

/** The season-end review: one season as a report that reads from top to bottom. */
export function LossesScreen() {
  const { book } = useBook();
  const [, go] = useLocation();
  const [chosen, choose] = useSeason();
  const { data: frame, fault } = useRead('losses.frame', chosen === undefined ? {} : { season: chosen }, { keep: true });
  if (!frame) {
    return (
      <Page title={words.titleEmpty} line={words.line}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  if (frame.empty) {
    return (
      <Page title={words.titleEmpty} line={words.line} asOf={frame.asOf}>
        <Empty sentence={words.empty} action={<Link href="/book">{words.emptyAction}</Link>} />
      </Page>
    );
  }
  const { season } = frame;
  return (
    <div className="review">
      <Page
        title={words.title(seasonName(season))}
        line={reviewWords.line}
        asOf={frame.asOf}
        action={
          <button type="button" className="main no-print" onClick={() => go(`/print/losses/${season}`)}>
            {words.print}
          </button>
        }
      >
        <p className="review-book">{book?.name}</p>
        <div className="review-head">
          <label className="inline-choice">
            {words.season}{' '}
            <select value={season} onChange={(event) => choose(Number(event.target.value))}>
              {frame.seasons.map(({ season: one, name, complete }) => (
                <option key={one} value={one}>
                  {complete ? name : `${name}, ${words.soFar}`}
                </option>
              ))}
            </select>
          </label>
          <p className="answers-link no-print">
            <Link href="/losses/answers">{words.answers}</Link>
          </p>
          <ReviewContents />
        </div>
        <FaultNote fault={fault} />
        <ReviewSection id="account">
          <LedgerSection season={season} />
        </ReviewSection>
        <ReviewSection id="losses">
          <RatesSection season={season} />
        </ReviewSection>
        <ReviewSection id="survival">
          <SurvivalSection key={season} frame={frame} />
        </ReviewSection>
        <FactorParts season={season} />
        <MarginContent heading={words.rangesHeading}>
          <p>{words.rangesText}</p>
          <p>{words.fewText}</p>
        </MarginContent>
        <MarginContent heading={words.counted}>
          <p>{reviewWords.turnoverNote}</p>
          <p>{reviewWords.cohortNote}</p>
          <p className="soft">{words.source}</p>
        </MarginContent>
      </Page>
    </div>
  );
}
