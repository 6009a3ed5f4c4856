import type { AtRiskAndLost } from './atRiskAndLost.ts';
import { clopperPearsonInterval } from './clopperPearsonInterval.ts';
import type { Interval } from './interval.ts';
import { quasiBinomialInterval } from './quasiBinomialInterval.ts';
import { wilsonInterval } from './wilsonInterval.ts';

/** The interval to show beside a total loss, the method it comes from, and why that method. */
export type IntervalAcrossUnits =
  | { readonly method: 'none'; readonly because: 'nothing at risk'; readonly interval: null }
  | { readonly method: 'wilson'; readonly because: 'one unit' | 'two units'; readonly interval: Interval }
  | { readonly method: 'clopper-pearson'; readonly because: 'none or all lost'; readonly interval: Interval }
  | { readonly method: 'quasi-binomial'; readonly because: 'units differ'; readonly interval: Interval };

/**
 * Picks the 95 % interval for a total loss over units (yards).
 *
 * Three or more units: quasi-binomial with the t quantile and a dispersion of at least 1, since units more
 * alike than chance are no reason for a narrower interval. Nothing or everything lost: Clopper-Pearson (the
 * logit is infinite). Two units: Wilson, since t with one degree of freedom says nothing; one unit: Wilson.
 * The choice of t over z for few units is this program's own; with many units both coincide.
 */
export function intervalAcrossUnits(counts: readonly AtRiskAndLost[]): IntervalAcrossUnits {
  const units = counts.filter((unit) => unit.atRisk > 0);
  const atRisk = units.reduce((sum, unit) => sum + unit.atRisk, 0);
  const lost = units.reduce((sum, unit) => sum + unit.lost, 0);
  const wilson = wilsonInterval(lost, atRisk);
  const exact = clopperPearsonInterval(lost, atRisk);
  if (wilson === null || exact === null) return { method: 'none', because: 'nothing at risk', interval: null };
  if (lost === 0 || lost === atRisk) return { method: 'clopper-pearson', because: 'none or all lost', interval: exact };
  const quasi = quasiBinomialInterval(units);
  if (units.length < 3 || !quasi.defined) {
    return { method: 'wilson', because: units.length === 1 ? 'one unit' : 'two units', interval: wilson };
  }
  return { method: 'quasi-binomial', because: 'units differ', interval: quasi.ciTDispersionFloor1 };
}
