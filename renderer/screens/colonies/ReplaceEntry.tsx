import { FaultNote } from '../../parts/FaultNote.tsx';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { ReplaceForm } from './ReplaceForm.tsx';
import type { MendingProps } from './StrikeEntry.tsx';

/** Reads the entry's cells, then lets them be mended. */
export function ReplaceEntry({ entry, onMended, onLeft }: MendingProps) {
  const { book, today } = useBook();
  const found = useRead('journal.entry', { entry: entry.id });
  if (!book || !today || !found.data) return <FaultNote fault={found.fault} />;
  return <ReplaceForm entry={entry} kind={found.data.kind} first={found.data.cells} book={book} today={today} onMended={onMended} onLeft={onLeft} />;
}
