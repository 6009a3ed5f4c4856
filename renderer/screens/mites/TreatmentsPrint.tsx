import { useLocation } from 'wouter';
import type { TreatmentLog, TreatmentRow } from '#shared/contract/mites.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { csvText } from '../../parts/csv.ts';
import { download } from '../../parts/download.ts';
import { dayText, fixed, missing } from '../../parts/format.ts';
import { PaperPage } from '../../parts/PaperPage.tsx';
import './mites.css';
import { words } from './words.ts';

/** A season's treatments on paper, as an inspector asks for them. */
export function TreatmentsPrint({ season }: { readonly season: string | undefined }) {
  const { book } = useBook();
  const [, go] = useLocation();
  const number = season !== undefined && /^\d{4}$/.test(season) ? Number(season) : null;
  const asked = number === null ? {} : { season: number };
  const { data, fault } = useRead('mites.log', asked, { keep: true });
  const known = data !== undefined && (season === undefined || data.seasons.some((one) => one.season === number));
  const title = known ? words.printTitle(data.seasonName) : words.title;
  return (
    <PaperPage
      title={title}
      className="mites-paper"
      print={words.printButton}
      ready={known}
      backTo="/needs/mites"
      back={words.printBack}
      fault={fault}
      choices={
        known ? (
          <>
            <label className="inline-choice">
              {words.printSeason}{' '}
              <select value={data.season} onChange={(event) => go(`/print/treatments/${event.target.value}`)}>
                {data.seasons.map(({ season: one, name }) => (
                  <option key={one} value={one}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            <button type="button" onClick={() => download(words.csvName(data.seasonName), logCsv(data.rows))}>
              {words.csv}
            </button>
          </>
        ) : null
      }
    >
      {data && !known ? <p>{words.printNoSeason(season ?? '')}</p> : null}
      {known && book ? <Log log={data} book={book.name} /> : null}
    </PaperPage>
  );
}

function Log({ log, book }: { readonly log: TreatmentLog; readonly book: string }) {
  const line = words.printLine(book, dayText(log.asOf));
  return (
    <article>
      <h1>{words.printTitle(log.seasonName)}</h1>
      <p>{line}</p>
      {log.rows.length === 0 ? (
        <p>{words.printNone(log.seasonName)}</p>
      ) : (
        <table className="tight">
          <caption className="visually-hidden">{words.printTitle(log.seasonName)}</caption>
          <thead>
            <tr className="paper-running">
              <td colSpan={9}>{`${words.printTitle(log.seasonName)}, ${line}`}</td>
            </tr>
            <tr>
              {[words.yard, words.which, words.ingredient, words.on, words.off, words.supersThen].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
              {[words.before, words.after].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">{words.written}</th>
            </tr>
          </thead>
          <tbody>
            {log.rows.map((row) => (
              <tr key={row.entries.join(' ')}>
                <th scope="row">{row.yard === '' ? missing : row.yard}</th>
                <td>{row.whole ? words.every(row.treated) : words.some(row.labels)}</td>
                <td>{row.ingredient}</td>
                <td>{dayText(row.from)}</td>
                <td>{offText(row)}</td>
                <td>{words.supersOf(row.withSupers, row.treated)}</td>
                <td className="number">{fixed(row.result.before, 1)}</td>
                <td className="number">
                  {fixed(row.result.after, 1)}
                  {row.during ? '*' : ''}
                </td>
                <td>{row.notes.join('; ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {log.rows.some(({ during }) => during) ? <p className="small">* {words.during}</p> : null}
      {log.counted.length === 0 ? null : (
        <p className="small">
          {words.countedLine} {log.counted.map(({ yard, colonies, counts }) => words.countedIn(yard, colonies, counts)).join('; ')}.
        </p>
      )}
      <p className="small">{words.printWho}</p>
      <p className="mites-sign">{words.printSign}</p>
    </article>
  );
}

function offText({ from, until, ended }: TreatmentRow): string {
  return !ended ? words.offUnknown : until === from ? words.once : dayText(until);
}

/** Days in ISO, figures plain; what is not recorded is empty. */
export function logCsv(rows: readonly TreatmentRow[]): string {
  return csvText(
    words.csvHead,
    rows.map((row) => [
      row.yard, row.treated, row.whole ? 'every colony' : row.labels.join(' '), row.ingredient, row.from, row.ended ? row.until : null, row.withSupers,
      row.result.before === null ? null : Number(row.result.before.toFixed(2)), row.result.after === null ? null : Number(row.result.after.toFixed(2)), row.result.colonies, row.notes.join('; '), row.entries.join(' '),
    ]),
  );
}
