import type { JarSize } from './contract/lots.ts';
import { hold } from './figures.ts';
import { gramsPerPound } from './units.ts';

/**
 * Net weight of a jar in both systems, the one it was filled by first: `1 lb (16 oz)  453 g`. What is converted is
 * rounded down, to a gram or a tenth of an ounce, so that it never says more than the jar holds (common practice, no
 * source).
 */
export function netWeight({ amount, unit }: JarSize): string {
  const ounce = gramsPerPound / 16;
  const grams = amount * { lb: gramsPerPound, oz: ounce, g: 1, kg: 1000 }[unit];
  const down = (value: number, places: number) => Math.floor(value * 10 ** places + 1e-9) / 10 ** places;
  if (unit === 'lb' || unit === 'oz') {
    const customary = unit === 'lb' ? `${amount}${hold}lb (${down(amount * 16, 1)}${hold}oz)` : `${amount}${hold}oz`;
    return `${customary}, ${down(grams, 0)}${hold}g`;
  }
  return `${amount}${hold}${unit}, ${down(grams / ounce, 1)}${hold}oz`;
}
