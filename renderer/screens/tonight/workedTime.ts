import { converted, typedFigure, unitNamed, type MeasureUnit } from '#shared/typedMeasure.ts';
import { roundTo } from '#shared/units.ts';
import { figure } from './sheetAmounts.ts';

/** Hours as typed: `2.5`, `90 min`, or from when until when, by the clock. */
export interface WorkedTime {
  readonly hours: number;
  /** `17:30 to 20:15`; null where only hours were typed. */
  readonly clock: string | null;
}

const longest = 18 * 60;

const stretch = /^(\d{1,2})(?:[:.h]?([0-5]\d))?\s*(?:-|–|to|until)\s*(\d{1,2})(?:[:.h]?([0-5]\d))?$/i;

/** Reads `2.5`, `2.5 h`, `90 min`, `17:30-20:15`, `1730-2015` or `5 to 7`; one that ends before it begins went past midnight. Null if it is neither, or longer than anybody works in a stretch. */
export function workedTime(typed: string): WorkedTime | null {
  const text = typed.trim();
  const parts = stretch.exec(text);
  if (parts === null) {
    const hours = figure(text) ?? inUnit(text, 'h', 2);
    return hours === null ? null : { hours, clock: null };
  }
  const [from, until] = [clockOf(parts[1], parts[2]), clockOf(parts[3], parts[4])];
  if (from === null || until === null || from === until) return null;
  const minutes = (until - from + 24 * 60) % (24 * 60);
  // A slip: 18-17 is no night's work.
  if (minutes > longest) return null;
  return { hours: Math.round((minutes / 60) * 100) / 100, clock: `${written(from)} to ${written(until)}` };
}

/** Miles as typed: `24`, `24 mi` or `38 km`; null if it is no distance. */
export function milesDriven(typed: string): number | null {
  const text = typed.trim();
  return figure(text) ?? inUnit(text, 'miles', 1);
}

/** A figure with its unit beside it, in another of the same kind. */
function inUnit(text: string, wanted: MeasureUnit, places: number): number | null {
  const typed = typedFigure(text);
  const unit = typed === null ? null : unitNamed(typed.unit);
  const amount = typed === null || unit === null || typed.amount < 0 ? null : converted(typed.amount, unit, wanted);
  return amount === null ? null : roundTo(amount, places);
}

function clockOf(hour: string | undefined, minute: string | undefined): number | null {
  const minutes = Number(hour) * 60 + Number(minute ?? 0);
  return minutes <= 24 * 60 ? minutes : null;
}

function written(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
