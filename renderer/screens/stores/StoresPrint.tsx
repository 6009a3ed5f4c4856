import type { StoresList, StoresYard } from '#shared/contract/stores.ts';
import type { MassUnit } from '#shared/units.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { dayText, dayTight, missing } from '../../parts/format.ts';
import { PaperPage } from '../../parts/PaperPage.tsx';
import './stores.css';
import { massFigure, massText, syrupText, todoText } from './storesText.ts';
import { words } from './words.ts';

/** The list on paper, a table for each yard, with room to write what was given. */
export function StoresPrint() {
  const { book } = useBook();
  const { data, fault } = useRead('stores.list', {}, { keep: true });
  const title = data ? words.printTitle(dayText(data.asOf)) : words.title;
  return (
    <PaperPage title={title} className="stores-paper" print={words.printButton} ready={data !== undefined && data.yards.length > 0} backTo="/needs/stores" back={words.printBack} fault={fault}>
      {data && book ? <Sheets list={data} book={book.name} unit={book.massUnit} /> : null}
    </PaperPage>
  );
}

function Sheets({ list, book, unit }: { readonly list: StoresList; readonly book: string; readonly unit: MassUnit }) {
  return (
    <article>
      <h1>{words.printTitle(dayText(list.asOf))}</h1>
      <p>{words.printLine(book, dayText(list.asOf))}</p>
      <p className="paper-sentence">{list.sentence}</p>
      {list.totals.supers === 0 ? null : <p>{list.lifting}</p>}
      {list.yards.map((yard) => (
        <YardSheet key={yard.id} yard={yard} line={words.printLine(book, dayText(list.asOf))} unit={unit} />
      ))}
    </article>
  );
}

function YardSheet({ yard: { code, name, totals, colonies, unite }, line, unit }: { readonly yard: StoresYard; readonly line: string; readonly unit: MassUnit }) {
  return (
    <section>
      <h2>{words.printHead(code, name)}</h2>
      <p>{totals.heavy + totals.light === 0 ? words.printNoFeed : words.printSum(totals.feed, syrupText(totals, unit), massText(totals.sugar, unit, 0))}</p>
      <table className="tight">
        <caption className="visually-hidden">{words.printHead(code, name)}</caption>
        <thead>
          <tr className="paper-running">
            <td colSpan={7}>{`${words.printHead(code, name)}, ${line}`}</td>
          </tr>
          <tr>
            <th scope="col">{words.colony}</th>
            <th scope="col" className="number">{`${words.told}, ${unit}`}</th>
            <th scope="col" className="number">
              {words.on}
            </th>
            <th scope="col" className="number">{`${words.reckoned}, ${unit}`}</th>
            <th scope="col">{words.todo}</th>
            <th scope="col">{words.supersOn}</th>
            <th scope="col">{words.printDone}</th>
          </tr>
        </thead>
        <tbody>
          {colonies.map((colony) => (
            <tr key={colony.id}>
              <th scope="row">{colony.label}</th>
              <td className="number">{massFigure(colony.told?.grams ?? null, unit)}</td>
              <td className="number">{colony.told === null ? missing : dayTight(colony.told.day)}</td>
              <td className="number">{massFigure(colony.reckoned, unit)}</td>
              <td>{todoText(colony, unit)}</td>
              <td>{colony.supers === null ? '' : `${colony.supers.words}: ${words.supersSay[colony.supers.say]}`}</td>
              <td className="paper-write" />
            </tr>
          ))}
        </tbody>
      </table>
      {unite.map(({ colony, reason, partner }) => (
        <p key={colony.id}>
          {colony.label}: {reason} {partner === null ? words.uniteNobody : words.uniteInto(partner.label, partner.reason)}
        </p>
      ))}
    </section>
  );
}
