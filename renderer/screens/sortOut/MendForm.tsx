import type { OpenBook } from '#shared/contract/book.ts';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { WaitingRow } from '#shared/contract/sortOut.ts';
import type { Day } from '#shared/days.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { words as frame } from '../../parts/words.ts';
import { MendFields } from './MendFields.tsx';

export interface MendProps {
  readonly row: WaitingRow;
  readonly book: OpenBook;
  readonly today: Day;
  readonly onLeave: () => void;
  readonly onDone: () => void;
}
export type KeptCells = OutputOf<'sortOut.row'>;

/** One waiting row opened where it stands: what the file says, its cells to be mended, and whether it would stand. */
export function MendForm(props: MendProps) {
  const { data, fault } = useRead('sortOut.row', { key: props.row.key });
  if (data === undefined) return fault ? <FaultNote fault={fault} /> : <p role="status">{frame.loading}</p>;
  return <MendFields {...props} kept={data} />;
}
