import { useId } from 'react';
import { Link } from 'wouter';
import type { StoresList, StoresYard } from '#shared/contract/stores.ts';
import { dayText } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { words } from './words.ts';

/** Supers that may come off, from the house's day on, with the caution about lifting them. */
export function SupersSection({ list, yards }: { readonly list: StoresList; readonly yards: readonly StoresYard[] }) {
  const heading = useId();
  const rows = yards.flatMap(({ colonies }) => colonies.flatMap(({ id, label, supers }) => (supers === null ? [] : [{ id, label, ...supers }])));
  const { shown, more } = useFirstRows(rows, words.supers);
  if (rows.length === 0 && list.asOf >= list.takeFrom) return null;
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{words.supers}</h2>
      {rows.length === 0 ? (
        <p className="soft">{words.supersBefore(dayText(list.takeFrom))}</p>
      ) : (
        <>
          <p className="caution">{list.lifting}</p>
          <p className="soft">{words.supersSold}</p>
          <div className="scroll" tabIndex={0} role="group" aria-labelledby={heading}>
            <table className="tight stores-reasons" aria-labelledby={heading}>
              <thead>
                <tr>
                  {[words.colony, words.supersOn, words.supersDo, words.supersWhy].map((head) => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {shown.map(({ id, label, words: on, say, reason }) => (
                  <tr key={id}>
                    <th scope="row">
                      <Link href={`/colonies/${id}`}>{label}</Link>
                    </th>
                    <td>{on}</td>
                    <td>{words.supersSay[say]}</td>
                    <td>{reason}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {more}
        </>
      )}
    </section>
  );
}
