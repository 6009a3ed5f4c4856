import type { StockTable } from '#shared/contract/stock.ts';
import { countedItems } from '#shared/itemWords.ts';
import { dayTight, number } from '../../parts/format.ts';
import { shedWords as words } from './shedWords.ts';

const shown = 10;

/** The newest movements, whichever entry they follow from. */
export function ShedMovements({ movements }: Pick<StockTable, 'movements'>) {
  if (movements.length === 0) return null;
  return (
    <section>
      <h3>{words.movements}</h3>
      <ul className="lines shed-lines">
        {movements.slice(0, shown).map(({ entry, day, kind, from, to, parts }) => (
          <li key={`${entry} ${from} ${to}`}>
            <span>{dayTight(day)}</span>
            <span>
              {words.way(from, to)}: {parts.map(({ item, count }) => countedItems(count, item)).join(', ')}
              {kind === 'stock' ? '' : <span className="soft">{` (${kind})`}</span>}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The last counts with what they differed by. */
export function ShedCounts({ counts }: Pick<StockTable, 'counts'>) {
  if (counts.length === 0) return null;
  return (
    <section>
      <h3>{words.counts}</h3>
      <ul className="lines shed-lines">
        {counts.slice(0, shown).map(({ day, place, item, counted, had, difference }, at) => (
          <li key={`${day} ${place} ${item} ${at}`}>
            <span>{dayTight(day)}</span>
            <span>
              {countedItems(counted, item)}, {place}:{' '}
              {difference === 0 ? <span className="soft">{words.agrees}</span> : <strong>{words.differs(`${difference > 0 ? '+' : '−'}${number(Math.abs(difference), 1)}`, number(had, 1))}</strong>}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
