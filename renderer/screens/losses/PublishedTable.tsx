import { seasonName, type Period } from '#shared/seasons.ts';
import type { LossRates } from '#shared/contract/lossSections.ts';
import { missing, number, percentRange, rate } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { publishedLines, publishedSpan, rangeOf, type PublishedLine } from '#shared/lossChoice.ts';
import { reviewWords as words } from './reviewWords.ts';
import { words as lossWords } from './words.ts';

const periods: readonly Period[] = ['winter', 'summer', 'year'];
const heads = lossWords.periodHeads;

/** Published loss rates with their sources, beside the person's own winter where it is the same one. */
export function PublishedTable({ review }: { readonly review: LossRates }) {
  const lines = publishedLines(review.published);
  const span = (survey: 'us' | 'coloss'): readonly [string, string] | null => {
    const found = publishedSpan(review.published, survey);
    return found === null ? null : [number(found[0] * 100), number(found[1] * 100)];
  };
  return (
    <section className="section" aria-label={words.published}>
      <h3>{words.published}</h3>
      <p className="sentence">{words.publishedSentence(span('us'), span('coloss'))}</p>
      <div className="scroll published" tabIndex={0} role="group" aria-label={words.published}>
        <table className="tight">
          <caption className="visually-hidden">{words.published}</caption>
          <thead>
            <tr>
              <th scope="col">{lossWords.season}</th>
              <th scope="col">{words.survey}</th>
              {periods.map((period) => (
                <th key={period} scope="col" className="number">
                  {heads[period]}
                </th>
              ))}
              <th scope="col" className="number">
                {words.own}
              </th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <Line key={line.key} line={line} own={ownWinter(review, line)} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function ownWinter(review: LossRates, { season, what }: PublishedLine): string {
  if (what === 'average') return '';
  const row = review.rates.find((one) => one.group === 'all' && one.period === 'winter' && one.season === season && one.complete);
  return row === undefined ? missing : rate(row.lost, row.atRisk, rangeOf(row));
}

function Line({ line, own }: { readonly line: PublishedLine; readonly own: string }) {
  const note = useMarginNote();
  const ranged = Object.values(line.rates).find((one) => one.range !== null);
  return (
    <tr
      tabIndex={0}
      {...note(
        <MarginPart heading={`${line.place}, ${seasonName(line.season)}`}>
          {line.sources.map((source) => (
            <p key={source}>{source}</p>
          ))}
          {ranged?.range && ranged.rangeIs === 'countries' && <p>{words.countries(number(ranged.range[0] * 100), number(ranged.range[1] * 100))}</p>}
          <p className="soft">{words.publishedNote}</p>
        </MarginPart>,
      )}
    >
      <th scope="row">{seasonName(line.season)}</th>
      <td>
        {line.place}
        {line.what === 'average' && `, ${words.averages}`}
      </td>
      {periods.map((period) => {
        const found = line.rates[period];
        return (
          <td key={period} className="number">
            {found === undefined ? missing : number(found.rate * 100, 1)}
            {found?.rangeIs === 'interval' && ` ${percentRange(found.range, 1)}`}
          </td>
        );
      })}
      <td className="number">{own}</td>
    </tr>
  );
}
