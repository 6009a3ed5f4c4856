import type { Grams, Millilitres, Minor } from './brands.ts';

/** International avoirdupois pound, exact (NIST Handbook 44, appendix C). */
export const gramsPerPound = 453.59237;
/** US liquid gallon, exact: 231 cubic inches (NIST Handbook 44, appendix C). */
export const millilitresPerGallon = 3785.411784;

export type MassUnit = 'lb' | 'kg';
export type VolumeUnit = 'gal' | 'l';

export function gramsFrom(amount: number, unit: MassUnit): Grams {
  return (unit === 'lb' ? amount * gramsPerPound : amount * 1000) as Grams;
}

/** The amount in a unit, rounded to a millionth so that what was typed comes back as typed. */
export function massIn(mass: Grams, unit: MassUnit): number {
  return roundTo(mass / (unit === 'lb' ? gramsPerPound : 1000), 6);
}

export function millilitresFrom(amount: number, unit: VolumeUnit): Millilitres {
  return (unit === 'gal' ? amount * millilitresPerGallon : amount * 1000) as Millilitres;
}

export function volumeIn(volume: Millilitres, unit: VolumeUnit): number {
  return roundTo(volume / (unit === 'gal' ? millilitresPerGallon : 1000), 6);
}

/** Money in minor units; null when the figure has parts of a cent. */
export function minorFrom(amount: number): Minor | null {
  const cents = Math.round(amount * 100);
  return Math.abs(cents - amount * 100) < 1e-6 ? (cents as Minor) : null;
}

/** Plain decimal text: `174` or `174.50`. */
export function moneyText(money: Minor): string {
  return money % 100 === 0 ? String(money / 100) : (money / 100).toFixed(2);
}

export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.round(value * scale) / scale;
}
