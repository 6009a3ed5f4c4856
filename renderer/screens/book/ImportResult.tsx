import { Link } from 'wouter';
import type { GestureId } from '#shared/brands.ts';
import type { ImportReport } from '#shared/contract/book.ts';
import { useRead } from '../../desk/useDesk.ts';
import { counted } from '../../parts/format.ts';
import { TakeBack } from '../../parts/TakeBack.tsx';
import { takeBackWords } from '../../parts/takeBackWords.ts';
import { words } from './words.ts';

export interface ImportResultProps {
  readonly report: ImportReport;
  /** The import was taken back, so there is no result any more. */
  readonly onTakenBack: () => void;
}

/** What an import did, once it is in the book: where to see it, what waits, and taking it back as one step. */
export function ImportResult({ report, onTakenBack }: ImportResultProps) {
  const { data } = useRead('act.page', { id: report.gesture ?? (1 as GestureId), from: 0, limit: 1 }, { enabled: report.gesture !== null });
  if (report.gesture === null) return null;
  // Undo is everywhere; what is said here stays true.
  if (data?.act.undone) return <p className="needs">{words.takenBack(report.file)}</p>;
  return (
    <div role="group" aria-label={words.resultOf(report.file)}>
      <p className="said">{words.entered(counted(report.entered, words.record, words.records), report.file)}</p>
      {report.toSortOut.length > 0 ? (
        <p>
          {words.waits(counted(report.toSortOut.length, 'row', 'rows'))} <Link href="/book/sort-out">{words.sortThem}</Link>
        </p>
      ) : null}
      {report.entered > 0 ? (
        <p>
          <Link href={`/acts/${report.gesture}`}>{words.seeEntries}</Link>
        </p>
      ) : null}
      <div className="acts">
        <TakeBack act={report.gesture} label={takeBackWords.openImport} onDone={onTakenBack} />
      </div>
    </div>
  );
}
