import { useRef } from 'react';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import { entryWords } from './entryWords.ts';
import { dayText } from './format.ts';

/** Asks once about each day that is still to come: the question, or null when there is none or the same day is said again. */
export function useDayAhead(today: Day | undefined, order: DateOrder): (typed: string) => string | null {
  const asked = useRef<Day | null>(null);
  return (typed) => {
    const day = dayFromTyped(typed, order);
    if (today === undefined || day === null || day <= today || asked.current === day) return null;
    asked.current = day;
    return entryWords.ahead(dayText(day), dayText(today));
  };
}
