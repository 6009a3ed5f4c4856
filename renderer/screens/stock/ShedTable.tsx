import { Fragment, useId, useState } from 'react';
import type { StockItemView } from '#shared/contract/stock.ts';
import { dayText, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { shedWords as words } from './shedWords.ts';

const columns = ['onHives', 'free', 'toCheck', 'toMend', 'wornOut'] as const;

/** Items down, states across; an item opens to its places and the account that balances. */
export function ShedTable({ items }: { readonly items: readonly StockItemView[] }) {
  const [open, setOpen] = useState<string | null>(null);
  const note = useMarginNote();
  const id = useId();
  return (
    <div className="scroll" tabIndex={0} role="group" aria-label={words.heading}>
      <table className="tight shed-table">
        <caption className="visually-hidden">{words.heading}</caption>
        <thead>
          <tr>
            <th scope="col">{words.item}</th>
            {columns.map((column) => (
              <th key={column} scope="col" className="number">
                {words[column]}
              </th>
            ))}
            <th scope="col" className="number">
              {words.total}
            </th>
            <th scope="col" className="number">
              {words.due}
            </th>
          </tr>
        </thead>
        <tbody>
          {items.map((item, at) => (
            <Fragment key={item.item}>
              <tr {...note(() => <ItemNote item={item} />)}>
                <th scope="row">
                  <button
                    type="button"
                    className="link shed-open"
                    aria-expanded={open === item.item}
                    aria-controls={`${id}-${at}`}
                    onClick={() => setOpen(open === item.item ? null : item.item)}
                  >
                    {item.item}
                  </button>
                </th>
                {columns.map((column) => (
                  <td key={column} className="number">
                    <Count count={item[column]} />
                  </td>
                ))}
                <td className="number">
                  <strong>{number(item.total, 1)}</strong>
                </td>
                <td className="number">{item.due === null ? '' : <Count count={item.due} />}</td>
              </tr>
              {open === item.item && <Places item={item} id={`${id}-${at}`} />}
            </Fragment>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Where the pieces of one item are, and the sum that balances. */
function Places({ item, id }: { readonly item: StockItemView; readonly id: string }) {
  return (
    <>
      {item.places.map((place, at) => (
        <tr key={place.place} className="shed-place" {...(at === 0 ? { id } : {})}>
          <th scope="row">{place.place}</th>
          {columns.map((column) => (
            <td key={column} className="number">
              <Count count={place[column]} />
            </td>
          ))}
          <td className="number">{number(place.total, 1)}</td>
          <td />
        </tr>
      ))}
      <tr className="totals" {...(item.places.length === 0 ? { id } : {})}>
        <th scope="row">{words.total}</th>
        {columns.map((column) => (
          <td key={column} className="number">
            {number(item[column], 1)}
          </td>
        ))}
        <td className="number">{number(item.total, 1)}</td>
        <td />
      </tr>
      <tr className="shed-account">
        <td colSpan={columns.length + 3}>{item.balances ? account(item) : words.unbalanced}</td>
      </tr>
    </>
  );
}

function account({ cameIn, scrapped, sold, total }: StockItemView): string {
  return words.account(number(cameIn, 1), number(scrapped, 1), number(sold, 1), number(total, 1));
}

function Count({ count }: { readonly count: number }) {
  if (count === 0) return <span className="soft">0</span>;
  return count < 0 ? (
    <span className="needs">
      {number(count, 1)}, {words.below}
    </span>
  ) : (
    number(count, 1)
  );
}

function ItemNote({ item }: { readonly item: StockItemView }) {
  return (
    <MarginPart heading={item.item}>
      <p>{item.balances ? account(item) : words.unbalanced}</p>
      <p className="soft">{item.keptFrom === null ? words.notKept : words.keptFrom(dayText(item.keptFrom))}</p>
      {item.comb && <p>{words.comb(number(item.comb.drawn), number(item.comb.drawnFree), number(item.comb.foundation), number(item.comb.unknown))}</p>}
      {item.due !== null && item.due > 0 && <p>{`${words.dueNote}: ${number(item.due)}.`}</p>}
      {item.years.length > 0 && (
        <>
          <p className="soft">{words.years}</p>
          <ul>
            {item.years.map(({ year, count }) => (
              <li key={year ?? 0}>{`${year ?? words.yearUnknown}: ${number(count)}`}</li>
            ))}
          </ul>
        </>
      )}
    </MarginPart>
  );
}
