import { useState } from 'react';
import type { LossRow } from '#shared/contract/losses.ts';
import type { LossRates } from '#shared/contract/lossSections.ts';
import { seasonName, type Period, type Season } from '#shared/seasons.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { ColoniesBehind, useBehind } from '../../parts/ColoniesBehind.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { missing, number, percentRange, signed } from '#shared/figures.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { isAbove, pastRates, rangeOf, ratesOf } from '#shared/lossChoice.ts';
import { PublishedTable } from './PublishedTable.tsx';
import { CohortNote, RateNote } from './rateNotes.tsx';
import { RatesTable, type RatedRow } from './RatesTable.tsx';
import { reviewWords } from './reviewWords.ts';
import { useUnited } from './useUnited.ts';
import { words } from './words.ts';

const periods: readonly Period[] = ['winter', 'summer', 'year'];

/** Section 2: loss by both definitions, by yard, beside the person's own other seasons and the published surveys. */
export function RatesSection({ season }: { readonly season: Season }) {
  const [united, setUnited] = useUnited();
  const [period, setPeriod] = useState<Period>('winter');
  const note = useMarginNote();
  const { data: review, fault, stale } = useCalmRead('losses.rates', { season, united }, { keep: true });
  if (!review) return fault ? <FaultNote fault={fault} /> : <p className="soft review-waiting">{reviewWords.reading}</p>;
  return (
    <Awaited stale={stale}>
      {review.sentences.length > 0 && <p className="sentence">{review.sentences.join(' ')}</p>}
      <div className="choices">
        <label className="inline-choice" {...note(<UnitedNote />)}>
          {words.united}{' '}
          <select value={united} onChange={(event) => setUnited(event.target.value === 'takenOut' ? 'takenOut' : 'lost')}>
            <option value="lost">{words.unitedChoice.lost}</option>
            <option value="takenOut">{words.unitedChoice.takenOut}</option>
          </select>
        </label>
      </div>
      <DefinitionsTable review={review} />
      <div className="choices review-choice">
        <label className="inline-choice">
          {words.period}{' '}
          <select value={period} onChange={(event) => setPeriod(periods.find((known) => known === event.target.value) ?? 'winter')}>
            {periods.map((known) => (
              <option key={known} value={known}>
                {words.periods[known]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <div className="loss-pair">
        <YardRates review={review} period={period} />
        <PastRates review={review} period={period} />
      </div>
      <PublishedTable review={review} />
    </Awaited>
  );
}

function UnitedNote() {
  return (
    <MarginPart heading={words.united}>
      <p>{words.unitedText.lost}</p>
      <p>{words.unitedText.takenOut}</p>
      <p className="soft">{words.source}</p>
    </MarginPart>
  );
}

const parts = ['dead', 'queen', 'disaster'] as const;

/** This season by both definitions, the wintered colonies with the three kinds of their losses. */
function DefinitionsTable({ review }: { readonly review: LossRates }) {
  const behind = useBehind();
  const { season, united } = review;
  const own = review.cohorts.find((cohort) => cohort.season === season);
  const rows: RatedRow[] = periods.flatMap((period) => {
    const { all } = ratesOf(review, period);
    if (all === undefined) return [];
    const name = all.complete ? reviewWords.turnover[period] : `${reviewWords.turnover[period]}, ${words.soFar}`;
    const at = (part: 'atRisk' | 'lost') => ({ kind: 'rate', season, yard: 'all', period, united, part }) as const;
    return [{ ...ratedRow(all, name), key: period, more: meanText(all.average), behind: { atRisk: at('atRisk'), lost: at('lost') } }];
  });
  if (own !== undefined) {
    const { loss, complete } = own;
    const wintered = { kind: 'cohort', season, part: 'wintered' } as const;
    const name = complete ? reviewWords.cohort : `${reviewWords.cohort}, ${words.soFar}`;
    const cohort: RatedRow[] = [
      {
        key: 'cohort', name, ...loss.total, more: loss.average === null ? missing : `${number(loss.average.mean * 100)} ${percentRange(loss.average.range)}`,
        note: <CohortNote loss={loss} rate={loss.total} name={name} whole />, behind: { atRisk: wintered, lost: { kind: 'cohort', season, part: 'lost' } },
      },
      ...parts.flatMap((part): RatedRow[] => {
        const rate = loss.parts.find((one) => one.part === part)?.rate;
        if (rate === undefined) return [];
        return [{ key: part, name: reviewWords.parts[part], part: true, ...rate, more: '', note: <CohortNote loss={loss} rate={rate} name={reviewWords.parts[part]} whole={false} />, behind: { atRisk: wintered, lost: { kind: 'cohort', season, part } } }];
      }),
    ];
    rows.splice(1, 0, ...cohort);
  }
  if (rows.length === 0) return <p className="soft">{words.notTold}</p>;
  return (
    <section className="figured" aria-label={reviewWords.definitions}>
      <h3>{reviewWords.definitions}</h3>
      <RatesTable rows={rows} headOfNames={reviewWords.definition} caption={reviewWords.definitions} behind={behind} more={reviewWords.mean} />
      {own && own.loss.total.atRisk > 0 && <p className="soft small after-table">{reviewWords.cohortLeft(own.loss.sold, own.loss.given, own.loss.united, own.loss.came)}</p>}
      <ColoniesBehind behind={behind} />
    </section>
  );
}

function meanText(average: LossRow['average']): string {
  return average === null ? missing : `${number(average.mean * 100)} ${percentRange(average.ci)}`;
}

function ratedRow(row: LossRow, name: string, total?: LossRow): RatedRow {
  const marked = isAbove(row, total);
  return { key: `${row.season} ${row.group}`, name, atRisk: row.atRisk, lost: row.lost, rate: row.rate, range: rangeOf(row), marked, note: <RateNote row={row} name={name} above={marked} /> };
}

function YardRates({ review, period }: { readonly review: LossRates; readonly period: Period }) {
  const behind = useBehind();
  const { yards, all } = ratesOf(review, period);
  const { season, united } = review;
  const names = new Map(review.yards.map(({ code, name }) => [code, name]));
  const heading = all && !all.complete ? `${words.rateHeading[period]}, ${words.soFar}` : words.rateHeading[period];
  const rowOf = (row: LossRow, name: string): RatedRow => {
    const at = (part: 'atRisk' | 'lost') => ({ kind: 'rate', season, yard: row.group, period, united, part }) as const;
    return { ...ratedRow(row, name, all), behind: { atRisk: at('atRisk'), lost: at('lost') } };
  };
  return (
    <section className="figured" aria-label={heading}>
      <h3>{heading}</h3>
      {!all || all.atRisk === 0 ? (
        <p className="soft">{all ? words.noRates : words.notTold}</p>
      ) : (
        <RatesTable rows={yards.map((row) => rowOf(row, names.get(row.group) ?? row.group))} total={rowOf(all, words.all)} headOfNames={words.yard} caption={heading} behind={behind} />
      )}
      {period === 'winter' && yards.length > 1 && review.moved > 0 && <p className="soft small after-table">{reviewWords.movedYards(review.moved)}</p>}
      {all && all.atRisk > 0 && all.quasi === null && all.quasiWhy !== null && <p className="soft small after-table">{all.quasiWhy}</p>}
      <ColoniesBehind behind={behind} />
    </section>
  );
}

/** The person's own seasons, each with the difference that this one makes to it. */
function PastRates({ review, period }: { readonly review: LossRates; readonly period: Period }) {
  const behind = useBehind();
  const rows = pastRates(review, period);
  const heading = words.past[period];
  const { united } = review;
  const less = (row: LossRow): string => {
    if (row.season === review.season) return reviewWords.thisSeason;
    const found = review.differences.find((one) => one.season === row.season && one.period === period);
    return found === undefined ? missing : `${signed(found.value * 100)} (${signed(found.range[0] * 100)} to ${signed(found.range[1] * 100)})`;
  };
  const rated = rows.map((row): RatedRow => {
    const name = row.complete ? seasonName(row.season) : `${seasonName(row.season)}, ${words.soFar}`;
    const at = (part: 'atRisk' | 'lost') => ({ kind: 'rate', season: row.season, yard: 'all', period, united, part }) as const;
    const note = (
      <>
        <RateNote row={row} name={name} />
        {row.season < review.season && (
          <MarginPart heading={reviewWords.less}>
            <p>{reviewWords.lessNote}</p>
          </MarginPart>
        )}
      </>
    );
    return { ...ratedRow(row, name), note, more: less(row), behind: { atRisk: at('atRisk'), lost: at('lost') } };
  });
  return (
    <section className="figured" aria-label={heading}>
      <h3>{heading}</h3>
      {rows.length < 2 && <p className="soft">{words.pastOne}</p>}
      {rows.length > 0 && <RatesTable rows={rated} headOfNames={words.season} caption={heading} behind={behind} more={reviewWords.less} />}
      <ColoniesBehind behind={behind} />
    </section>
  );
}
