/** Not recorded, not known, not defined: never 0. The margin says why. */
export const missing = '–';
/** Keeps a figure and its sign or unit on one line. */
export const hold = '\u00a0';

const formatters = new Map<string, Intl.NumberFormat>();
function formatter(least: number, most: number): Intl.NumberFormat {
  const key = `${least}-${most}`;
  let found = formatters.get(key);
  if (!found) {
    found = new Intl.NumberFormat('en-US', { minimumFractionDigits: least, maximumFractionDigits: most });
    formatters.set(key, found);
  }
  return found;
}

/** A number with at most `places` decimals (0 unless told), thousands parted: `1,204`, `5.5`. */
export function number(value: number | null | undefined, places = 0): string {
  return value === null || value === undefined || !Number.isFinite(value) ? missing : formatter(0, places).format(value);
}

/** Always that many decimals, for a column that must line up: `3.0`. */
export function fixed(value: number | null | undefined, places: number): string {
  return value === null || value === undefined || !Number.isFinite(value) ? missing : formatter(places, places).format(value);
}

/** `96 colonies`, `1 colony`. */
export function counted(value: number, one: string, many: string): string {
  return `${number(value)}${hold}${value === 1 ? one : many}`;
}

/** A share from 0 to 1 as `21 %`. */
export function percent(share: number | null | undefined, places = 0): string {
  return share === null || share === undefined ? missing : `${number(share * 100, places)}${hold}%`;
}

/** Bounds from 0 to 1 as `(9–41)`, per cent understood. */
export function percentRange(range: readonly [number, number] | null | undefined, places = 0): string {
  return range ? `(${number(range[0] * 100, places)}–${number(range[1] * 100, places)})` : '';
}

/** Gaps of one em and half of it: plain spaces run together on a page, and figures then read as one. */
const wide = '\u2003';
const gap = '\u2002';

/** A rate never stands alone: `5 of 24  21 %  (9–41)`; an en dash when nothing was at risk. */
export function rate(lost: number, atRisk: number, range: readonly [number, number] | null | undefined): string {
  if (atRisk === 0) return missing;
  const told = `${number(lost)} of ${number(atRisk)}${wide}${percent(lost / atRisk)}`;
  return range ? `${told}${gap}${percentRange(range)}` : told;
}

/** A ratio of rates: `1.09`, `12`, `>100`. */
export function ratio(value: number): string {
  return value > 100 ? '>100' : fixed(value, value >= 10 ? 0 : 2);
}

/** A p-value of a table: what is not nought is never rounded to it, nor what is under the border to the border. */
export function pFigure(p: number | null): string {
  if (p === null) return missing;
  if (p < 0.001) return '<0.001';
  return p < 0.1 ? fixed(Math.floor(p * 1000) / 1000, 3) : fixed(p, 2);
}

/** A difference in whole numbers, with its sign: `+3`, `−4`, `0`. */
export function signed(value: number): string {
  // What rounds to nought has no sign.
  const whole = Math.round(value) || 0;
  return `${whole > 0 ? '+' : ''}${number(whole).replace('-', '−')}`;
}
