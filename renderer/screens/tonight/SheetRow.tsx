import { memo, useMemo } from 'react';
import type { RoundRow } from '#shared/contract/journal.ts';
import { QueenMark } from '../../parts/QueenMark.tsx';
import type { RoundColumn } from '#shared/roundSheets.ts';
import { ActFields } from './ActFields.tsx';
import { sheetColumns, type ColumnKey, type TypedRow } from './sheetColumns.ts';
import { keptQuestion } from './sheetDraft.ts';
import { remarksOnRow, type Remark } from './sheetRound.ts';
import { readRow, type SheetWide } from './sheetRow.ts';
import type { SheetSetting } from './sheetSetting.ts';
import { words } from './words.ts';

export interface SheetRowProps {
  readonly row: RoundRow;
  readonly index: number;
  readonly columns: readonly RoundColumn[];
  readonly setting: SheetSetting;
  readonly typed: Readonly<TypedRow> | undefined;
  readonly wide: SheetWide;
  readonly kept: readonly string[];
  readonly refused: readonly Remark[] | undefined;
  onType(row: RoundRow, column: ColumnKey, text: string): void;
}

const noTyping: TypedRow = {};
const noRemarks: readonly Remark[] = [];

/** One colony of the sheet, and below it what the sheet has to say about its cells. */
export const SheetRow = memo(function SheetRow({ row, index, columns, setting, typed = noTyping, wide, kept, refused = noRemarks, onType }: SheetRowProps) {
  const read = useMemo(() => readRow(typed, wide, setting), [typed, wide, setting]);
  const remarks = useMemo(() => {
    const own = remarksOnRow(row.colony, read).filter((remark) => remark.state === 'refused' || !kept.includes(keptQuestion(remark)));
    const told = new Set(refused.map((remark) => remark.column));
    return [...refused, ...own.filter((remark) => !told.has(remark.column))];
  }, [row.colony, read, kept, refused]);
  const below = `below-${row.colony}`;

  return (
    <>
      <tr>
        <th scope="row" className="round-colony" title={row.label}>
          <bdi>{row.label}</bdi>
          {row.already.length > 0 ? (
            <span className="round-already">
              {' '}
              <span aria-hidden="true">{words.already.sign}</span>
              <span className="visually-hidden">{words.already.mark}</span>
            </span>
          ) : null}
        </th>
        <td className="round-queen">
          <QueenMark queen={row.queen} />
        </td>
        {columns.map((key, column) => {
          const remark = remarks.find((one) => one.column === key);
          const name = words.cellName(row.label, words.names[key]);
          return (
            <td key={key} className={[key === 'note' ? 'round-note' : '', remark?.state ?? ''].join(' ').trim()}>
              <input
                className={sheetColumns[key].numeric ? 'round-cell number' : 'round-cell'}
                data-cell={`${index},${column}`}
                value={typed[key] ?? ''}
                placeholder={ofSheet(key, typed, wide)}
                inputMode={sheetColumns[key].numeric ? 'decimal' : 'text'}
                autoComplete="off"
                spellCheck={key === 'note'}
                aria-label={name}
                aria-invalid={remark?.state === 'refused' || undefined}
                aria-describedby={remark ? below : undefined}
                onChange={(event) => onType(row, key, event.target.value)}
              />
            </td>
          );
        })}
      </tr>
      <ActFields row={row} index={index} read={read} typed={typed} remarks={remarks} below={below} span={columns.length + 2} onType={onType} />
      {remarks.length > 0 ? (
        <tr className="round-below">
          <td colSpan={columns.length + 2} id={below}>
            {remarks.map((remark) => (
              <p key={`${remark.column} ${remark.sentence}`} className={remark.state}>
                {remarks.length > 1 ? `${capital(words.names[remark.column])}: ` : ''}
                {remark.sentence}
              </p>
            ))}
          </td>
        </tr>
      ) : null}
    </>
  );
});

/** What the sheet says where this cell does not, as far as the row has the count or weight that it goes with. */
function ofSheet(key: RoundColumn, typed: Readonly<TypedRow>, wide: SheetWide): string | undefined {
  if (key === 'sample' && (typed.mites ?? '') !== '') return wide.sample;
  if ((typed.full ?? '') === '') return undefined;
  return key === 'empty' ? wide.tare : key === 'lot' ? wide.lot : undefined;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
