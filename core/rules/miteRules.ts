import type { HouseRule } from '#shared/contract/order.ts';

type Definition = Omit<HouseRule, 'value'>;
const practice = 'common practice, no source';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source: string, confidence: HouseRule['confidence']): Definition {
  return { key: `mites.${key}`, label, room: 'mites', unit, type: 'number', default: standard, range, source, confidence };
}
function watch(phase: string, name: string, standard: number): Definition {
  return rule(`watch.${phase}`, `${name}: watch from`, 'in 100 bees', standard, [0.1, 20], 'Honey Bee Health Coalition, Tools for Varroa Management, 2016 to 2018', 'from memory');
}
function treat(phase: string, name: string, standard: number, source: string, confidence: HouseRule['confidence']): Definition {
  return rule(`treat.${phase}`, `${name}: act from`, 'in 100 bees', standard, [0.5, 20], source, confidence);
}
function begins(phase: string, label: string, standard: string): Definition {
  return { key: `mites.begins.${phase}`, label, room: 'mites', unit: 'month-day', type: 'month-day', default: standard, range: null, source: 'House choice for the northern tier; put in your own', confidence: practice };
}

const bands = 'Honey Bee Health Coalition, Tools for Varroa Management, 2016 to 2018';
const anySeason = 'USDA-ARS Tucson, quoted by the Gilroy beekeepers (gilroybeekeepers.org/sampling-for-varroa): 3 in any season';
const plans = 'Lee, Moon, Burkness, Hutchison, Spivak 2010, J. Econ. Entomol. 103:1039-1050';

/** From which count on a colony is watched and acted on, by phase of the season; and by what counts are carried forward. */
export const miteRuleDefinitions: readonly Definition[] = [
  begins('increase', 'Colonies build up from', '03-15'),
  begins('peak', 'Colonies are at their peak from', '06-15'),
  begins('decrease', 'Colonies decrease from', '08-01'),
  begins('dormant', 'Colonies rest from', '11-01'),
  watch('increase', 'Build-up', 1),
  watch('peak', 'Peak', 2),
  watch('decrease', 'Decrease', 2),
  watch('dormantBrood', 'Rest, with brood', 1),
  watch('dormantBroodless', 'Rest, without brood', 1),
  treat('increase', 'Build-up', 3, `${anySeason}; published from 1 (Mississippi State, February) to 5 (Penn State)`, 'read'),
  treat('peak', 'Peak', 3, `${anySeason}; published from 2 (Oliver 2020) to 5 (Coalition, earlier editions)`, 'read'),
  treat('decrease', 'Decrease', 3, `${anySeason}; published from 2 (Oliver 2020) to 5 (Penn State)`, 'read'),
  treat('dormantBrood', 'Rest, with brood', 2, bands, 'from memory'),
  treat('dormantBroodless', 'Rest, without brood', 3, bands, 'from memory'),
  rule('sure', 'A colony is called above the threshold from a chance of', 'share', 0.8, [0.5, 0.99], 'House choice', practice),
  rule('colonies', 'Colonies to wash in a yard of which nothing is known', 'colonies', 8, [2, 60], `${plans}: 8 whatever the yard’s size`, 'read'),
  rule('precision', 'How close a yard’s figure should be', 'share', 0.25, [0.05, 1], 'A usual figure for decisions in pest sampling: standard error over mean of 25 %', 'from memory'),
  rule('halfCup', 'Bees in half a US cup', 'bees', 300, [200, 450], 'beekept.org/alcohol-mite-counts: 300; Mississippi State counts 400, BEEBOOK’s 100 mL for 300 would make it 355', 'read-weak'),
  rule('growth', 'Mites grow by, a day, while there is brood', 'of themselves', 0.021, [0, 0.1], 'Rule of thumb credited to Oliver (beesurprised.blogspot.com): 0.021 a day, doubling in 33 days; faster in fall, when mites come in with other bees', 'read-weak'),
  rule('growthBroodless', 'Mites grow by, a day, while there is no brood', 'of themselves', 0, [-0.02, 0.1], 'Mites breed in brood alone, so without it they do not grow; in fall they may still come in with other bees (DeGrandi-Hoffman 2016)', practice),
  rule('holds', 'A count speaks for its colony and its yard for', 'days', 30, [7, 120], 'Count monthly (Penn State, Lopez-Uribe lab: lopezuribelab.com/varroa-mite-monitoring)', 'read'),
  rule('roundDays', 'Counts belong together within', 'days', 21, [1, 60], 'House choice: a round of all yards', practice),
  rule('beforeDays', 'A count before a treatment tells of it for', 'days', 30, [1, 90], 'Count before and after each treatment (Penn State, Lopez-Uribe lab, read); the days are a house choice', practice),
  rule('afterDays', 'A count after a treatment’s last day tells of it for', 'days', 42, [1, 120], 'Count before and after each treatment (Penn State, Lopez-Uribe lab, read); the days are a house choice', practice),
  rule('broodFactor', 'Mites in all, for one on a grown bee, while there is brood', 'times', 2, [1, 4], `${plans}: double`, 'read'),
];
