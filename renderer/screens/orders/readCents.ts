import { typedFigure } from '#shared/typedMeasure.ts';

const dollars: readonly string[] = ['', '$', 'dollar', 'dollars', 'usd'];

/** A typed price in minor units: `160`, `$1,234.50`, `160,50`, `160 $`; null if it is none. */
export function readCents(typed: string): number | null {
  const found = typedFigure(typed);
  if (found === null || found.amount < 0 || found.amount >= 1e7 || !dollars.includes(found.unit)) return null;
  const cents = Math.round(found.amount * 100);
  return Math.abs(cents - found.amount * 100) < 1e-6 ? cents : null;
}
