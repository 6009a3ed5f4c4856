import { useState, type ReactNode } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { Fault } from '#shared/faults.ts';
import type { RoundKind } from '#shared/roundSheets.ts';
import { useBook } from '../../desk/useBook.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { useOpenRound } from '../tonight/useOpenRound.ts';
import './needs.css';

interface YardRow {
  readonly id: YardId;
  readonly code: string;
  readonly name: string;
}

export interface YardsToEnterProps<Yard extends YardRow> {
  readonly yards: readonly Yard[];
  /** As the first column, the columns of figures, the last row and the way to the round are called. */
  readonly words: { readonly yards: string; readonly yard: string; readonly allSum: string; readonly enter: string; readonly enterAt: (code: string) => string };
  readonly heads: readonly string[];
  /** A cell for each head, of one yard or (null) of all. */
  readonly figures: (yard: Yard | null) => ReactNode;
  readonly round: RoundKind;
  readonly className?: string;
  readonly chosen: YardId | null;
  onChoose(yard: YardId | null): void;
}

/** Yards down with what each needs, to choose one, and the way to enter today's round there. */
export function YardsToEnter<Yard extends YardRow>({ yards, words, heads, figures, round, className, chosen, onChoose }: YardsToEnterProps<Yard>) {
  const { today } = useBook();
  const openRound = useOpenRound();
  const { shown, more } = useFirstRows(yards, words.yards);
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const enter = async (yard: YardId) => {
    if (today === undefined) return;
    setFault((await openRound(yard, today, round)) ?? undefined);
  };
  return (
    <>
      <FaultNote fault={fault} />
      <div className="scroll" tabIndex={0} role="group" aria-label={words.yards}>
        <table className={className === undefined ? 'tight' : `tight ${className}`}>
          <caption className="visually-hidden">{words.yards}</caption>
          <thead>
            <tr>
              <th scope="col">{words.yard}</th>
              {heads.map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">
                <span className="visually-hidden">{words.enter}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((yard) => (
              <tr key={yard.id} className={yard.id === chosen ? 'yard-chosen' : undefined}>
                <th scope="row">
                  <button type="button" className="link" aria-pressed={yard.id === chosen} onClick={() => onChoose(yard.id === chosen ? null : yard.id)}>
                    {yard.code} {yard.name}
                  </button>
                </th>
                {figures(yard)}
                <td>
                  <Entering>
                    <button type="button" className="link" onClick={() => void enter(yard.id)}>
                      {words.enter}
                      <span className="visually-hidden">{words.enterAt(yard.code)}</span>
                    </button>
                  </Entering>
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{words.allSum}</th>
              {figures(null)}
              <td />
            </tr>
          </tfoot>
        </table>
        {more}
      </div>
    </>
  );
}
