import { useId } from 'react';
import type { SheetLook, SheetMapping } from '#shared/contract/sheets.ts';
import { dayFromTyped, type DateOrder } from '#shared/days.ts';
import { entryForms, fields, kinds, type Column, type Kind } from '#shared/entryForms.ts';
import { counted } from '../../parts/format.ts';
import { columnName, sameForAll } from './targets.ts';
import { words } from './words.ts';

export interface SheetChoicesProps {
  readonly look: SheetLook;
  readonly mapping: SheetMapping;
  readonly bookOrder: DateOrder;
  readonly onChange: (mapping: SheetMapping) => void;
  readonly onKind: (kind: Kind) => void;
}

/** What holds for the whole sheet: the kind of its rows, how days and decimals are written, and what no column says. */
export function SheetChoices({ look, mapping, bookOrder, onChange, onKind }: SheetChoicesProps) {
  const id = useId();
  const byColumn = mapping.columns.some(({ becomes }) => becomes === 'entry');
  const asked = (about: string) => look.questions.some((question) => question.about === about);
  const same = sameForAll(mapping);
  return (
    <section className="section" aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>{words.asWhole}</h2>
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}-kind`}>{words.kind}</label>
          <select id={`${id}-kind`} value={mapping.kind ?? ''} aria-invalid={asked('kind')} onChange={(event) => onKind(event.target.value as Kind)}>
            {mapping.kind === null ? <option value="">{byColumn ? words.kindColumn : words.kindChoose}</option> : null}
            {kinds.map((kind) => (
              <option key={kind} value={kind}>
                {entryForms[kind].label}
              </option>
            ))}
          </select>
        </div>
        {look.days === 'none' || look.days === 'clear' ? null : (
          <Pick
            label={words.days}
            value={mapping.dateOrder}
            choices={[['month-first', words.monthFirst], ['day-first', words.dayFirst]]}
            help={words.daysHow[look.days]}
            invalid={asked('dates')}
            onChange={(dateOrder) => onChange({ ...mapping, dateOrder })}
          />
        )}
        {look.decimal === 'none' ? null : (
          <Pick
            label={words.decimal}
            value={mapping.decimal}
            choices={[['point', words.point], ['comma', words.comma]]}
            help={words.decimalHow[look.decimal]}
            invalid={asked('decimal')}
            onChange={(decimal) => onChange({ ...mapping, decimal })}
          />
        )}
      </div>
      {look.times > 0 ? <p className="soft">{words.times(counted(look.times, 'cell', 'cells'))}</p> : null}
      {same.length > 0 ? (
        <>
          <h3>{words.same}</h3>
          <div className="fields">
            {same.map((column) => (
              <SameField
                key={column}
                column={column}
                value={mapping.fixed[column] ?? ''}
                invalid={look.questions.some((question) => question.about === 'missing' && question.column === column)}
                onChange={(typed) => {
                  const value = column === 'date' || column === 'end_date' ? (dayFromTyped(typed, bookOrder) ?? typed) : typed;
                  const { [column]: _, ...rest } = mapping.fixed;
                  onChange({ ...mapping, fixed: value === '' ? rest : { ...rest, [column]: value } });
                }}
              />
            ))}
          </div>
        </>
      ) : null}
    </section>
  );
}

interface PickProps<Value extends string> {
  readonly label: string;
  readonly value: Value | null;
  readonly choices: readonly (readonly [Value, string])[];
  readonly help: string;
  readonly invalid: boolean;
  readonly onChange: (value: Value) => void;
}

function Pick<Value extends string>({ label, value, choices, help, invalid, onChange }: PickProps<Value>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value ?? ''} aria-invalid={invalid} aria-describedby={`${id}-help`} onChange={(event) => onChange(event.target.value as Value)}>
        {value === null ? <option value="">{words.decide}</option> : null}
        {choices.map(([choice, text]) => (
          <option key={choice} value={choice}>
            {text}
          </option>
        ))}
      </select>
      <p className="soft small" id={`${id}-help`}>
        {help}
      </p>
    </div>
  );
}

interface SameFieldProps {
  readonly column: Column;
  readonly value: string;
  readonly invalid: boolean;
  readonly onChange: (value: string) => void;
}

function SameField({ column, value, invalid, onChange }: SameFieldProps) {
  const id = useId();
  const field = column === 'date' || column === 'entry' ? null : fields[column];
  const choices = field?.type === 'choice' ? field.of : field?.type === 'yes-no' ? ['yes', 'no'] : null;
  return (
    <div className="field">
      <label htmlFor={id}>{columnName(column)}</label>
      {choices === null ? (
        <input id={id} type="text" autoComplete="off" value={value} aria-invalid={invalid} onChange={(event) => onChange(event.target.value)} />
      ) : (
        <select id={id} value={value} aria-invalid={invalid} onChange={(event) => onChange(event.target.value)}>
          <option value="">{words.decide}</option>
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
      )}
    </div>
  );
}
