import { useId, type ReactNode } from 'react';
import { causes, fields, fixedPlaces, knownIngredients, type Column, type Kind } from '#shared/entryForms.ts';
import type { YardRow } from '#shared/contract/book.ts';
import { unitsOf } from './entryColumns.ts';
import { entryWords, helpFor } from './entryWords.ts';

export interface EntryFieldProps {
  readonly kind: Kind;
  readonly column: Exclude<Column, 'date' | 'entry'>;
  readonly must: boolean;
  readonly value: string;
  readonly fault: string | null;
  readonly yards: readonly YardRow[];
  readonly colonies: readonly string[];
  /** The field's first control, so that a refusal can take the keyboard there. */
  readonly name: string;
  readonly onChange: (value: string) => void;
  readonly below?: ReactNode;
  /** The form is of one record that is there already, so several colonies cannot be named. */
  readonly one?: boolean;
}

/** One cell of a record, asked for in the way its type wants. */
export function EntryField(props: EntryFieldProps) {
  const { kind, column, must, value, fault, onChange, name, below, one = false } = props;
  const id = useId();
  const field = fields[column];
  const help = one && column === 'colony' ? null : helpFor(kind, column);
  const describedBy = [help ? `${id}-help` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ') || undefined;
  const common = {
    id,
    name,
    'aria-describedby': describedBy,
    'aria-invalid': fault !== null,
    'aria-required': must,
  };
  const say = (
    <>
      {help ? (
        <p className="soft small" id={`${id}-help`}>
          {help}
        </p>
      ) : null}
      {below}
      {fault ? (
        <p className="field-fault" id={`${id}-fault`}>
          {fault}
        </p>
      ) : null}
    </>
  );
  const label = (
    <label htmlFor={id}>
      {field.label}
      {must ? <span className="soft"> · {entryWords.needed}</span> : null}
    </label>
  );

  if (field.type === 'causes') return <Causes name={name} value={value} describedBy={describedBy} onChange={onChange} say={say} />;
  if (field.type === 'choice' || field.type === 'yes-no') {
    const choices = field.type === 'yes-no' ? [entryWords.yes, entryWords.no] : column === 'unit' ? unitsOf(kind) : field.of;
    return (
      <div className="field">
        {label}
        <select {...common} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">{must ? entryWords.chooseMust : entryWords.choose}</option>
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
        {say}
      </div>
    );
  }
  if (column === 'note') {
    return (
      <div className="field wide">
        {label}
        <textarea {...common} rows={2} value={value} onChange={(event) => onChange(event.target.value)} />
        {say}
      </div>
    );
  }
  const offers = offersFor(props);
  const numeric = field.type === 'number' || field.type === 'money' || field.type === 'year';
  return (
    <div className="field">
      {label}
      <input
        {...common}
        type="text"
        autoComplete="off"
        {...(numeric ? { inputMode: 'decimal' as const } : {})}
        {...(offers.length > 0 ? { list: `${id}-offers` } : {})}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      {offers.length > 0 ? (
        <datalist id={`${id}-offers`}>
          {offers.map((offer) => (
            <option key={offer.value} value={offer.value}>
              {offer.says}
            </option>
          ))}
        </datalist>
      ) : null}
      {say}
    </div>
  );
}

/** The browser's list of offers grows slow with thousands, so only those that fit what is typed are given. */
const mostOffers = 40;

function offersFor({ kind, column, value, yards, colonies }: EntryFieldProps): readonly { value: string; says: string }[] {
  const yardOffers = yards.map((yard) => ({ value: yard.code, says: yard.name }));
  const field = fields[column];
  switch (field.type) {
    case 'yard':
      return yardOffers;
    case 'place':
      return [...fixedPlaces.map((place) => ({ value: place as string, says: '' })), ...yardOffers];
    case 'colony': {
      if (kind === 'install') return [];
      const typed = value.trim().toLowerCase();
      const fitting: { value: string; says: string }[] = [];
      for (const colony of colonies) {
        if (fitting.length === mostOffers) break;
        if (colony.toLowerCase().startsWith(typed)) fitting.push({ value: colony, says: '' });
      }
      return fitting;
    }
    default:
      return column === 'active_ingredient' ? knownIngredients.map((known) => ({ value: known, says: '' })) : [];
  }
}

interface CausesProps {
  readonly name: string;
  readonly value: string;
  readonly describedBy: string | undefined;
  readonly say: ReactNode;
  readonly onChange: (value: string) => void;
}

/** One or several causes, `;` between them in the record. */
function Causes({ name, value, describedBy, say, onChange }: CausesProps) {
  const chosen = value.split(';').filter((cause) => cause !== '');
  const toggle = (cause: string) => {
    const next = chosen.includes(cause) ? chosen.filter((one) => one !== cause) : [...chosen, cause];
    onChange(causes.filter((known) => next.includes(known)).join(';'));
  };
  return (
    <fieldset className="field wide" aria-describedby={describedBy}>
      <legend>{fields.cause.label}</legend>
      <div className="ticks">
        {causes.map((cause, place) => (
          <label key={cause}>
            <input type="checkbox" name={place === 0 ? name : undefined} checked={chosen.includes(cause)} onChange={() => toggle(cause)} />
            {cause}
          </label>
        ))}
      </div>
      {say}
    </fieldset>
  );
}
