import { useId, useState, type FormEvent } from 'react';
import type { YardRow } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import { useRead } from '../../desk/useDesk.ts';
import { moveDayText, usualMove } from './moveDayText.ts';
import { words } from './words.ts';

interface MoveFormProps {
  readonly yard: YardRow;
  readonly day: Day;
  readonly yards: readonly YardRow[];
  readonly busy: boolean;
  onMove(to: Day): void;
}

/** Takes a visit to another day, of those on which there can be one; each says how full it is. */
export function MoveForm({ yard, day, yards, busy, onMove }: MoveFormProps) {
  const id = useId();
  const { data } = useRead('work.moveDays', { yard: yard.id, day });
  const [chosen, setChosen] = useState<Day | null>(null);
  if (data === undefined) return null;
  const to = data.days.find((one) => one.day === chosen)?.day ?? usualMove(data.days, day);
  if (to === null) return <p className="soft">{words.nowhereTo}</p>;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!busy) onMove(to);
  };
  return (
    <form className="move-form" onSubmit={submit}>
      <div className="field">
        <label htmlFor={id}>{words.moveTo}</label>
        <select id={id} value={to} onChange={(event) => setChosen(event.target.value as Day)}>
          {data.days.map((one) => (
            <option key={one.day} value={one.day}>
              {moveDayText(one, (of) => yards.find((other) => other.id === of)?.name ?? '')}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" disabled={busy}>
        {words.move}
      </button>
    </form>
  );
}
