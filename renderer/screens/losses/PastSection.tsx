import type { LossReview } from '#shared/contract/losses.ts';
import { seasonName, type Period } from '#shared/seasons.ts';
import { pastRates } from './lossChoice.ts';
import { RateTable } from './RateSection.tsx';
import { words } from './words.ts';

/** All yards together, season by season, to compare with. */
export function PastSection({ review, period }: { readonly review: LossReview; readonly period: Period }) {
  const rows = pastRates(review, period);
  const heading = words.past[period];
  return (
    <section className="figured section" aria-label={heading}>
      <h2>{heading}</h2>
      {rows.length < 2 && <p className="soft">{words.pastOne}</p>}
      {rows.length > 0 && (
        <RateTable review={review} rows={rows} nameOf={(row) => (row.complete ? seasonName(row.season) : `${seasonName(row.season)}, ${words.soFar}`)} headOfNames={words.season} caption={heading} />
      )}
    </section>
  );
}
