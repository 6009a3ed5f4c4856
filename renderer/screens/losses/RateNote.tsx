import { Link } from 'wouter';
import type { LossReview, LossRow } from '#shared/contract/losses.ts';
import { dayShort, fixed, percent, percentRange } from '../../parts/format.ts';
import { MarginPart } from '../../parts/Margin.tsx';
import { endedIn, enoughYards, fewColonies, rangeOf } from './lossChoice.ts';
import { words } from './words.ts';

/** The margin's account of one rate: what the number allows, how the range came about, which colonies. */
export function RateNote({ review, row, name, above }: { readonly review: LossReview; readonly row: LossRow; readonly name: string; readonly above: boolean }) {
  const { wilson, clopperPearson, quasi, quasiWhy, average } = row;
  const ended = row.season === review.season ? endedIn(review, row.group) : [];
  return (
    <>
      <MarginPart heading={words.noteHeading(name, row.lost, row.atRisk)}>
        <p className="sentence">{whatItSays(row)}</p>
        {above && <p>{words.above}</p>}
        {!row.complete && <p>{words.running}</p>}
      </MarginPart>
      {(wilson ?? quasi ?? quasiWhy) && (
        <MarginPart heading={words.intervals}>
          {quasi && <p>{words.quasi(percentRange([quasi.lower, quasi.upper]), quasi.df, quasi.units, fixed(quasi.dispersion, 1))}</p>}
          {quasi && quasi.units < enoughYards && <p>{words.fewYards}</p>}
          {row.group === 'all' && !quasi && quasiWhy && <p>{quasiWhy}</p>}
          {wilson && <p>{words.wilson(percentRange(wilson))}</p>}
          {clopperPearson && <p>{words.clopperPearson(percentRange(clopperPearson))}</p>}
        </MarginPart>
      )}
      {average && (
        <MarginPart heading={words.average}>
          <p>{words.averageSentence(percent(average.mean), percentRange(average.ci), percent(average.median), average.units)}</p>
        </MarginPart>
      )}
      {row.group !== 'all' && row.season === review.season && (
        <MarginPart heading={words.endedHere}>
          {ended.length === 0 && <p>{words.endedNone}</p>}
          <ul>
            {ended.map((colony) => (
              <li key={colony.id}>
                <Link href={`/colonies/${colony.id}`}>{colony.label}</Link> {dayShort(colony.day)}, {endingText(colony)}
              </li>
            ))}
          </ul>
        </MarginPart>
      )}
    </>
  );
}

function whatItSays(row: LossRow): string {
  const range = rangeOf(row);
  if (row.rate === null || range === null) return words.noneAtRisk;
  const [low, high] = [Math.round(range[0] * 100), Math.round(range[1] * 100)];
  return row.atRisk < fewColonies ? words.fewSentence(row.atRisk, low, high) : words.rateSentence(Math.round(row.rate * 100), low, high);
}

function endingText(colony: LossReview['ended'][number]): string {
  return colony.causes.length > 0 ? colony.causes.join('; ') : words.endings[colony.how];
}
