import { fixed } from '../../parts/format.ts';

/** Minor units with both decimals, so that a column lines up; an en dash where there is none. */
export function amountText(minor: number | null): string {
  return minor === null ? fixed(null, 2) : fixed(minor / 100, 2).replace('-', '−');
}
