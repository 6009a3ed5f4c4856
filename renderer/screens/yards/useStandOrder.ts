import { useRef, useState } from 'react';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { ColonyRow } from '#shared/contract/colonies.ts';
import type { Fault } from '#shared/faults.ts';
import { asOfDay, refusedWhileLooking } from '../../desk/asOfDay.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { inOrder, movedTo } from './standMoves.ts';
import { words } from './words.ts';

export interface StandOrder {
  readonly rows: readonly ColonyRow[];
  readonly fault: Fault | undefined;
  move(from: number, to: number): void;
}

/** The colonies as they were moved, kept at once; moves that follow fast on each other are kept one after the other. */
export function useStandOrder(yard: { readonly id: YardId; readonly name: string }, kept: readonly ColonyRow[]): StandOrder {
  const stand = useWrite('yard.stand');
  const { say } = useNotice();
  const [order, setOrder] = useState<readonly ColonyId[] | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const queue = useRef<Promise<void>>(Promise.resolve());
  const waiting = useRef(0);
  const rows = inOrder(kept, order);

  const keep = async (next: readonly ColonyId[], sentence: string) => {
    const answer = await stand.send({ yard: yard.id, colonies: [...next] });
    waiting.current -= 1;
    if (!answer.ok) {
      setOrder(null);
      return setFault(answer);
    }
    if (waiting.current === 0) say(sentence);
  };
  const move = (from: number, to: number) => {
    const next = movedTo(rows, from, to);
    const one = rows[from];
    if (one === undefined || next === rows) return;
    const refused = refusedWhileLooking('yard.stand', asOfDay.day());
    if (refused !== null) return setFault(refused);
    const ids = next.map((row) => row.id);
    setFault(undefined);
    setOrder(ids);
    waiting.current += 1;
    const sentence = words.moved(one.label, next.indexOf(one) + 1, next.length, yard.name);
    queue.current = queue.current.then(() => keep(ids, sentence));
  };
  return { rows, fault, move };
}
