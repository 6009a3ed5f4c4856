import type { ShedCount } from '#shared/contract/order.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayTight, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { MovementForm } from './MovementForm.tsx';
import { words } from './words.ts';

const shownMovements = 8;

/** What is in the shed and elsewhere, the last movements, and the form to enter one. `known` are item names to offer. */
export function ShedSection({ known }: { readonly known: readonly string[] }) {
  const { data: shed, fault } = useRead('stock.shed', {});
  const note = useMarginNote();
  return (
    <section
      className="section"
      aria-label={words.shedHeading}
      {...note(
        <MarginPart heading={words.shedHeading}>
          <p>{words.shedNote}</p>
        </MarginPart>,
      )}
    >
      <h2>{words.shedHeading}</h2>
      <FaultNote fault={fault} />
      {shed && (shed.items.length === 0 ? <p className="soft">{words.shedEmpty}</p> : <ShedTable shed={shed} />)}
      {shed && (
        <div className="pair section">
          <Entering>
            <MovementForm items={[...new Set([...shed.items.map(({ item }) => item), ...known])]} places={shed.places} />
          </Entering>
          <Movements shed={shed} />
        </div>
      )}
    </section>
  );
}

function ShedTable({ shed }: { readonly shed: ShedCount }) {
  return (
    <div className="scroll" tabIndex={0} role="group" aria-label={words.shedHeading}>
      <table className="tight">
        <caption className="visually-hidden">{words.shedHeading}</caption>
        <thead>
          <tr>
            <th scope="col">{words.item}</th>
            {shed.places.map((place) => (
              <th key={place} scope="col" className="number">
                {place}
              </th>
            ))}
            <th scope="col" className="number">
              {words.shedTotal}
            </th>
          </tr>
        </thead>
        <tbody>
          {shed.items.map(({ item, counts, total }) => {
            const at = new Map(counts.map(({ place, count }) => [place, count]));
            return (
              <tr key={item}>
                <th scope="row">{item}</th>
                {shed.places.map((place) => (
                  <td key={place} className="number">
                    <Count count={at.get(place) ?? 0} />
                  </td>
                ))}
                <td className="number">
                  <strong>{number(total, 1)}</strong>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
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

function Movements({ shed }: { readonly shed: ShedCount }) {
  if (shed.movements.length === 0) return null;
  const newest = shed.movements
    .map((movement, place) => ({ movement, place }))
    .sort((a, b) => b.movement.day.localeCompare(a.movement.day) || a.place - b.place)
    .slice(0, shownMovements);
  return (
    <div>
      <h3>{words.movements}</h3>
      <ul className="lines">
        {newest.map(({ movement, place }) => (
          <li key={place}>
            <span>{dayTight(movement.day)}</span>
            <span>
              {words.movement(number(movement.quantity, 1), movement.item, movement.from, movement.to)}
              {movement.note === null ? '' : `. ${movement.note}`}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
