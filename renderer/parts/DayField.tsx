import { useId, useState, type KeyboardEvent } from 'react';
import { addDays, dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import { entryWords } from './entryWords.ts';
import { dayWithWeekday } from './format.ts';

export interface DayFieldProps {
  readonly label: string;
  readonly name: string;
  readonly value: string;
  readonly today: Day;
  readonly order: DateOrder;
  readonly fault: string | null;
  /** What holds for any day that stands there. */
  readonly help?: string;
  readonly onChange: (value: string) => void;
}

/** A day as the person writes it, with what it was understood as beneath; arrows step it, `t` is today. */
export function DayField({ label, name, value, today, order, fault, help, onChange }: DayFieldProps) {
  const id = useId();
  // Where nothing typed means a day, that day must not come into the field that is being emptied for another.
  const [emptied, setEmptied] = useState(false);
  const understood = dayFromTyped(value, order);
  const onKey = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 't' || event.key === 'T') {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      setEmptied(false);
      onChange(today);
    }
    if ((event.key === 'ArrowUp' || event.key === 'ArrowDown') && understood) {
      event.preventDefault();
      setEmptied(false);
      onChange(addDays(understood, event.key === 'ArrowUp' ? 1 : -1));
    }
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={name}
        type="text"
        autoComplete="off"
        title={entryWords.dayHelp}
        value={emptied ? '' : value}
        aria-invalid={fault !== null}
        aria-describedby={`${id}-is${fault ? ` ${id}-fault` : ''}`}
        onKeyDown={onKey}
        onChange={(event) => {
          setEmptied(event.target.value === '');
          onChange(event.target.value);
        }}
        onBlur={() => setEmptied(false)}
      />
      <p className="soft small" id={`${id}-is`}>
        {understood ? dayWithWeekday(understood) : entryWords.notADay}
        {help === undefined ? '' : `; ${help}`}
      </p>
      {fault ? (
        <p className="field-fault" id={`${id}-fault`}>
          {fault}
        </p>
      ) : null}
    </div>
  );
}
