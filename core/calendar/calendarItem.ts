import type { Day } from '#shared/days.ts';

export const calendarKinds = ['visit', 'due', 'deadline', 'delivery'] as const;
export type CalendarKind = (typeof calendarKinds)[number];

/** One thing that belongs in the person's calendar. */
export interface CalendarItem {
  readonly kind: CalendarKind;
  /** The same thing has the same key in every export. */
  readonly key: string;
  /** Things of one line may stand for each other: a yard's visit that is moved to another day is still that visit. Null: none does. */
  readonly line: string | null;
  readonly first: Day;
  /** The last day, itself included. */
  readonly last: Day;
  /** Minutes after midnight where the person is, and how long; null for all day. */
  readonly time: { readonly from: number; readonly minutes: number } | null;
  readonly summary: string;
  readonly description: string | null;
  readonly location: string | null;
}

/** What a calendar was last told of one thing. */
export interface ToldEvent {
  readonly uid: string;
  readonly sequence: number;
  /** When it was told first, and when it last changed: UTC, `2026-11-25T21:05:00Z`. */
  readonly created: string;
  readonly changed: string;
  readonly cancelled: boolean;
  readonly item: CalendarItem;
}

export interface CalendarState {
  /** Makes the names of events unlike those of any other book. */
  readonly book: string;
  /** The number that the next new event gets; none is ever used again. */
  readonly next: number;
  readonly events: readonly ToldEvent[];
}
