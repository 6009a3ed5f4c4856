import { useId } from 'react';
import { Link } from 'wouter';
import type { StoresList, StoresYard } from '#shared/contract/stores.ts';
import { dayText } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { words } from './words.ts';

/** Colonies too weak for winter, each with the one of its yard that it could go into. */
export function UniteSection({ list, yards }: { readonly list: StoresList; readonly yards: readonly StoresYard[] }) {
  const heading = useId();
  const rows = yards.flatMap(({ unite }) => unite);
  const { shown, more } = useFirstRows(rows, words.unite);
  const open = list.asOf >= list.uniteFrom && list.asOf <= list.uniteUntil;
  if (!open && list.phase === 'winter') return null;
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{words.unite}</h2>
      {rows.length === 0 ? (
        <p className="soft">{open ? words.uniteNone : words.uniteNow(dayText(list.uniteFrom), dayText(list.uniteUntil))}</p>
      ) : (
        <>
          <p className="caution">{words.uniteCaution}</p>
          <ul className="lines stores-unite">
            {shown.map(({ colony, reason, partner }) => (
              <li key={colony.id}>
                <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
                <span>
                  {reason} {partner === null ? words.uniteNobody : words.uniteInto(partner.label, partner.reason)}
                </span>
              </li>
            ))}
          </ul>
          {more}
        </>
      )}
    </section>
  );
}
