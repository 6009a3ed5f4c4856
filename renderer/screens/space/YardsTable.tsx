import { useState } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { SpaceColony, SpaceList } from '#shared/contract/space.ts';
import type { Fault } from '#shared/faults.ts';
import { useBook } from '../../desk/useBook.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { missing, number } from '../../parts/format.ts';
import { useOpenRound } from '../tonight/useOpenRound.ts';
import { countsOf } from './spaceText.ts';
import { words } from './words.ts';

interface YardsTableProps {
  readonly list: SpaceList;
  readonly chosen: YardId | null;
  onChoose(yard: YardId | null): void;
}

/** Yards down; how many want a box, a look, a watchful eye, and a way to enter the supers put on. */
export function YardsTable({ list, chosen, onChoose }: YardsTableProps) {
  const { today } = useBook();
  const openRound = useOpenRound();
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const enter = async (yard: YardId) => {
    if (today === undefined) return;
    setFault((await openRound(yard, today, 'supers')) ?? undefined);
  };
  return (
    <>
      <FaultNote fault={fault} />
      <div className="scroll" tabIndex={0} role="group" aria-label={words.yards}>
        <table className="tight space-yards">
          <caption className="visually-hidden">{words.yards}</caption>
          <thead>
            <tr>
              <th scope="col">{words.yard}</th>
              {[words.ofColonies, words.wantBox, words.soonFull, words.lookFirst, words.highRisk, words.someRisk, words.maySplit].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">
                <span className="visually-hidden">{words.enterSupers}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {list.yards.map(({ id, code, name, colonies }) => (
              <tr key={id} className={id === chosen ? 'space-chosen' : undefined}>
                <th scope="row">
                  <button type="button" className="link" aria-pressed={id === chosen} onClick={() => onChoose(id === chosen ? null : id)}>
                    {code} {name}
                  </button>
                </th>
                <Figures colonies={colonies} list={list} />
                <td>
                  <Entering>
                    <button type="button" className="link" onClick={() => void enter(id)}>
                      {words.enterSupers}
                      <span className="visually-hidden">{words.enterSupersAt(code)}</span>
                    </button>
                  </Entering>
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{words.allSum}</th>
              <Figures colonies={list.yards.flatMap(({ colonies }) => colonies)} list={list} />
              <td />
            </tr>
          </tfoot>
        </table>
      </div>
    </>
  );
}

/** Outside its season a thing is not counted, which is not none. */
function Figures({ colonies, list: { adding, swarming } }: { readonly colonies: readonly SpaceColony[]; readonly list: SpaceList }) {
  const { want, soon, first, high, some, split } = countsOf(colonies);
  const figures = [
    colonies.length, ...[want, soon, first].map((count) => (adding.now ? count : null)), ...[high, some].map((count) => (swarming.now ? count : null)), split,
  ];
  return figures.map((count, at) => (
    <td key={at} className="number">
      {count === null ? missing : number(count)}
    </td>
  ));
}
