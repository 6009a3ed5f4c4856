import { binomialCdf } from '#core/stats/binomialCdf.ts';

/** What splits do on the target day: how likely each takes, and how many the survivors can give. */
export interface SplitTerms {
  readonly take: number;
  /** Splits that so many survivors can give. */
  readonly most: (survivors: number) => number;
  /** What was worked out for a number of splits, kept where the same springs are asked about again. */
  readonly known?: Map<number, Standing>;
  /** Chances of so many splits taking, likewise. */
  readonly takes?: Map<number, readonly number[]>;
}

/** Colonies in spring without any bought, as a distribution; and a running sum of the splits that survivors give. */
interface Standing {
  readonly there: readonly number[];
  readonly made: readonly number[];
}

/** For one number of splits planned: what is left open by so many colonies bought (index = colonies bought). */
export interface SplitColumn {
  readonly splits: number;
  readonly probabilityShort: readonly number[];
  readonly expectedShort: readonly number[];
  readonly expectedLeft: readonly number[];
  /** Splits that are really made: those planned, as far as the survivors can give them, in springs that want them. */
  readonly expectedMade: readonly number[];
}

/** Probabilities are sums; without this a tie with the confidence could flip. */
export const tolerance = 1e-12;

/**
 * Chance and number of colonies short of (or beyond) the target for 0..mostBought colonies bought and one number of
 * splits, over survivors with the given shares. Splits are made in late spring, when survivors and bought colonies can be
 * counted: where those are enough none is made, else every one planned that the survivors can give; each takes by
 * itself. Exact for the shares given. O(survivors x splits + target).
 */
export function splitColumn(shares: readonly number[], target: number, splits: number, mostBought: number, terms: SplitTerms): SplitColumn {
  const { there, made } = standing(shares, splits, terms);
  const probabilityShort: number[] = [];
  const expectedShort: number[] = [];
  const expectedLeft: number[] = [];
  const mean = shares.reduce((sum, p, colonies) => sum + p * colonies, 0);
  const expectedMade: number[] = [];
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
    // Made where fewer survive than are wanted beside the bought ones.
    const making = made[Math.max(0, Math.min(shares.length, target - bought))] as number;
    expectedMade.push(making);
    // What is left over is what is missing, less the gap of the mean.
    expectedLeft.push(Math.max(0, short - (target - bought - mean - terms.take * making)));
  }
  return { splits, probabilityShort, expectedShort, expectedLeft, expectedMade };
}

function standing(shares: readonly number[], splits: number, terms: SplitTerms): Standing {
  const before = terms.known?.get(splits);
  if (before !== undefined) return before;
  const there = Array.from({ length: shares.length + splits }, () => 0);
  const made = Array.from({ length: shares.length + 1 }, () => 0);
  const takes = terms.takes ?? new Map<number, readonly number[]>();
  shares.forEach((share, survivors) => {
    if (share === 0) return;
    const given = Math.max(0, Math.min(splits, terms.most(survivors)));
    made[survivors + 1] = share * given;
    const cdf = takes.get(given) ?? binomialCdf(given, terms.take);
    takes.set(given, cdf);
    for (let taken = 0; taken <= given; taken += 1) {
      there[survivors + taken] = (there[survivors + taken] as number) + share * ((cdf[taken] as number) - (taken === 0 ? 0 : (cdf[taken - 1] as number)));
    }
  });
  for (let survivors = 0; survivors < shares.length; survivors += 1) made[survivors + 1] = (made[survivors + 1] as number) + (made[survivors] as number);
  terms.known?.set(splits, { there, made });
  return { there, made };
}

/** The fewest colonies to buy that keep the chance of being short within 1 - confidence; null if not within the column. */
export function fewestBought(column: SplitColumn, confidence: number): number | null {
  const at = column.probabilityShort.findIndex((chance) => chance <= 1 - confidence + tolerance);
  return at < 0 ? null : at;
}
