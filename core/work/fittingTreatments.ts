import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { NeedFacts } from '#core/attention/needs/needRule.ts';
import { supersOn } from '#core/attention/needs/supersOff.ts';
import { treatmentFits, usualHigh } from '#core/mites/treatmentFits.ts';

/** The active ingredients of the treatments that fit in a yard on a day, each once; supers and brood are taken as the record has them now. */
export function fittingIn({ yards, rules }: NeedFacts, yard: YardId, on: Day): string[] {
  const found = yards.find((one) => one.yard.id === yard);
  if (found === undefined) return [];
  const given = found.standing.flatMap(({ treatments }) => treatments).toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.entry - b.entry));
  const [last, now] = [given.at(-1), given.findLast(({ from, until }) => from <= on && until >= on)];
  const fits = treatmentFits({
    today: on, high: usualHigh(on, rules), brood: found.mites().brood, withSupers: found.standing.filter((colony) => supersOn(colony) > 0).length,
    lastUsed: last === undefined ? null : { ingredient: last.ingredient, day: last.from }, underWay: now === undefined ? null : { ingredient: now.ingredient, until: now.until },
  }, rules);
  return [...new Set(fits.filter(({ fits: verdict }) => verdict === 'fits').map(({ ingredient }) => ingredient))];
}
