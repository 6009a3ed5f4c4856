import type { OrderAnswer } from '#shared/contract/decision.ts';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** Where splits are made, where bought colonies stand, what moves. */
export function SplitsSection({ answer }: { readonly answer: OrderAnswer }) {
  const note = useMarginNote();
  const { splits, splitsByYard, placed, moves, queensForSplits } = answer;
  const yards = [...new Set([...splitsByYard, ...placed, ...moves].map(({ yard }) => yard))].toSorted();
  const count = (list: readonly { yard: string; count: number }[], yard: string) => list.find((one) => one.yard === yard)?.count ?? 0;
  const sum = (of: (yard: string) => number) => number(yards.reduce((total, yard) => total + of(yard), 0));
  const move = (yard: string) => moves.find((one) => one.yard === yard);
  const columns = [
    { head: words.splitsMade, of: (yard: string) => count(splitsByYard, yard) },
    { head: words.placed, of: (yard: string) => count(placed, yard) },
    ...(moves.length === 0 ? [] : [{ head: words.movedOut, of: (yard: string) => move(yard)?.out ?? 0 }, { head: words.movedIn, of: (yard: string) => move(yard)?.into ?? 0 }]),
  ];
  return (
    <section className="section" aria-label={words.splitsPlan} {...note(<MarginPart heading={words.splitsPlan}><p>{words.splitsNote}</p></MarginPart>)}>
      <h2>{words.splitsPlan}</h2>
      <p>
        {splits === 0 ? words.splitsNone : words.splitsText(splits)}
        {queensForSplits > 0 ? ` ${words.splitsQueens(queensForSplits)}` : ''}
      </p>
      {splits > 0 ? <p className="caution order-caution">{words.smoke}</p> : null}
      {yards.length === 0 ? null : (
        <table className="tight narrow">
          <caption className="visually-hidden">{words.splitsPlan}</caption>
          <thead>
            <tr>
              <th scope="col">{words.yard}</th>
              {columns.map(({ head }) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {yards.map((yard) => (
              <tr key={yard}>
                <th scope="row">{yard}</th>
                {columns.map(({ head, of }) => (
                  <td key={head} className="number">
                    {number(of(yard))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr className="totals">
              <th scope="row">{words.costTotal}</th>
              {columns.map(({ head, of }) => (
                <td key={head} className="number">
                  {sum(of)}
                </td>
              ))}
            </tr>
          </tfoot>
        </table>
      )}
    </section>
  );
}
