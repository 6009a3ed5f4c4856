import { useCallback, useEffect, useRef, useState } from 'react';
import type { SheetLook, SheetMapping } from '#shared/contract/sheets.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Fault } from '#shared/faults.ts';
import { desk } from '../../desk/deskClient.ts';
import type { SheetFile } from './sheetFile.ts';

export interface LookedAt {
  readonly look: SheetLook | null;
  /** The choices as they stand on the page, ahead of the desk's answer by a moment. */
  readonly mapping: SheetMapping | null;
  readonly fault: Fault | undefined;
  /** True while the answer is not that of the choices. */
  readonly waiting: boolean;
  /** How the sheet first came to its choices. */
  readonly origin: SheetLook['origin'];
  readonly change: (mapping: SheetMapping) => void;
  readonly choose: (how: { readonly sheet?: string; readonly kind?: Kind; readonly afresh?: boolean }) => void;
}

/** What the desk sees in a spreadsheet by the choices on the page; asked again with every change. */
export function useSheet(file: SheetFile | null): LookedAt {
  const [look, setLook] = useState<SheetLook | null>(null);
  const [mapping, setMapping] = useState<SheetMapping | null>(null);
  const [origin, setOrigin] = useState<SheetLook['origin']>('guessed');
  const [fault, setFault] = useState<Fault | undefined>();
  const [waiting, setWaiting] = useState(file !== null);
  /** The question asked last; what comes back late for an earlier one is dropped. */
  const turn = useRef(0);

  const ask = useCallback(
    async (how: { readonly sheet?: string; readonly kind?: Kind; readonly afresh?: boolean; readonly mapping?: SheetMapping }) => {
      if (file === null) return;
      const mine = ++turn.current;
      setWaiting(true);
      const answer = await desk.call('sheets.look', { file, ...how });
      if (mine !== turn.current) return;
      setWaiting(false);
      if (!answer.ok) return setFault(answer);
      setFault(undefined);
      setLook(answer.value);
      if (how.mapping === undefined) {
        setMapping(answer.value.mapping);
        setOrigin(answer.value.origin);
      }
    },
    [file],
  );

  useEffect(() => void ask({}), [ask]);

  return {
    look, mapping, fault, waiting, origin,
    change: (next) => {
      setMapping(next);
      void ask({ ...(look === null ? {} : { sheet: look.sheet }), mapping: next });
    },
    choose: (how) => void ask({ ...(look === null ? {} : { sheet: look.sheet }), ...how }),
  };
}
