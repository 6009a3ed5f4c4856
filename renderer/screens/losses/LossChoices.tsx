import type { LossReview } from '#shared/contract/losses.ts';
import type { United } from '#shared/contract/values.ts';
import type { Period, Season } from '#shared/seasons.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

const periods: readonly Period[] = ['winter', 'summer', 'year'];
const treatments: readonly United[] = ['lost', 'takenOut'];

export interface LossChoicesProps {
  readonly review: LossReview;
  readonly period: Period;
  readonly onSeason: (season: Season) => void;
  readonly onPeriod: (period: Period) => void;
  readonly onUnited: (united: United) => void;
}

export function LossChoices({ review, period, onSeason, onPeriod, onUnited }: LossChoicesProps) {
  const note = useMarginNote();
  const seasons = [...review.seasons].sort((a, b) => b.season - a.season);
  return (
    <div className="choices">
      <label className="inline-choice">
        {words.season}{' '}
        <select value={review.season} onChange={(event) => onSeason(Number(event.target.value))}>
          {seasons.map(({ season, name, complete }) => (
            <option key={season} value={season}>
              {complete ? name : `${name}, ${words.soFar}`}
            </option>
          ))}
        </select>
      </label>
      <label className="inline-choice">
        {words.period}{' '}
        <select value={period} onChange={(event) => onPeriod(periods.find((known) => known === event.target.value) ?? 'winter')}>
          {periods.map((known) => (
            <option key={known} value={known}>
              {words.periods[known]}
            </option>
          ))}
        </select>
      </label>
      <label
        className="inline-choice"
        {...note(<UnitedNote united={review.united} />)}
      >
        {words.united}{' '}
        <select value={review.united} onChange={(event) => onUnited(event.target.value === 'takenOut' ? 'takenOut' : 'lost')}>
          {treatments.map((known) => (
            <option key={known} value={known}>
              {words.unitedChoice[known]}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

function UnitedNote({ united }: { readonly united: United }) {
  const other: United = united === 'lost' ? 'takenOut' : 'lost';
  return (
    <section className="margin-part">
      <h2>
        {words.united} {words.unitedChoice[united]}
      </h2>
      <p>{words.unitedText[united]}</p>
      <h2 className="margin-second">
        {words.united} {words.unitedChoice[other]}
      </h2>
      <p>{words.unitedText[other]}</p>
      <p className="soft">{words.source}</p>
    </section>
  );
}
