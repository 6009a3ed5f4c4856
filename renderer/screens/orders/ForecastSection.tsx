import type { OrderDecision } from '#shared/contract/decision.ts';
import { seasonName } from '#shared/seasons.ts';
import { Figure } from '../../charts/Figure.tsx';
import { SurvivorBars } from '../../charts/SurvivorBars.tsx';
import { SurvivorTable } from '../../charts/SurvivorTable.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { dayShort, dayText, fixed, missing, number, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { ViewForm } from './ViewForm.tsx';
import { words } from './words.ts';

/** How many are likely to live until spring, for all and by yard, and where the person knows better. */
export function ForecastSection({ decision }: { readonly decision: OrderDecision }) {
  const note = useMarginNote();
  const { forecast, target, yards } = decision;
  const data = { chances: forecast.chances, low: forecast.low, high: forecast.high, target };
  const from = forecast.winters.at(-1)?.from;
  const springs = number(decision.answer?.solver.springs ?? 4096);
  return (
    <section className="section" aria-label={words.forecast(dayText(decision.spring))}>
      <div
        className="figured"
        {...note(
          <MarginPart heading={words.forecast(dayText(decision.spring))}>
            <p>{forecast.from}</p>
            {forecast.winters.map(({ season, lost, atRisk }) => (
              <p key={season}>
                {seasonName(season)}: {lost} of {atRisk} lost
              </p>
            ))}
            <p>{words.springsNote(springs)}</p>
          </MarginPart>,
        )}
      >
        <h2>{words.forecast(dayText(decision.spring))}</h2>
        <Figure name={words.survivorsName} picture={(width) => <SurvivorBars data={data} width={width} height={90} />} table={<SurvivorTable data={data} caption={words.survivorsName} />} />
      </div>
      <h3>{words.forecastBy}</h3>
      <table className="tight">
        <caption className="visually-hidden">{words.forecastBy}</caption>
        <thead>
          <tr>
            <th scope="col">{words.yard}</th>
            {[words.room, words.living, words.past(from === undefined ? null : dayShort(from)), words.ratio, words.expected, words.adjusted].map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {yards.map((yard) => (
            <tr
              key={yard.yard}
              tabIndex={0}
              {...note(
                <MarginPart heading={yard.name}>
                  <p>{words.pastNote(yard.lost, yard.atRisk, yard.winters)}</p>
                  <p>{words.ratioNote}</p>
                  {yard.adjusted === null ? null : <p>{yard.adjusted.reason}</p>}
                </MarginPart>,
              )}
            >
              <th scope="row">
                {yard.code} {yard.name}
              </th>
              <td className="number">{yard.room === null ? missing : number(yard.room)}</td>
              <td className="number">{number(yard.living)}</td>
              <td className="number">{yard.atRisk === 0 ? missing : `${yard.lost} of ${yard.atRisk}`}</td>
              <td className="number">{yard.atRisk === 0 ? missing : `${fixed(yard.ratio, 2)} (${fixed(yard.ratioLimits[0], 2)}–${fixed(yard.ratioLimits[1], 2)})`}</td>
              <td className="number">{`${fixed(yard.mean, 1)} (${yard.low}–${yard.high})`}</td>
              <td className="number">{yard.adjusted === null ? missing : percent(yard.adjusted.rate)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Entering>
        <ViewForm yards={yards} />
      </Entering>
    </section>
  );
}
