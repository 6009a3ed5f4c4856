import type { Grams } from '#shared/brands.ts';
import { jarUnits, type JarSize } from '#shared/contract/lots.ts';
import { gramsPerPound } from '#shared/units.ts';

const grams: Readonly<Record<JarSize['unit'], number>> = { lb: gramsPerPound, oz: gramsPerPound / 16, g: 1, kg: 1000 };

/** What one jar holds. */
export function jarGrams({ amount, unit }: JarSize): Grams {
  return (amount * grams[unit]) as Grams;
}

/** One text for one size, whatever the order in which it was typed: `1 lb`. */
export function sizeKey({ amount, unit }: JarSize): string {
  return `${amount} ${unit}`;
}

export function jarWords(size: JarSize): string {
  return `${sizeKey(size)} jar`;
}

/** What a sale's item is called in the journal: `honey, 1 lb jar`, or of the pail, with the unit of its quantity. */
export function saleItem(size: JarSize | null, bulkUnit: 'lb' | 'kg'): string {
  return size === null ? `honey in bulk, ${bulkUnit}` : `honey, ${jarWords(size)}`;
}

export type SoldHoney = { readonly kind: 'jar'; readonly size: JarSize } | { readonly kind: 'bulk'; readonly unit: 'lb' | 'kg' };

/** Reads a sale's item; null for what is no honey of a known size. */
export function readSaleItem(item: string): SoldHoney | null {
  const text = item.trim().toLowerCase();
  if (!text.includes('honey')) return null;
  const bulk = /\bbulk\b.*\b(lb|kg)\b/.exec(text);
  if (bulk) return { kind: 'bulk', unit: bulk[1] === 'kg' ? 'kg' : 'lb' };
  const jar = /(\d+(?:[.,]\d+)?)\s*(lb|oz|kg|g)\b/.exec(text);
  const unit = jarUnits.find((one) => one === jar?.[2]);
  const amount = Number(jar?.[1]?.replace(',', '.'));
  return unit === undefined || !(amount > 0) ? null : { kind: 'jar', size: { amount, unit } };
}
