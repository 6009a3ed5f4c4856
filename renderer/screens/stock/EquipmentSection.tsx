import type { OrderPlan } from '#shared/contract/order.ts';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** Boxes, frames and parts: what the plan needs, what is there, what is to be ordered. */
export function EquipmentSection({ plan }: { readonly plan: OrderPlan }) {
  const note = useMarginNote();
  return (
    <section className="section" aria-label={words.equipment}>
      <h2>{words.equipment}</h2>
      {plan.equipment.length === 0 ? (
        <p className="soft">{words.equipmentNone}</p>
      ) : (
        <table className="tight">
          <caption className="visually-hidden">{words.equipment}</caption>
          <thead>
            <tr>
              <th scope="col">{words.item}</th>
              {[words.perColony, words.need, words.onHives, words.fromDeadOuts, words.shed, words.have, words.order].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plan.equipment.map((line) => (
              <tr
                key={line.item}
                tabIndex={0}
                {...note(
                  <MarginPart heading={line.item}>
                    <p>{line.reason}</p>
                  </MarginPart>,
                )}
              >
                <th scope="row">{line.item}</th>
                <td className="number soft">{number(line.perColony, 2)}</td>
                <td className="number">{number(line.need)}</td>
                <td className="number soft">{number(line.onHives)}</td>
                <td className="number soft">{number(line.fromDeadOuts)}</td>
                <td className="number soft">{number(line.shed)}</td>
                <td className="number">{number(line.have)}</td>
                <td className="number">
                  <strong>{number(line.order)}</strong>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
