import { converted, typedFigure, unitNamed, type MeasureUnit } from '#shared/typedMeasure.ts';
import { readSpan } from '#shared/typedSpan.ts';
import { roundTo } from '#shared/units.ts';
import { figure } from './sheetAmounts.ts';
import { words } from './words.ts';

/** Hours as typed: `2.5`, `90 min`, or from when until when, by the clock. */
export interface WorkedTime {
  readonly hours: number;
  /** `17:30 to 20:15`; null where only hours were typed. */
  readonly clock: string | null;
}

export type WorkedReading = ({ readonly ok: true } & WorkedTime) | { readonly ok: false; readonly sentence: string };

/** Reads `2.5`, `2.5 h`, `90 min`, `17:30-20:15`, `5-8 pm` or `5 to 7`; one that ends before it begins went past midnight, where that can be told. */
export function readWorkedTime(typed: string): WorkedReading {
  const text = typed.trim();
  const hours = figure(text) ?? inUnit(text, 'h', 2);
  if (hours !== null) return { ok: true, hours, clock: null };
  const span = readSpan(text, { overnight: true });
  if (span === null) return { ok: false, sentence: words.refused.hours(text) };
  return span.ok ? { ok: true, hours: roundTo((span.until - span.from) / 60, 2), clock: `${written(span.from)} to ${written(span.until)}` } : { ok: false, sentence: span.sentence };
}

/** As `readWorkedTime`; null where it cannot be read. */
export function workedTime(typed: string): WorkedTime | null {
  const read = readWorkedTime(typed);
  return read.ok ? { hours: read.hours, clock: read.clock } : null;
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

function written(minutes: number): string {
  const clock = minutes > 24 * 60 ? minutes - 24 * 60 : minutes;
  return `${Math.floor(clock / 60)}:${String(clock % 60).padStart(2, '0')}`;
}
