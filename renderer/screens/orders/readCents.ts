import { typedFigure } from '#shared/typedMeasure.ts';
import { words } from './words.ts';

const dollars: readonly string[] = ['', '$', 'dollar', 'dollars', 'usd', 'us$'];
const most = 10_000_000;
/** Signs and names of money that is not the book's. */
const otherMoney = /[^\P{Sc}$]|[a-z]\$|\b(?:eur|euros?|gbp|sterling|quid|chf|francs?|cad|aud|nzd|yen|jpy|kr|sek|nok|dkk|pesos?|mxn|zł|pln)\b/iu;

export type PriceRead = { readonly ok: true; readonly cents: number } | { readonly ok: false; readonly sentence: string };

/** A typed price in minor units: `160`, `$1,234.50`, `160,50`, `160 $`; or what is wrong with it. */
export function readPrice(typed: string): PriceRead {
  const text = typed.trim();
  const no = (sentence: string): PriceRead => ({ ok: false, sentence });
  if (text === '') return no(words.must.price);
  if (otherMoney.test(text.replace(/us\$/i, '$'))) return no(words.priceTrouble.otherMoney(text));
  const found = typedFigure(text.replace(/^us\$/i, '$').replace(/^([-+−]?)\s*usd\s*/i, '$1'));
  if (found === null) return no(words.priceTrouble.notANumber(text));
  if (!dollars.includes(found.unit)) return no(words.priceTrouble.unit(text));
  if (found.amount < 0) return no(words.priceTrouble.negative(text));
  if (found.amount > most) return no(words.priceTrouble.tooMuch(text, most));
  const cents = Math.round(found.amount * 100);
  return Math.abs(cents - found.amount * 100) < 1e-6 ? { ok: true, cents } : no(words.priceTrouble.decimals(text));
}

/** The same, null where it is none. */
export function readCents(typed: string): number | null {
  const read = readPrice(typed);
  return read.ok ? read.cents : null;
}
