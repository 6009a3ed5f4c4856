import type { YardRow } from '#shared/contract/book.ts';
import { inSheetOrder, roundColumns, type RoundColumn } from '#shared/roundSheets.ts';
import { seasonName } from '#shared/seasons.ts';
import { plannedColumns } from './plannedColumns.ts';
import type { Round } from './useRound.ts';
import { words } from './words.ts';

/** Which columns this kind of round has, in this yard and season. */
export function RoundColumns({ round, yard, onClose }: { readonly round: Round; readonly yard: YardRow; onClose(): void }) {
  const asked = round.asked[round.kind];
  const set = (column: RoundColumn, on: boolean) => {
    const next = inSheetOrder(on ? [...asked, column] : asked.filter((one) => one !== column));
    if (next.length > 0) void round.choose(round.kind, next);
  };
  return (
    <fieldset className="round-panel">
      <legend>{words.columns.title}</legend>
      <div className="round-ticks">
        {roundColumns.map((column) => {
          const on = asked.includes(column);
          return (
            <label key={column}>
              <input type="checkbox" checked={on} disabled={on && asked.length === 1} onChange={(event) => set(column, event.target.checked)} /> {words.names[column]}
              {!on && round.columns.includes(column) ? <span className="soft"> ({plannedColumns(round.planned).includes(column) ? words.columns.planned : words.columns.typed})</span> : null}
            </label>
          );
        })}
      </div>
      <p className="soft small">
        {words.columns.kept(words.kinds[round.kind], yard.name, seasonName(round.season))}{' '}
        <button type="button" className="link" onClick={() => void round.choose(round.kind, null)}>
          {words.columns.standard}
        </button>{' '}
        <button type="button" className="link" onClick={onClose}>
          {words.columns.close}
        </button>
      </p>
    </fieldset>
  );
}
