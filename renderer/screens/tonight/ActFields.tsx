import type { RoundRow } from '#shared/contract/journal.ts';
import { actKeys, fieldsOf, sheetColumns, type ActKey, type ColumnKey, type TypedRow } from './sheetColumns.ts';
import type { Remark } from './sheetRound.ts';
import { actOf, type RowReadings } from './sheetRow.ts';
import { words } from './words.ts';

interface ActFieldsProps {
  readonly row: RoundRow;
  readonly index: number;
  readonly read: RowReadings;
  readonly typed: Readonly<TypedRow>;
  readonly remarks: readonly Remark[];
  /** The id of the sentences under the row. */
  readonly below: string;
  readonly span: number;
  onType(row: RoundRow, column: ColumnKey, text: string): void;
}

/** The few fields of a split, a new queen or a combination, in a line under their row. */
export function ActFields({ row, index, read, typed, remarks, below, span, onType }: ActFieldsProps) {
  const keys = fieldsShown(read, typed);
  if (keys.length === 0) return null;
  return (
    <tr className="round-act">
      <td colSpan={span}>
        <div className="round-act-fields">
          {keys.map((key) => {
            const remark = remarks.find((one) => one.column === key);
            return (
              <label key={key}>
                <span aria-hidden="true">{words.fieldNames[key]}</span>{' '}
                <input
                  className={`round-field ${sheetColumns[key].numeric ? 'round-small' : 'round-name'}`}
                  data-field={`${index},${key}`}
                  value={typed[key] ?? ''}
                  autoComplete="off"
                  spellCheck={false}
                  aria-label={words.cellName(row.label, words.names[key])}
                  aria-invalid={remark?.state === 'refused' || undefined}
                  aria-describedby={remark ? below : undefined}
                  onChange={(event) => onType(row, key, event.target.value)}
                />
              </label>
            );
          })}
        </div>
      </td>
    </tr>
  );
}

/** The fields of the row's act, and any other that holds typing, so that nothing goes in or is refused unseen. */
function fieldsShown(read: RowReadings, typed: Readonly<TypedRow>): readonly ActKey[] {
  const act = actOf(read);
  const mine: readonly ActKey[] = act === null ? [] : fieldsOf[act];
  return [...mine, ...actKeys.filter((key) => !mine.includes(key) && (typed[key] ?? '') !== '')];
}
