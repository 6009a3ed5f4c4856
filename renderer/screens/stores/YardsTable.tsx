import { useState } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { StoresList, StoresTotals } from '#shared/contract/stores.ts';
import type { Fault } from '#shared/faults.ts';
import type { MassUnit } from '#shared/units.ts';
import { useBook } from '../../desk/useBook.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { missing, number } from '../../parts/format.ts';
import { useOpenRound } from '../tonight/useOpenRound.ts';
import { massFigure, syrupText } from './storesText.ts';
import { words } from './words.ts';

interface YardsTableProps {
  readonly list: StoresList;
  readonly unit: MassUnit;
  readonly chosen: YardId | null;
  onChoose(yard: YardId | null): void;
}

/** Yards down; what is short, the syrup and sugar it takes, and a way to enter what was fed. */
export function YardsTable({ list, unit, chosen, onChoose }: YardsTableProps) {
  const { today } = useBook();
  const openRound = useOpenRound();
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const feed = async (yard: YardId) => {
    if (today === undefined) return;
    setFault((await openRound(yard, today, 'feed')) ?? undefined);
  };
  return (
    <>
      <FaultNote fault={fault} />
      <div className="scroll" tabIndex={0} role="group" aria-label={words.yards}>
        <table className="tight">
          <caption className="visually-hidden">{words.yards}</caption>
          <thead>
            <tr>
              <th scope="col">{words.yard}</th>
              {[words.ofColonies, words.toldOf, words.shortCount, `${words.short}, ${unit}`, words.syrup, `${words.sugar}, ${unit}`, words.supersOff].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">
                <span className="visually-hidden">{words.enterFeed}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {list.yards.map(({ id, code, name, totals }) => (
              <tr key={id} className={id === chosen ? 'stores-chosen' : undefined}>
                <th scope="row">
                  <button type="button" className="link" aria-pressed={id === chosen} onClick={() => onChoose(id === chosen ? null : id)}>
                    {code} {name}
                  </button>
                </th>
                <Figures totals={totals} unit={unit} />
                <td>
                  <Entering>
                    <button type="button" className="link" onClick={() => void feed(id)}>
                      {words.enterFeed}
                      <span className="visually-hidden">{words.enterFeedAt(code)}</span>
                    </button>
                  </Entering>
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{words.allSum}</th>
              <Figures totals={list.totals} unit={unit} />
              <td />
            </tr>
          </tfoot>
        </table>
      </div>
    </>
  );
}

function Figures({ totals, unit }: { readonly totals: StoresTotals; readonly unit: MassUnit }) {
  return (
    <>
      <td className="number">{number(totals.colonies)}</td>
      <td className="number">{number(totals.told)}</td>
      <td className="number">{totals.told === 0 ? missing : number(totals.feed)}</td>
      <td className="number">{totals.feed === 0 ? missing : massFigure(totals.short, unit, 0)}</td>
      <td className="number">{syrupText(totals, unit)}</td>
      <td className="number">{totals.sugar === 0 ? missing : massFigure(totals.sugar, unit, 0)}</td>
      <td className="number">{totals.supers === 0 ? missing : number(totals.supers)}</td>
    </>
  );
}
