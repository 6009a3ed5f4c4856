import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { miteRate, probabilityAbove, type MiteWash, type RatePer100 } from './miteRate.ts';
import { coloniesToWash, pooledWash, shownYardRate, yardMites } from './yardMites.ts';

/** A wash of a colony that is known by its id. */
export interface ColonyWash<Id> extends MiteWash {
  readonly colony: Id;
}

export interface ColonyAbove<Id> {
  readonly colony: Id;
  readonly rate: RatePer100;
  /** Chance that the colony's true rate is above the threshold. */
  readonly above: number;
}

/** What washes of some colonies tell of a yard. */
export interface YardEstimate<Id> {
  readonly washed: number;
  /** Null with no wash. With one, it is that colony's own and says nothing of how colonies differ. */
  readonly rate: RatePer100 | null;
  /** How the range was made: colonies that differ, chance alone, or nothing found in any wash. */
  readonly basis: 'colonies' | 'one colony' | 'no mite' | 'none';
  /** With two or three washes the range is very wide: words instead of a figure. */
  readonly few: boolean;
  /** Chance that the yard's true mean is above the threshold; null with fewer than two washes. */
  readonly above: number | null;
  /** The colonies that are called above the threshold by themselves, the surest first: a yard's mean hides them. */
  readonly hot: readonly ColonyAbove<Id>[];
  /** Colonies still to be washed for the house's closeness; never more than are left. */
  readonly more: number;
}

/** Below so many washes the spread between colonies is hardly known, and the first plan stands. */
const fewWashes = 4;

/**
 * Mites of a yard of `apiarySize` colonies (null: not known) against a threshold in 100 bees. Rate and range: quasi-Poisson
 * with the dispersion held at 1 or more; chance above: gamma posterior widened by the dispersion (approximate). No mite in
 * any wash: only the pooled upper limit is known. More colonies than the yard has: RangeError.
 */
export function yardEstimate<Id>(washes: readonly ColonyWash<Id>[], apiarySize: number | null, threshold: number, rules: RuleValues): YardEstimate<Id> {
  const washed = washes.length;
  const yard = yardMites(washes, apiarySize);
  const pooled = pooledWash(washes);
  const sure = numberRule(rules, 'mites.sure');
  const hot = washes
    .map((wash) => ({ colony: wash.colony, rate: miteRate(wash), above: probabilityAbove(wash, threshold) }))
    .filter(({ above }) => above > sure)
    .toSorted((a, b) => b.above - a.above);
  return {
    washed,
    rate: washed === 0 ? null : yard === null ? miteRate(pooled) : shownYardRate(yard),
    basis: washed === 0 ? 'none' : yard !== null ? 'colonies' : pooled.mites === 0 ? 'no mite' : 'one colony',
    few: washed > 0 && washed < fewWashes,
    above: washed < 2 ? null : probabilityAbove(pooled, threshold, Math.max(1, yard?.dispersion ?? 1)),
    hot,
    more: moreToWash(washed, yard?.cv2 ?? null, apiarySize, rules),
  };
}

function moreToWash(washed: number, cv2: number | null, apiarySize: number | null, rules: RuleValues): number {
  const plan = numberRule(rules, 'mites.colonies');
  const needed = cv2 === null ? plan : coloniesToWash(cv2, numberRule(rules, 'mites.precision'), apiarySize).colonies;
  const wanted = washed < fewWashes ? Math.max(plan, needed) : needed;
  return Math.max(0, Math.min(wanted, apiarySize ?? Infinity) - washed);
}
