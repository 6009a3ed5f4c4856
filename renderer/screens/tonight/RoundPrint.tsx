import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { PaperRow, RoundSetting } from '#shared/contract/rounds.ts';
import { dayFromIso, type Day } from '#shared/days.ts';
import { inSheetOrder, type RoundColumn } from '#shared/roundSheets.ts';
import { useOffer } from '../../commands/offers.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayShort, dayWithWeekday, missing } from '../../parts/format.ts';
import { PaperPage } from '../../parts/PaperPage.tsx';
import { PaperLabel } from './PaperLabel.tsx';
import { paperWords as words } from './paperWords.ts';
import { plannedColumns } from './plannedColumns.ts';
import './fieldSheet.css';

/** The sheet to write on in the yard: the same colonies and the same questions as the sheet it is typed into afterwards. */
export function RoundPrint({ yard, day: typed }: { readonly yard: string; readonly day: string }) {
  const day = dayFromIso(typed);
  const id = /^[1-9]\d{0,8}$/.test(yard) ? Number(yard) : null;
  if (day === null || id === null) {
    return (
      <main className="paper-page">
        <p>{words.nowhere}</p>
        <Link href="/tonight">{words.back}</Link>
      </main>
    );
  }
  return <FieldSheet yard={id as YardId} day={day} />;
}

function FieldSheet({ yard, day }: { readonly yard: YardId; readonly day: Day }) {
  const setting = useRead('rounds.setting', { yard, day });
  const { data } = useRead('rounds.paper', { yard, day });
  const title = data ? words.title(data.yard.name, day) : words.sheet;
  const ready = data !== undefined && setting.data !== undefined && data.rows.length > 0;
  useOffer('print the field sheet', ready ? () => window.print() : null);
  return (
    <PaperPage title={title} className="field-sheet" print={words.print} ready={ready} backTo="/tonight" back={words.back}>
      <FieldArticle yard={yard} day={day} />
    </PaperPage>
  );
}

const nothingToDo: ReadonlyMap<ColonyId, readonly string[]> = new Map();

interface FieldArticleProps {
  readonly yard: YardId;
  readonly day: Day;
  readonly todo?: ReadonlyMap<ColonyId, readonly string[]>;
  /** False: only what stands below them. */
  readonly rows?: boolean;
  readonly children?: ReactNode;
}

/** One yard's sheet, with what is planned for each colony where the sheet belongs to a trip. */
export function FieldArticle({ yard, day, todo = nothingToDo, rows = true, children }: FieldArticleProps) {
  const { book } = useBook();
  const setting = useRead('rounds.setting', { yard, day });
  const { data, fault } = useRead('rounds.paper', { yard, day });
  if (!data || !setting.data || !book) return <FaultNote fault={fault ?? setting.fault} />;
  return (
    <article>
      <h1>{words.title(data.yard.name, day)}</h1>
      {rows ? <p>{words.line(book.name, data.yard.code, words.sheetName(setting.data.kind, setting.data.planned), data.rows.length)}</p> : null}
      {!rows ? null : data.rows.length === 0 ? <p>{words.empty}</p> : <FieldTable rows={data.rows} setting={setting.data} todo={todo} running={words.running(book.name, data.yard.name, dayWithWeekday(day))} />}
      {children}
      <p className="field-foot">{words.foot}</p>
    </article>
  );
}

function FieldTable({ rows, setting, todo, running }: { readonly rows: readonly PaperRow[]; readonly setting: RoundSetting; readonly todo: ReadonlyMap<ColonyId, readonly string[]>; readonly running: string }) {
  const columns = columnsOf(setting);
  return (
    <table>
      <thead>
        <tr className="paper-running">
          <td colSpan={columns.length + 3}>{running}</td>
        </tr>
        <tr>
          <th scope="col">{words.colony}</th>
          <th scope="col">{words.queen}</th>
          <th scope="col" className="field-told">
            {words.told}
          </th>
          {columns.map((column) => (
            <th key={column} scope="col" className={boxOf(column)}>
              {words.headOf(column, setting.massUnit).join(' ')}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.colony}>
            <th scope="row">
              <PaperLabel label={row.label} />
            </th>
            <td>{queenWords(row)}</td>
            <td className="field-told">
              {row.last === null ? words.noLook : words.last(dayShort(row.last.day), row.last.sentence)}
              {(todo.get(row.colony) ?? []).map((what) => (
                <div key={what} className="field-cue">
                  {words.todo(what)}
                </div>
              ))}
              {row.cues.map((cue) => (
                <div key={cue} className="field-cue">
                  {cue}
                </div>
              ))}
            </td>
            {columns.map((column) => (
              <td key={column} className={boxOf(column)} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What the sheet asks, and what planned work cannot be written down without; the sheet that is typed has the same. */
function columnsOf({ columns, kind, planned }: RoundSetting): RoundColumn[] {
  return inSheetOrder([...columns[kind], ...plannedColumns(planned)]);
}

function boxOf(column: RoundColumn): string {
  return column === 'note' ? 'field-note' : 'field-box';
}

/** The colour as a word, since paper is black on white. */
function queenWords({ queen, queenAge }: PaperRow): string {
  if (queen === null) return missing;
  if (queen.year === null || queen.colour === null) return words.queenUnknown(queen.marked);
  return words.queenIs(queen.colour, queen.year, queenAge, queen.marked);
}
