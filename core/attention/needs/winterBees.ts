import { addDays, dayInWords, monthDayInWords } from '#shared/days.ts';
import { treatmentCautions } from '#core/mites/miteCautions.ts';
import { judgeMites } from '#core/mites/miteThresholds.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { countHolds, isOver, isYardOver } from './mitesOver.ts';
import type { ColonyFacts, NeedFacts, NeedRule } from './needRule.ts';
import { countWords, treatedRecord } from './needWords.ts';
import { stretch } from './seasonDays.ts';

/** Colonies that were not treated before their winter bees are raised, and that no count of these weeks shows to be low. */
export const winterBees: NeedRule = {
  key: 'winterBees',
  title: 'Treatment before the winter bees',
  why: 'The bees that live through winter are raised from late August on; mites shorten their lives.',
  numbers: ['needs.winterBees.from', 'needs.winterBees.by', 'needs.winterBees.early', 'mites.watch.peak', 'mites.watch.decrease', 'mites.begins.decrease', 'mites.holds', 'mites.sure', 'attention.letGo'],
  weather: 'label',
  caution: treatmentCautions.join(' '),
  page: '/needs/mites',
  tally: { answers: ['treatment'], came: 'lost in winter' },
  find: (facts) => {
    const { rules, today, ahead } = facts;
    const asked = stretch(rules, 'needs.winterBees.from', 'needs.winterBees.by', addDays(today, -numberRule(rules, 'attention.letGo')));
    if (addDays(today, ahead) < asked.from) return [];
    const since = addDays(asked.from, -numberRule(rules, 'needs.winterBees.early'));
    return facts.colonies.flatMap((colony) => {
      if (!isLeft(colony, facts, since)) return [];
      const last = colony.treatments.at(-1);
      return [{
        colony, episode: asked.from, act: 'Treat before the winter bees', because: `Not treated since ${dayInWords(since)}, and no count shows few mites.`,
        detail: countedWords(colony, facts, since),
        records: last === undefined ? [] : [treatedRecord(last)], earliest: asked.from, latest: asked.until,
      }];
    });
  },
};

/** Untreated since then, not asked for by its own count or its yard's, and not shown to have few mites. */
export function isLeft(colony: ColonyFacts, facts: NeedFacts, since: string): boolean {
  const { treatments, count, yard, state } = colony;
  if (state.start >= since && state.origin !== 'split') return false;
  if (treatments.some(({ until }) => until >= since) || isYardOver(yard) || isOver(colony, facts)) return false;
  const { speaks, verdict, estimate, thresholds } = yard.mites();
  if (count !== null && count.day >= since && countHolds(colony, facts) && judgeMites(count.per100, thresholds) === 'low') return false;
  return !(speaks === 'now' && verdict === 'below' && estimate.rate !== null && estimate.rate.per100 < thresholds.watch);
}

function countedWords(colony: ColonyFacts, facts: NeedFacts, since: string): string {
  const { count } = colony;
  if (count === null || count.day < since) return 'not counted';
  return countHolds(colony, facts) ? `${countWords(count)}, on ${monthDayInWords(count.day)}` : `last counted on ${monthDayInWords(count.day)}`;
}
