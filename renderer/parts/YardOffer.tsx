import { useState } from 'react';
import type { YardRow } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../desk/useDesk.ts';
import { entryWords } from './entryWords.ts';
import { FaultNote } from './FaultNote.tsx';
import { useNotice } from './Notice.tsx';

const longestCode = 20;

export interface YardOfferProps {
  readonly typed: string;
  readonly yards: readonly YardRow[];
  /** The field says already that there is no such yard. */
  readonly said?: boolean;
  readonly onAdded: () => void;
}

/** Under a yard's field: a name the book does not know can be added on the spot, without leaving the form. */
export function YardOffer({ typed, yards, said = false, onAdded }: YardOfferProps) {
  const keep = useWrite('yard.keep');
  const { say } = useNotice();
  const [fault, setFault] = useState<Fault | undefined>();
  const name = typed.trim();
  const known = yards.some((yard) => same(yard.code, name) || same(yard.name, name));
  if (name === '' || known || name.length > longestCode) return null;

  const add = async () => {
    setFault(undefined);
    const answer = await keep.send({ code: name, name, room: null, minutes: null });
    if (!answer.ok) return setFault(answer);
    say(entryWords.yardAdded(answer.value.name));
    onAdded();
  };
  return (
    <div className="small">
      {said ? null : entryWords.noSuchYard(name)}{' '}
      <button type="button" className="link" disabled={keep.busy} onClick={() => void add()}>
        {entryWords.addYard(name)}
      </button>
      <FaultNote fault={fault} />
    </div>
  );
}

function same(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
