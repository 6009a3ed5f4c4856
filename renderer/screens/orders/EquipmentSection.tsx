import { useState } from 'react';
import type { OrderAnswer, PlannedPart } from '#shared/contract/decision.ts';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** Boxes, frames and parts: need, have, what comes back from dead-outs, what is to be ordered, in packs. */
export function EquipmentSection({ answer }: { readonly answer: OrderAnswer }) {
  const note = useMarginNote();
  const [all, setAll] = useState(false);
  const short = answer.equipment.filter(({ order }) => order > 0);
  const shown = all ? answer.equipment : short;
  const coming = shown.some(({ onOrder }) => onOrder > 0);
  const lying = shown.some(({ yards }) => yards > 0);
  const heads = [words.need, words.onHives, words.fromDead, words.toMend, words.shed, ...(lying ? [words.inYards] : []), ...(coming ? [words.onOrder] : []), words.have, words.short];
  return (
    <section className="section" aria-label={words.equipment}>
      <h2>{words.equipment}</h2>
      {short.length === 0 ? <p>{words.equipmentNone}</p> : null}
      {answer.supers === null ? null : <p className="soft">{answer.supers}</p>}
      {shown.length === 0 ? null : (
        <table className="tight">
          <caption className="visually-hidden">{words.equipment}</caption>
          <thead>
            <tr>
              <th scope="col">{words.item}</th>
              {heads.map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">{words.packs}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((part) => (
              <tr key={part.item} tabIndex={0} {...note(<MarginPart heading={part.item}><p>{part.reason}</p></MarginPart>)}>
                <th scope="row">{part.item}</th>
                <td className="number">{number(part.need)}</td>
                <td className="number soft">{number(part.onHives)}</td>
                <td className="number soft">{number(part.fromDeadOuts)}</td>
                <td className="number soft">{number(part.toMend)}</td>
                <td className="number soft">{number(part.shed)}</td>
                {lying ? <td className="number soft">{number(part.yards)}</td> : null}
                {coming ? <td className="number soft">{number(part.onOrder)}</td> : null}
                <td className="number">{number(part.have)}</td>
                <td className="number">
                  <strong>{number(part.order)}</strong>
                </td>
                <td>{packsText(part)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <button type="button" className="link" aria-expanded={all} onClick={() => setAll(!all)}>
        {all ? words.showShort : words.showAll}
      </button>
    </section>
  );
}

export function packsText({ packs, notOffered }: PlannedPart): string {
  return [...packs.map(({ packs: count, packSize }) => words.pack(count, packSize)), ...(notOffered > 0 ? [words.notOffered(notOffered)] : [])].join(', ');
}
