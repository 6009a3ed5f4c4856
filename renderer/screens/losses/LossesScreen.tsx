import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { LossReview } from '#shared/contract/losses.ts';
import { seasonName, type Period, type Season } from '#shared/seasons.ts';
import '../../charts/charts.css';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { Page } from '../../parts/Page.tsx';
import { EndedSection } from './EndedSection.tsx';
import { HowCounted } from './HowCounted.tsx';
import { LedgerSection } from './LedgerSection.tsx';
import { LossChoices } from './LossChoices.tsx';
import './losses.css';
import { PastSection } from './PastSection.tsx';
import { RateSection } from './RateSection.tsx';
import { SurvivalSection } from './SurvivalSection.tsx';
import { useUnited } from './useUnited.ts';
import { words } from './words.ts';

/** The season review: what was lost, when, where, and how sure the numbers are. */
export function LossesScreen() {
  const { book } = useBook();
  const [, go] = useLocation();
  const [season, setSeason] = useState<Season | undefined>(undefined);
  const [united, setUnited] = useUnited();
  const [period, setPeriod] = useState<Period>('winter');
  const { data: review, fault } = useRead('losses.review', { ...(season === undefined ? {} : { season }), united }, { keep: true });
  if (!review) {
    return (
      <Page title={words.titleEmpty} line={words.line}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  if (isEmpty(review)) {
    return (
      <Page title={words.titleEmpty} line={words.line} asOf={review.asOf}>
        <Empty sentence={words.empty} action={<Link href="/book">{words.emptyAction}</Link>} />
      </Page>
    );
  }
  return (
    <div className="review">
      <Page
        title={words.title(seasonName(review.season))}
        line={words.line}
        asOf={review.asOf}
        action={
          <button type="button" className="main no-print" onClick={() => go(`/print/losses/${review.season}`)}>
            {words.print}
          </button>
        }
      >
        <p className="review-book">{book?.name}</p>
        <LossChoices review={review} onSeason={setSeason} period={period} onPeriod={setPeriod} onUnited={setUnited} />
        <p className="answers-link no-print">
          <Link href="/losses/answers">{words.answers}</Link>
        </p>
        <FaultNote fault={fault} />
        {review.sentences.length > 0 && <p className="sentence">{review.sentences.join(' ')}</p>}
        <div className="loss-pair section">
          <div>
            <RateSection review={review} period={period} />
            <PastSection review={review} period={period} />
          </div>
          <SurvivalSection review={review} />
        </div>
        <LedgerSection review={review} />
        <EndedSection review={review} />
        <HowCounted review={review} period={period} />
      </Page>
    </div>
  );
}

function isEmpty(review: LossReview): boolean {
  return review.seasons.length === 0 || (review.rates.every((row) => row.atRisk === 0) && review.ended.length === 0);
}
