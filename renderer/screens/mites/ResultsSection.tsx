import { Link } from 'wouter';
import type { FallView, TreatmentRow } from '#shared/contract/mites.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, dayTight, fixed, missing, number, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { words } from './words.ts';

/** What treatments did: by active ingredient over the seasons, and one by one for the last two. */
export function ResultsSection() {
  const { data, fault } = useRead('mites.results', {}, { keep: true });
  const { shown, more } = useFirstRows(data?.rows ?? [], 'treatments');
  const note = useMarginNote();
  if (data === undefined) return <FaultNote fault={fault} />;
  const judged = data.ingredients.some(({ result }) => result.fall !== null);
  return (
    <section className="section" aria-label={words.results}>
      <h2>{words.results}</h2>
      <p>{judged ? words.resultsLine : words.resultsNone}</p>
      {data.ingredients.length === 0 ? null : (
        <table className="tight narrow">
          <caption className="visually-hidden">{words.results}</caption>
          <thead>
            <tr>
              <th scope="col">{words.ingredient}</th>
              <th scope="col" className="number">
                {words.judged}
              </th>
              <th scope="col" className="number">
                {words.coloniesCounted}
              </th>
              <th scope="col" className="number">
                {words.beforeAfter}
              </th>
              <th scope="col" className="number">
                {words.fell}
              </th>
            </tr>
          </thead>
          <tbody>
            {data.ingredients.map(({ ingredient, treatments, judged: told, result, seasons }) => (
              <tr
                key={ingredient}
                tabIndex={0}
                {...note(
                  <>
                    <ResultNote heading={ingredient} result={result} />
                    <MarginPart heading={words.bySeason}>
                      <ul>
                        {seasons.map(({ season, name, result: own }) => (
                          <li key={season}>{`${name}: ${own.fall === null ? missing : fallText(own)}`}</li>
                        ))}
                      </ul>
                    </MarginPart>
                  </>,
                )}
              >
                <th scope="row">{ingredient}</th>
                <td className="number">{words.judgedOf(told, treatments)}</td>
                <td className="number">{number(result.colonies)}</td>
                <td className="number">{beforeAfter(result)}</td>
                <td className="number figure-range">{fallText(result)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {data.rows.length === 0 ? null : (
        <div className="scroll" tabIndex={0} role="group" aria-label={words.recent}>
          <table className="tight">
            <caption>
              <h3>{words.recent}</h3>
            </caption>
            <thead>
              <tr>
                <th scope="col">{words.yard}</th>
                <th scope="col">{words.ingredient}</th>
                <th scope="col">{words.onOff}</th>
                <th scope="col" className="number">
                  {words.coloniesCounted}
                </th>
                <th scope="col" className="number">
                  {words.beforeAfter}
                </th>
                <th scope="col" className="number">
                  {words.fell}
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((row) => (
                <tr key={row.entries.join(' ')} {...note(<ResultNote heading={`${row.yard} ${row.ingredient}`} result={row.result} row={row} />)}>
                  <th scope="row">
                    <Link href={`/entries/${row.entries[0]}`}>{row.yard === '' ? missing : row.yard}</Link>
                  </th>
                  <td>{row.ingredient}</td>
                  <td>{row.from === row.until ? dayTight(row.from) : `${dayTight(row.from)} – ${dayTight(row.until)}`}</td>
                  <td className="number">{`${row.result.colonies} of ${row.treated}`}</td>
                  <td className="number">{beforeAfter(row.result)}</td>
                  <td className="number figure-range">
                    {fallText(row.result)}
                    {row.during ? <span className="soft"> {words.during}</span> : null}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {more}
        </div>
      )}
      <p className="no-print">
        <Link href="/print/treatments">{words.print}</Link>
      </p>
    </section>
  );
}

function ResultNote({ heading, result, row }: { readonly heading: string; readonly result: FallView; readonly row?: TreatmentRow }) {
  return (
    <MarginPart heading={heading}>
      <p>{words.basisNote[result.basis]}</p>
      {result.controls > 0 ? <p>{words.controls(result.controls)}</p> : null}
      {result.few ? <p>{words.noteFew}</p> : null}
      {row === undefined ? null : <p className="soft">{`${dayText(row.from)}${row.notes.length === 0 ? '' : `: ${row.notes.join('; ')}`}`}</p>}
    </MarginPart>
  );
}

export function beforeAfter({ before, after }: FallView): string {
  return before === null || after === null ? missing : `${fixed(before, 1)}, ${fixed(after, 1)}`;
}

/** `56 % (21–75)`; a rise is named as one, and a range that decides nothing is put in words. */
export function fallText({ fall, limits, basis, few }: FallView): string {
  if (fall === null || limits === null) return basis === 'no mite before' ? words.noMite : missing;
  const shown = fall < 0 ? `${words.risen} ${percent(-fall)}` : percent(fall);
  const [low, high] = limits;
  if (few && (low === null || low < -1)) return `${shown}\u2002(${words.tooFew})`;
  const side = (share: number | null) => (share === null || share < -1 ? words.mayRise : number(share * 100).replace('-', '−'));
  return `${shown}\u2002(${side(low)} – ${side(high)})`;
}
