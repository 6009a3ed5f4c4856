import { useEffect } from 'react';
import type { BookStatus, OpenBook } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { asOfDay, useAsOf } from './asOfDay.ts';
import { useRead } from './useDesk.ts';

export interface BookHere {
  readonly status: BookStatus | undefined;
  readonly book: OpenBook | undefined;
  /** The day records are judged by; undefined until the desk has answered. */
  readonly today: Day | undefined;
  readonly fault: Fault | undefined;
  readonly loading: boolean;
}

/** The open book and its today, as of the day that is looked at. */
export function useBook(): BookHere {
  const day = useAsOf();
  const { data, fault, loading } = useRead('book.status', {});
  // A day that has nothing to show any more must not keep anybody out of the book.
  const lost = day !== null && fault?.field === 'asOf';
  useEffect(() => {
    if (lost) asOfDay.backToToday();
  }, [lost]);
  return { status: data, book: data?.book ?? undefined, today: data?.today, fault, loading };
}
