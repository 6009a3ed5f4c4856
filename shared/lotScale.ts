import type { LotAccount } from './contract/lots.ts';

/** The share of what came in by which a scale may find more before it is said. Common practice, no source. */
export const heavyShare = 0.05;

/** Half a gram: rounding of scales. */
const rounding = 0.5;

/** Whether weighings found so much more than came into a lot that a harvest is missing or a scale is wrong; grams. */
export function weighedTooHeavy({ difference, weighedOf }: Pick<LotAccount, 'difference' | 'weighedOf'>): boolean {
  return difference > heavyShare * weighedOf + rounding;
}
