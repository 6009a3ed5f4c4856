import { binomialCdf } from '#core/stats/binomialCdf.ts';

/** What splits do on the target day: how likely each takes, and how many the survivors can give. */
export interface SplitTerms {
  readonly take: number;
  /** Splits that so many survivors can give. */
  readonly most: (survivors: number) => number;
}

/** For one number of splits planned: what is left open by so many colonies bought (index = colonies bought). */
export interface SplitColumn {
  readonly splits: number;
  readonly probabilityShort: readonly number[];
  readonly expectedShort: readonly number[];
  readonly expectedLeft: readonly number[];
}

/** Probabilities are sums; without this a tie with the confidence could flip. */
export const tolerance = 1e-12;

/**
 * Chance and number of colonies short of (or beyond) the target for 0..mostBought colonies bought and one number of
 * splits, over survivors with the given shares. Every split planned is made if the survivors can give it; each
 * takes by itself. Exact for the shares given. O(survivors x splits + target).
 */
export function splitColumn(shares: readonly number[], target: number, splits: number, mostBought: number, terms: SplitTerms): SplitColumn {
  // Colonies there without any bought, as a distribution.
  const there = Array.from({ length: shares.length + splits }, () => 0);
  const takes = new Map<number, readonly number[]>();
  shares.forEach((share, survivors) => {
    if (share === 0) return;
    const made = Math.max(0, Math.min(splits, terms.most(survivors)));
    const cdf = takes.get(made) ?? binomialCdf(made, terms.take);
    takes.set(made, cdf);
    for (let taken = 0; taken <= made; taken += 1) {
      there[survivors + taken] = (there[survivors + taken] as number) + share * ((cdf[taken] as number) - (taken === 0 ? 0 : (cdf[taken - 1] as number)));
    }
  });
  const probabilityShort: number[] = [];
  const expectedShort: number[] = [];
  const expectedLeft: number[] = [];
  const mean = there.reduce((sum, p, colonies) => sum + p * colonies, 0);
  // Below `need` one is short: sums from the left grow by one step as fewer are bought.
  let below = 0;
  let weighted = 0;
  let counted = 0;
  const rows: { chance: number; short: number }[] = [];
  for (let need = Math.min(0, target - mostBought); need <= target; need += 1) {
    while (counted < need && counted < there.length) {
      below += there[counted] as number;
      weighted += (there[counted] as number) * counted;
      counted += 1;
    }
    if (need >= target - mostBought) rows.push({ chance: Math.min(1, below), short: Math.max(0, need * below - weighted) });
  }
  for (const [bought, { chance, short }] of rows.toReversed().entries()) {
    probabilityShort.push(chance);
    expectedShort.push(short);
    expectedLeft.push(Math.max(0, short - (target - bought - mean)));
  }
  return { splits, probabilityShort, expectedShort, expectedLeft };
}

/** The fewest colonies to buy that keep the chance of being short within 1 - confidence; null if not within the column. */
export function fewestBought(column: SplitColumn, confidence: number): number | null {
  const at = column.probabilityShort.findIndex((chance) => chance <= 1 - confidence + tolerance);
  return at < 0 ? null : at;
}
