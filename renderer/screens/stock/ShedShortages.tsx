import { useState } from 'react';
import { Link } from 'wouter';
import type { StockTable } from '#shared/contract/stock.ts';
import { useRead } from '../../desk/useDesk.ts';
import { dayTight } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { StrikeEntry } from '../colonies/StrikeEntry.tsx';
import { shedWords as words } from './shedWords.ts';

type Shortage = StockTable['shortages'][number];

/** What is below nothing, the entry that took it there, and the ways to mend it. */
export function ShedShortages({ shortages }: { readonly shortages: readonly Shortage[] }) {
  const [striking, setStriking] = useState<Shortage['entry'] | null>(null);
  const { shown, more } = useFirstRows(shortages, words.shortages);
  return (
    <section className="shed-shortages" aria-label={words.shortages}>
      <h3>{words.shortages}</h3>
      <ul className="lines">
        {shown.map((shortage) => (
          <li key={`${shortage.place} ${shortage.item}`}>
            <span>{dayTight(shortage.day)}</span>
            <div>
              <p className="needs">{shortage.sentence}</p>
              <p>{shortage.what}</p>
              <p className="soft">{shortage.mend}</p>
              {shortage.colony !== null ? (
                <Link href={`/colonies/${shortage.colony}`}>{words.toColony(shortage.kind)}</Link>
              ) : striking === shortage.entry ? (
                <Striking entry={shortage.entry} onDone={() => setStriking(null)} />
              ) : (
                <button type="button" className="link" onClick={() => setStriking(shortage.entry)}>
                  {words.strike}
                </button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {more}
    </section>
  );
}

function Striking({ entry, onDone }: { readonly entry: Shortage['entry']; readonly onDone: () => void }) {
  const { data } = useRead('journal.entry', { entry });
  return data ? <StrikeEntry entry={data.entry} onMended={onDone} onLeft={onDone} /> : null;
}
