import type { JarSize } from '#shared/contract/lots.ts';
import { jarUnits } from '#shared/contract/lots.ts';
import { hold } from '#shared/figures.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import { missing, number } from '../../parts/format.ts';

/** Grams in the book's unit, with its name. */
export function mass(grams: number | null, unit: MassUnit): string {
  if (grams === null) return missing;
  const value = unit === 'lb' ? grams / gramsPerPound : grams / 1000;
  return `${number(Math.abs(value) < 0.05 ? 0 : value, 1)}${hold}${unit}`;
}

export function waterText(water: number | null): string {
  return water === null ? missing : `${water.toFixed(1)}${hold}%`;
}

/** A number as a person types it; null where it is none. */
export function typedNumber(text: string): number | null {
  return /^\s*\d+(?:[.,]\d+)?\s*$/.test(text) ? Number(text.trim().replace(',', '.')) : null;
}

/** `1 lb`, `12 oz`, `500 g`. */
export function typedSize(text: string): JarSize | null {
  const found = /^\s*(\d+(?:[.,]\d+)?)\s*(lb|oz|kg|g)\s*$/i.exec(text);
  const unit = jarUnits.find((one) => one === found?.[2]?.toLowerCase());
  const amount = typedNumber(found?.[1] ?? '');
  return unit === undefined || amount === null || !(amount > 0) ? null : { amount, unit };
}

export function lotAddress(code: string): string {
  return `/honey/lots/${encodeURIComponent(code)}`;
}

/** The code that stands in an address. */
export function codeIn(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
