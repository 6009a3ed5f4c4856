import type { AnswerCell } from '#shared/contract/answers.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { proportion } from '#core/stats/proportion.ts';
import type { Borders } from '#shared/seasons.ts';
import { addCounts, yardCounts, type YardCounts } from '../yardCounts.ts';

export interface AnswerFacts {
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  /** The book's own borders of the winter. */
  readonly borders: Borders;
  /** Standing requeen entries. */
  readonly requeens: readonly Entry[];
  /** The last day the record speaks of. */
  readonly asOf: Day;
  readonly today: Day;
}

/** A stretch of days, `until` the first day after it, and how far the record reaches into it. */
export interface Stretch {
  readonly from: Day;
  readonly until: Day;
  /** The first day after what is counted: `until`, or the day after the as-of day. */
  readonly stop: Day;
  readonly complete: boolean;
  readonly begun: boolean;
}

export function stretchOf({ asOf, today }: Pick<AnswerFacts, 'asOf' | 'today'>, from: Day, until: Day): Stretch {
  const tomorrow = addDays(asOf, 1);
  return { from, until, stop: tomorrow < until ? tomorrow : until, complete: today >= until || tomorrow >= until, begun: asOf >= from };
}

/** Counts of the whole operation in a stretch; moves between its yards are in both columns. */
export function countsIn({ states, yards }: AnswerFacts, { from, stop }: Stretch): YardCounts {
  return addCounts(yardCounts(states, yards.map(({ id }) => id), from, stop < from ? from : stop).values());
}

/**
 * Why the counts of a stretch are not known, or null. A book that begins later knows nothing of its first day, unless
 * it took colonies in as already there; one whose records ended before it says nothing of it.
 */
export function unknownWhy({ states }: AnswerFacts, { from, stop, begun }: Stretch): string | null {
  if (states.length === 0) return 'No colony is in the book.';
  if (!begun) return 'It has not begun.';
  const first = states.reduce<Day>((day, state) => (state.start < day ? state.start : day), states[0]?.start ?? from);
  const last = states.reduce<Day>((day, state) => (state.lastDay > day ? state.lastDay : day), first);
  if (last < from && states.some(({ end }) => end === null)) return `Nothing is recorded after ${dayInWords(last)}.`;
  if (first >= stop) return `The book begins on ${dayInWords(first)}.`;
  if (first > from && !states.some(({ origin, start }) => origin === 'opening' && start < stop)) return `The book begins on ${dayInWords(first)}; what stood on ${dayInWords(from)} it does not know.`;
  return null;
}

/** Remarks on what the counts of a stretch take for granted. */
export function takenForGranted({ states }: AnswerFacts, { from, stop, complete }: Stretch): string[] {
  const later = states.filter(({ origin, start }) => origin === 'opening' && start > from && start < stop);
  const last = states.reduce<Day | null>((day, state) => (day === null || state.lastDay > day ? state.lastDay : day), null);
  const silent = last !== null && complete && last < addDays(stop, -60);
  return [
    ...(later.length === 0 ? [] : [`${plural(later.length, 'colony was', 'colonies were')} taken into the book as already there after ${dayInWords(from)}; counted as standing on that day.`]),
    ...(silent ? [`The last record of a colony is of ${dayInWords(last)}; what was lost after it is not known here.`] : []),
  ];
}

export function known(value: number): AnswerCell {
  return { value, text: String(value), why: null };
}

export function notKnown(why: string): AnswerCell {
  return { value: null, text: '', why };
}

/** "30 of 115, 26 % (95 % range 19 to 35)"; the range is Wilson's. */
export function share(count: number, of: number, nothing: string): AnswerCell {
  const { rate, wilson } = proportion(count, of);
  if (rate === null || wilson === null) return notKnown(nothing);
  return { value: null, text: `${count} of ${of}, ${percentText(rate)} % (95 % range ${Math.round(wilson.lower * 100)} to ${Math.round(wilson.upper * 100)})`, why: null };
}

function percentText(rate: number): string {
  return (Math.round(rate * 1000) / 10).toFixed(1);
}

export function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
