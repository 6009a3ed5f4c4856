import type { LossReview } from '#shared/contract/losses.ts';
import type { Period } from '#shared/seasons.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { fewColonies, ratesOf } from './lossChoice.ts';
import { words } from './words.ts';

/** What the margin says while nothing is asked about: definitions, ranges and what they rest on. */
export function HowCounted({ review, period }: { readonly review: LossReview; readonly period: Period }) {
  const { yards, all } = ratesOf(review, period);
  const counted = yards.filter((row) => row.atRisk > 0);
  return (
    <>
      <MarginContent heading={words.counted}>
        <p>{words.countedText[period]}</p>
        <p>{words.unitedText[review.united]}</p>
        <p className="soft">{words.source}</p>
      </MarginContent>
      <MarginContent heading={words.base}>
        <p>{words.baseText(all?.atRisk ?? 0, counted.length)}</p>
        {counted.some((row) => row.atRisk < fewColonies) && <p>{words.fewText}</p>}
        {all && !all.complete && <p>{words.running}</p>}
      </MarginContent>
      <MarginContent heading={words.rangesHeading}>
        <p>{words.rangesText}</p>
      </MarginContent>
    </>
  );
}
