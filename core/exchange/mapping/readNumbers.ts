import type { MassUnit, VolumeUnit } from '#shared/units.ts';

export type Decimal = 'point' | 'comma';
export type AmountUnit = MassUnit | VolumeUnit;
export type DecimalFinding = 'none' | Decimal | 'either' | 'mixed';

const spaces = /(?<=\d)[\u00a0\u202f\u2009 '’](?=\d{3}(?:\D|$))/g;
const whole = /^[+-]?\d+$/;
const withPoint = /^[+-]?(?:(?:\d+|\d{1,3}(?:,\d{3})+)(?:\.\d*)?|\.\d+)$/;
const withComma = /^[+-]?(?:(?:\d+|\d{1,3}(?:\.\d{3})+)(?:,\d*)?|,\d+)$/;
/** One sign and three figures behind it: thousands with one decimal sign, a fraction with the other. A leading nought settles it. */
const bothWays = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/** The plain figure, with a point, of a number written with that decimal sign; thousands may be parted. Null if it is none. */
export function plainNumber(text: string, decimal: Decimal): string | null {
  const typed = text.trim().replace(spaces, '');
  if (decimal === 'point') return withPoint.test(typed) ? typed.replaceAll(',', '').replace(/\.$/, '') : null;
  return withComma.test(typed) ? typed.replaceAll('.', '').replace(',', '.').replace(/\.$/, '') : null;
}

export function isNumberLike(text: string): boolean {
  return plainNumber(text, 'point') !== null || plainNumber(text, 'comma') !== null;
}

/** Which decimal sign the texts are written with; texts that are no numbers say nothing. */
export function decimalOf(texts: Iterable<string>): DecimalFinding {
  let point = false;
  let comma = false;
  let either = false;
  for (const text of texts) {
    const typed = text.trim().replace(spaces, '');
    if (whole.test(typed)) continue;
    const asPoint = withPoint.test(typed);
    const asComma = withComma.test(typed);
    if (bothWays.test(typed)) either = true;
    else if (asPoint && /^[+-]?0,/.test(typed)) comma = true;
    else if (asComma && /^[+-]?0\./.test(typed)) point = true;
    else if (asPoint && !asComma) point = true;
    else if (asComma && !asPoint) comma = true;
  }
  if (point && comma) return 'mixed';
  if (point) return 'point';
  if (comma) return 'comma';
  return either ? 'either' : 'none';
}

const unitWords: Readonly<Record<AmountUnit, readonly string[]>> = {
  lb: ['lb', 'lbs', 'pound', 'pounds'],
  kg: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramm'],
  gal: ['gal', 'gals', 'gallon', 'gallons'],
  l: ['l', 'liter', 'liters', 'litre', 'litres', 'ltr'],
};
const unitOf: ReadonlyMap<string, AmountUnit> = new Map((Object.keys(unitWords) as AmountUnit[]).flatMap((unit) => unitWords[unit].map((word) => [word, unit] as const)));

export function unitNamed(word: string): AmountUnit | null {
  return unitOf.get(word.trim().toLowerCase().replace(/\.$/, '')) ?? null;
}

/** The unit in a header such as “Honey (kg)” or “Syrup gal”. Null when it names none, or two. */
export function unitInHeader(header: string): AmountUnit | null {
  const named = new Set(header.split(/[^\p{L}]+/u).flatMap((word) => unitNamed(word) ?? []));
  return named.size === 1 ? ([...named][0] ?? null) : null;
}

/** A figure with its own unit behind it, `12.5 kg`, in two. */
export function splitUnit(text: string): { readonly figure: string; readonly unit: AmountUnit | null } {
  const parts = /^(.*[\d.,])\s*([a-z]+\.?)$/i.exec(text.trim());
  const unit = parts === null ? null : unitNamed(parts[2] ?? '');
  return unit === null ? { figure: text.trim(), unit: null } : { figure: (parts?.[1] ?? '').trim(), unit };
}
