import { jarUnits, type JarSize } from '#shared/contract/lots.ts';
import { hold } from '#shared/figures.ts';
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
  return /^\s*\d{1,9}(?:[.,]\d+)?\s*$/.test(text) ? Number(text.trim().replace(',', '.')) : null;
}

/** Grams of what was typed: in the book's unit, or in the one that stands beside it. */
export function typedMass(text: string, unit: MassUnit): number | null {
  const found = /^\s*(\d{1,9}(?:[.,]\d+)?)\s*(lb|kg)?\s*$/i.exec(text);
  const amount = typedNumber(found?.[1] ?? '');
  return amount === null ? null : gramsFrom(amount, found?.[2] === undefined ? unit : found[2].toLowerCase() === 'kg' ? 'kg' : 'lb');
}

/** `1 lb`, `12 oz`, `500 g`. */
export function typedSize(text: string): JarSize | null {
  const found = /^\s*(\d{1,6}(?:[.,]\d+)?)\s*(lb|oz|kg|g)\s*$/i.exec(text);
  const unit = jarUnits.find((one) => one === found?.[2]?.toLowerCase());
  const amount = typedNumber(found?.[1] ?? '');
  return unit === undefined || amount === null || !(amount > 0 && amount <= 1000) ? null : { amount, unit };
}

/** Degrees Celsius of what was typed; without its own sign it is °F in a book of pounds, °C in one of kilograms. */
export function typedCelsius(text: string, unit: MassUnit): number | null {
  const found = /^\s*(-?\d{1,3}(?:[.,]\d+)?)\s*°?\s*([cf])?\s*$/i.exec(text);
  if (found === null) return null;
  const degrees = Number((found[1] ?? '').replace(',', '.'));
  return (found[2] ?? (unit === 'kg' ? 'c' : 'f')).toLowerCase() === 'c' ? degrees : ((degrees - 32) * 5) / 9;
}
