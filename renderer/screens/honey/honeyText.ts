import { jarUnits, type JarSize } from '#shared/contract/lots.ts';
import { hold } from '#shared/figures.ts';
import { converted, typedFigure, unitNamed } from '#shared/typedMeasure.ts';
import { gramsFrom, gramsPerPound, type MassUnit } from '#shared/units.ts';
import { fixed, missing, number } from '../../parts/format.ts';

/** Grams as a figure in the book's unit, without its name, for a column. */
export function massFigure(grams: number | null, unit: MassUnit): string {
  return grams === null ? missing : fixed(inUnit(grams, unit), 1).replace('-', '−');
}

export function massText(grams: number | null, unit: MassUnit): string {
  return grams === null ? missing : `${number(inUnit(grams, unit), 1).replace('-', '−')}${hold}${unit}`;
}

function inUnit(grams: number, unit: MassUnit): number {
  const value = unit === 'lb' ? grams / gramsPerPound : grams / 1000;
  return Math.abs(value) < 0.05 ? 0 : value;
}

export function waterText(water: number | null): string {
  return water === null ? missing : `${fixed(water, 1)}${hold}%`;
}

/** A number as a person types it, a comma or a point; null where it is none. */
export function typedNumber(text: string): number | null {
  const found = typedFigure(text);
  return found === null || found.unit !== '' || found.amount < 0 ? null : found.amount;
}

/** Per cent as typed, with or without the sign; null where it is none. */
export function typedPercent(text: string): number | null {
  return typedNumber(text.replace(/\s*(?:%|per ?cent)\s*$/i, ''));
}

/** Grams of what was typed: in the book's unit, or in the one that stands beside it. */
export function typedMass(text: string, unit: MassUnit): number | null {
  const found = typedFigure(text);
  if (found === null || found.amount < 0) return null;
  const named = found.unit === '' ? unit : unitNamed(found.unit);
  if (named === 'lb' || named === 'kg') return gramsFrom(found.amount, named);
  return named === null ? null : converted(found.amount, named, 'g');
}

/** `1 lb`, `12 oz`, `500 g`. */
export function typedSize(text: string): JarSize | null {
  const found = /^\s*(\d{1,6}(?:[.,]\d+)?)\s*(lb|oz|kg|g)\s*$/i.exec(text);
  const unit = jarUnits.find((one) => one === found?.[2]?.toLowerCase());
  const amount = typedNumber(found?.[1] ?? '');
  return unit === undefined || amount === null || !(amount > 0 && amount <= 1000) ? null : { amount, unit };
}

/** The degrees that go with the book's pounds or kilograms. */
export function degreesOf(unit: MassUnit): '°C' | '°F' {
  return unit === 'kg' ? '°C' : '°F';
}

/** Degrees Celsius of what was typed; without its own sign it is °F in a book of pounds, °C in one of kilograms. */
export function typedCelsius(text: string, unit: MassUnit): number | null {
  const found = typedFigure(text);
  if (found === null) return null;
  const named = found.unit === '' || found.unit === '°' ? degreesOf(unit) : unitNamed(found.unit);
  return named === null ? null : converted(found.amount, named, '°C');
}
