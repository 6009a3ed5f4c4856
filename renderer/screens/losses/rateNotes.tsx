import type { LossRow } from '#shared/contract/losses.ts';
import type { CohortLoss, CountedRate } from '#shared/contract/lossSections.ts';
import { fixed, percent, percentRange } from '../../parts/format.ts';
import { MarginPart } from '../../parts/Margin.tsx';
import { enoughYards, fewColonies, rangeOf } from '#shared/lossChoice.ts';
import { reviewWords } from './reviewWords.ts';
import { words } from './words.ts';

/** The margin's account of one rate by the turnover rule: what the number allows, how the range came about. */
export function RateNote({ row, name, above = false }: { readonly row: LossRow; readonly name: string; readonly above?: boolean }) {
  const { wilson, clopperPearson, quasi, quasiWhy, average } = row;
  return (
    <>
      <MarginPart heading={words.noteHeading(name, row.lost, row.atRisk)}>
        <p className="sentence">{whatItSays(row.atRisk, row.rate, rangeOf(row))}</p>
        {above && <p>{words.above}</p>}
        {!row.complete && <p>{words.running}</p>}
        {row.group === 'all' && <p>{reviewWords.turnoverNote}</p>}
      </MarginPart>
      {(wilson ?? quasi ?? quasiWhy) && (
        <MarginPart heading={words.intervals}>
          {quasi && <p>{words.quasi(percentRange([quasi.lower, quasi.upper]), quasi.df, quasi.units, quasi.dispersion < 1 ? words.floored(fixed(quasi.dispersion, 1)) : fixed(quasi.dispersion, 1))}</p>}
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
    </>
  );
}

/** The margin's account of the wintered colonies, or of one of the three kinds of their losses. */
export function CohortNote({ loss, rate, name, whole }: { readonly loss: CohortLoss; readonly rate: CountedRate; readonly name: string; readonly whole: boolean }) {
  const { average } = loss;
  return (
    <>
      <MarginPart heading={words.noteHeading(name, rate.lost, rate.atRisk)}>
        <p className="sentence">{whatItSays(rate.atRisk, rate.rate, rate.range)}</p>
        <p>{reviewWords.methods[rate.method]}</p>
        <p>{whole ? reviewWords.cohortNote : reviewWords.partsNote}</p>
        {whole && <p>{reviewWords.cohortLeft(loss.sold, loss.given, loss.united, loss.came)}</p>}
      </MarginPart>
      {whole && average && (
        <MarginPart heading={words.average}>
          <p>{reviewWords.meanOf(percent(average.mean), percentRange(average.range), percent(average.median), percent(average.smallest), percent(average.largest), average.units)}</p>
        </MarginPart>
      )}
    </>
  );
}

function whatItSays(atRisk: number, rate: number | null, range: readonly [number, number] | null): string {
  if (rate === null || range === null) return words.noneAtRisk;
  const [low, high] = [Math.round(range[0] * 100), Math.round(range[1] * 100)];
  return atRisk < fewColonies ? words.fewSentence(atRisk, low, high) : words.rateSentence(Math.round(rate * 100), low, high);
}
