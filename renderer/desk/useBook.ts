import type { BookStatus, OpenBook } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { useRead } from './useDesk.ts';

export interface BookHere {
  readonly status: BookStatus | undefined;
  readonly book: OpenBook | undefined;
  /** The day records are judged by; undefined until the desk has answered. */
  readonly today: Day | undefined;
  readonly fault: Fault | undefined;
  readonly loading: boolean;
}

/** The open book and its today. */
export function useBook(): BookHere {
  const { data, fault, loading } = useRead('book.status', {});
  return { status: data, book: data?.book ?? undefined, today: data?.today, fault, loading };
}
