import { number } from './figures.ts';
import { gramsPerPound, millilitresPerGallon, roundTo } from './units.ts';

/** A figure with what stands after it, in small letters; '' where nothing does. */
export interface TypedFigure {
  readonly amount: number;
  readonly unit: string;
}

const grouped = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
const plain = /^(?:\d+(?:\.\d*)?|\.\d+)$/;
const comma = /^\d*,\d+$/;
const points = /^\d{1,3}(?:\.\d{3})+,\d+$/;

/**
 * A figure as people write it, with or without a unit; null where it is none. `1,200` is twelve hundred, as a comma parts
 * thousands, unless that is more than `most` and 1.2 is not; any other comma is a decimal comma.
 */
export function typedFigure(text: string, most = Infinity): TypedFigure | null {
  const found = /^([+-]?)\s*\$?\s*([\d.,]*\d\.?)\s*([^\d]*)$/.exec(text.trim().replaceAll(/[\u00a0\u2002\u202f]/g, ' ').replace('−', '-'));
  if (found === null) return null;
  const [, sign = '', digits = '', unit = ''] = found;
  const amount = amountOf(digits, most);
  return amount === null ? null : { amount: sign === '-' ? -amount : amount, unit: unit.trim().replace(/\.$/, '').toLowerCase() };
}

function amountOf(digits: string, most: number): number | null {
  if (plain.test(digits)) return Number(digits);
  const decimal = Number(digits.replace(',', '.'));
  if (grouped.test(digits) && !digits.startsWith('0')) {
    const whole = Number(digits.replaceAll(',', ''));
    return whole > most && comma.test(digits) && decimal <= most ? decimal : whole;
  }
  if (comma.test(digits)) return decimal;
  return points.test(digits) ? Number(digits.replaceAll('.', '').replace(',', '.')) : null;
}

/** A figure as the exchange form writes it: digits and a point, never powers of ten. */
export function plainText(amount: number): string {
  const text = String(amount);
  if (!text.includes('e')) return text;
  return Math.abs(amount) >= 1 ? BigInt(amount).toString() : amount.toFixed(15).replace(/\.?0+$/, '');
}

/** Units with the ways in which they are written, and what one is of the first of its kind: exact (NIST Handbook 44, appendix C, from memory). */
const units = {
  kg: { of: 'mass', one: 1, names: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'] },
  lb: { of: 'mass', one: gramsPerPound / 1000, names: ['lb', 'lbs', 'pound', 'pounds'] },
  oz: { of: 'mass', one: gramsPerPound / 16_000, names: ['oz', 'ounce', 'ounces'] },
  g: { of: 'mass', one: 0.001, names: ['g', 'gram', 'grams'] },
  l: { of: 'volume', one: 1, names: ['l', 'liter', 'liters', 'litre', 'litres'] },
  gal: { of: 'volume', one: millilitresPerGallon / 1000, names: ['gal', 'gals', 'gallon', 'gallons'] },
  min: { of: 'time', one: 1, names: ['min', 'mins', 'minute', 'minutes'] },
  h: { of: 'time', one: 60, names: ['h', 'hr', 'hrs', 'hour', 'hours'] },
  km: { of: 'way', one: 1, names: ['km', 'kilometer', 'kilometers', 'kilometre', 'kilometres'] },
  miles: { of: 'way', one: 1.609344, names: ['mi', 'mile', 'miles'] },
  '°C': { of: 'warmth', one: 1, names: ['°c', '° c', 'º c', 'ºc', 'c', 'deg c', 'celsius', 'degrees c'] },
  '°F': { of: 'warmth', one: 5 / 9, names: ['°f', '° f', 'º f', 'ºf', 'f', 'deg f', 'fahrenheit', 'degrees f'] },
  '%': { of: 'share', one: 1, names: ['%', 'percent', 'per cent', 'pct'] },
} as const;
export type MeasureUnit = keyof typeof units;

export function isMeasureUnit(text: string): text is MeasureUnit {
  return text in units;
}

/** The unit that was written, or null where it is none that is known here. */
export function unitNamed(written: string): MeasureUnit | null {
  return (Object.keys(units) as MeasureUnit[]).find((one) => (units[one].names as readonly string[]).includes(written)) ?? null;
}

/** The amount in another unit of the same kind, to a billionth; null where there is no way between them. */
export function converted(amount: number, from: MeasureUnit, to: MeasureUnit): number | null {
  if (from === to) return amount;
  if (units[from].of !== units[to].of) return null;
  if (from === '°F') return roundTo(((amount - 32) * 5) / 9, 9);
  if (from === '°C') return roundTo((amount * 9) / 5 + 32, 9);
  return roundTo((amount * units[from].one) / units[to].one, 9);
}

export interface Asked {
  /** The unit that the field asks for; null for a number of nothing but things. */
  readonly unit: MeasureUnit | null;
  /** Other words that may stand after the figure and mean nothing else, such as `jars`. */
  readonly own?: readonly string[];
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  readonly suchAs: string;
}

export type Measured = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly sentence: string };

/** What was typed in the unit that is asked for, or why it cannot be taken: no number, another unit, or an absurd amount, each for its own reason. */
export function readMeasure(text: string, { unit, own = [], least = 0, most = Infinity, whole = false, suchAs }: Asked): Measured {
  const no = (sentence: string): Measured => ({ ok: false, sentence });
  const [typed, where] = [text.trim(), unit === null ? '' : ` in ${unit}`];
  const how = `Type it${where}, such as ${suchAs}.`;
  if (typed === '') return no(how);
  const found = typedFigure(typed, most);
  if (found === null) return no(`“${typed}” is no number. ${how}`);
  const named = unitNamed(found.unit);
  const bare = found.unit === '' || own.includes(found.unit) || (found.unit === '°' && (unit === '°F' || unit === '°C'));
  const value = bare ? found.amount : named === null || unit === null ? null : converted(found.amount, named, unit);
  if (value === null) return no(unit === null ? `“${typed}” has a unit that means nothing here. ${how}` : `“${typed}” is not${where}, nor in a unit that becomes ${unit}. ${how}`);
  const bound = (limit: number) => `${number(limit, 6).replace('-', '−')}${unit === null ? '' : unit === '%' ? ' %' : ` ${unit}`}`;
  if (value > most) return no(`“${typed}” is above ${bound(most)}, the most that makes sense here.`);
  // A least that only shuts out nothing at all is no figure to read.
  if (value < least && least > 0 && least <= 1e-3) return no(`“${typed}” is not above 0. ${how}`);
  if (value < least) return no(`“${typed}” is below ${bound(least)}, the least that makes sense here.`);
  if (whole && !Number.isInteger(value)) return no(`“${typed}” is not a whole number. ${how}`);
  return { ok: true, value };
}
