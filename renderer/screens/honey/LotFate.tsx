import { Link } from 'wouter';
import type { LotPage } from '#shared/contract/lots.ts';
import type { MassUnit } from '#shared/units.ts';
import { dayText, money, number } from '../../parts/format.ts';
import { lotAddress } from '../../parts/lotAddress.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { massText } from './honeyText.ts';
import { lotWords as words } from './lotWords.ts';

/** From the lot forward: jars, lots it was poured into, sales. */
export function LotFate({ page, unit }: { readonly page: LotPage; readonly unit: MassUnit }) {
  const { shown, more } = useFirstRows(page.sales, words.sales);
  const { jars } = page.line;
  return (
    <section className="section honey-page" aria-label={words.fate}>
      <h2>{words.fate}</h2>
      <p>{page.saleSentence}</p>
      {page.wentTo.length === 0 ? null : (
        <p>
          {`${words.pours}: `}
          {page.wentTo.map(({ code: to, day, mass }, at) => (
            <span key={`${to} ${at}`}>
              {at > 0 ? '; ' : ''}
              <Link href={lotAddress(to)}>{to}</Link>
              {`, ${massText(mass, unit)}, ${dayText(day)}`}
            </span>
          ))}
        </p>
      )}
      {jars.length === 0 ? null : (
        <table className="tight narrow">
          <caption>
            <h3>{words.jars}</h3>
          </caption>
          <thead>
            <tr>
              <th scope="col">{words.size}</th>
              {[words.filledCount, words.sold, words.jarsLeft].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">{words.bestBefore}</th>
            </tr>
          </thead>
          <tbody>
            {jars.map(({ words: jar, filled, sold, left, bestBefore }) => (
              <tr key={`${jar} ${bestBefore}`}>
                <th scope="row">{jar}</th>
                <td className="number">{number(filled)}</td>
                <td className="number">{number(sold, 1)}</td>
                <td className={left < 0 ? 'number needs' : 'number'}>{number(left, 1).replace('-', '−')}</td>
                <td>{bestBefore === null ? words.none : dayText(bestBefore)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {page.sales.length === 0 ? (
        <p className="soft">{words.noSales}</p>
      ) : (
        <>
          <table className="tight narrow">
            <caption>
              <h3>{words.sales}</h3>
            </caption>
            <thead>
              <tr>
                <th scope="col">{words.day}</th>
                <th scope="col">{words.item}</th>
                <th scope="col" className="number">
                  {words.quantity}
                </th>
                <th scope="col" className="number">
                  {words.price}
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map(({ entry, day, item, quantity, price }) => (
                <tr key={entry}>
                  <th scope="row">
                    <Link href={`/entries/${entry}`}>{dayText(day)}</Link>
                  </th>
                  <td>{item}</td>
                  <td className="number">{number(quantity, 1)}</td>
                  <td className="number">{money(price)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {more}
        </>
      )}
    </section>
  );
}
