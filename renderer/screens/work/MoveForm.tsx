import { useState, type FormEvent } from 'react';
import { addDays, dayFromTyped, type Day } from '#shared/days.ts';
import { useBook } from '../../desk/useBook.ts';
import { DayField } from '../../parts/DayField.tsx';
import { words } from './words.ts';

interface MoveFormProps {
  readonly day: Day;
  readonly today: Day;
  readonly until: Day;
  readonly busy: boolean;
  /** Why no visit can be put on a day, or null. */
  refusal(to: Day): string | null;
  onMove(to: Day): void;
}

/** Takes a visit to a day that is typed, also one of another week. */
export function MoveForm({ day, today, until, busy, refusal, onMove }: MoveFormProps) {
  const { book } = useBook();
  const [typed, setTyped] = useState<string>(addDays(day, 1));
  const [fault, setFault] = useState<string | null>(null);
  const order = book?.dateOrder ?? 'month-first';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const to = dayFromTyped(typed, order);
    const why = to === null ? words.noDay : to === day ? words.sameDay : to < today ? words.past(to) : to > until ? words.beyond(until) : refusal(to);
    setFault(why);
    if (to !== null && why === null && !busy) onMove(to);
  };
  return (
    <form className="move-form" onSubmit={submit} noValidate>
      <DayField label={words.moveTo} name="to" value={typed} today={today} order={order} fault={fault} onChange={(value) => { setTyped(value); setFault(null); }} />
      <button type="submit" disabled={busy}>
        {words.move}
      </button>
    </form>
  );
}
