import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import type { DateOrder, Day } from '#shared/days.ts';
import { dayAsTyped, dayForKey, readDay } from './sheetDay.ts';
import { words } from './words.ts';

interface DayFieldProps {
  readonly day: Day;
  readonly today: Day;
  readonly order: DateOrder;
  onDay(day: Day): void;
  /** Enter in the field: the day stands, go on to the sheet. */
  onDone(): void;
  onFault(sentence: string | null): void;
}

/** A day by keys (arrows, t, y) or typed; what is no day is refused and the old one stands. */
export function DayField({ day, today, order, onDay, onDone, onFault }: DayFieldProps) {
  const [text, setText] = useState<string | null>(null);
  const [faulty, setFaulty] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const hint = useId();
  const shown = text ?? dayAsTyped(day, order);

  // A day picked elsewhere takes the place of whatever was half typed here.
  const shownDay = useRef(day);
  useEffect(() => {
    if (shownDay.current === day) return;
    shownDay.current = day;
    setText(null);
    setFaulty(false);
    onFault(null);
  }, [day, onFault]);

  // After a step the whole day is selected again, so that the next key steps or replaces it.
  useEffect(() => {
    if (document.activeElement === field.current) field.current?.select();
  }, [day]);

  const say = (sentence: string | null) => {
    setFaulty(sentence !== null);
    onFault(sentence);
  };

  const take = (next: Day): true => {
    say(null);
    setText(null);
    onDay(next);
    return true;
  };

  const commit = (): boolean => {
    if (text === null || text === dayAsTyped(day, order)) {
      setText(null);
      say(null);
      return true;
    }
    const read = readDay(text, order);
    if (read.ok) return take(read.day);
    say(read.sentence);
    return false;
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.altKey) return;
    const ctrl = event.ctrlKey || event.metaKey;
    // Ctrl Enter with a day half typed must not enter the round under the old day.
    if (event.key === 'Enter' && (!ctrl || text !== null)) {
      event.preventDefault();
      event.stopPropagation();
      if (commit()) onDone();
      return;
    }
    if (ctrl) return;
    if (event.key === 'Escape') {
      setText(null);
      say(null);
      return;
    }
    const next = event.shiftKey || text !== null ? null : dayForKey(event.key, day, today);
    if (next === null) return;
    event.preventDefault();
    take(next);
  };

  return (
    <label className="inline-choice">
      {words.controls.day}{' '}
      <input
        ref={field}
        className="round-day"
        value={shown}
        inputMode="numeric"
        autoComplete="off"
        aria-describedby={hint}
        aria-invalid={faulty || undefined}
        onChange={(event) => setText(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
      <span id={hint} className="visually-hidden">
        {words.controls.dayKeys}
      </span>
    </label>
  );
}
