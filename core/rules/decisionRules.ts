import type { HouseRule } from '#shared/contract/order.ts';

const practice = 'common practice, no source';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source: string, confidence: HouseRule['confidence']): Omit<HouseRule, 'value'> {
  return { key: `decision.${key}`, label, room: 'decision', unit, type: 'number', default: standard, range, source, confidence };
}

const house = 'House choice; put in your own';
const nass = 'USDA NASS, Honey: 47.0 lb per colony in 2021 and 2022';

/** Numbers that the cheapest order rests on. */
export const decisionRules: readonly Omit<HouseRule, 'value'>[] = [
  { key: 'decision.targetDay', label: 'The day on which the target counts', room: 'decision', unit: 'month-day', type: 'month-day', default: '06-20', range: null, source: 'After the splits of late May to mid June, when the main flow begins', confidence: practice },
  rule('missing', 'What a missing colony costs', '$', 250, [1, 5000], 'A crop at a wholesale price, and room paid for; put in your own', practice),
  rule('surplus', 'What a colony too many costs', '$', 50, [1, 5000], 'Boxes, work, and what selling it loses; put in your own', practice),
  rule('hourValue', 'Value of an hour of work', '$', 18, [0, 200], house, practice),
  rule('springHours', 'Hours in spring for new colonies, for each colony wanted', 'hours', 0.75, [0, 40], 'A quarter of the 3 hours a colony that a sideline season takes (12 minutes a round, 15 rounds); put in your own', practice),
  rule('minutes.package', 'Hiving and following a package', 'minutes', 50, [0, 600], 'Hiving and three short looks', practice),
  rule('minutes.foundation', 'More for a package on foundation', 'minutes', 20, [0, 600], 'More feeding', practice),
  rule('minutes.nuc', 'Placing and following a nuc', 'minutes', 35, [0, 600], 'Transfer and two looks', practice),
  rule('minutes.colony', 'Placing a bought colony', 'minutes', 25, [0, 600], house, practice),
  rule('minutes.split', 'Making and following a split', 'minutes', 45, [0, 600], 'Making it, and two looks for a laying queen', practice),
  rule('minutes.requeen', 'Requeening a colony', 'minutes', 30, [0, 600], 'Finding the old queen, and a look a week later', practice),
  rule('minutes.move', 'Moving a colony to another yard', 'minutes', 40, [0, 600], house, practice),
  rule('split.take', 'Share of splits with a bought queen that take', 'share', 0.8, [0.05, 1], house, practice),
  rule('split.takeRaised', 'Share of splits that raise their own queen and take', 'share', 0.7, [0.05, 1], house, practice),
  rule('split.strong', 'Share of survivors strong enough to split', 'share', 0.6, [0, 1], house, practice),
  rule('split.cap', 'Splits a strong survivor gives', 'per colony', 1, [0, 4], house, practice),
  rule('comb.package', 'Drawn combs a package is hived on', 'combs', 8, [1, 20], 'A ten-frame deep, less two of foundation', practice),
  rule('honey.price', 'Honey in bulk, a pound', '$', 2.5, [0, 50], house, practice),
  rule('honey.established', 'Crop of a wintered colony', 'lb', 47, [0, 400], nass, 'read'),
  rule('honey.package', 'First-year crop of a package on drawn comb', 'lb', 30, [0, 400], 'With drawn comb holding stores an early package can still make a crop (Alaska package-bee guide); the pounds are a house choice', practice),
  rule('honey.foundation', 'First-year crop of a package on foundation', 'lb', 10, [0, 400], 'On bare foundation the first year may go to drawing comb (Alaska package-bee guide); the pounds are a house choice', practice),
  rule('honey.nuc', 'First-year crop of a nuc', 'lb', 30, [0, 400], house, practice),
  rule('honey.split', 'First-year crop of a split, less what its mother gives up', 'lb', 10, [0, 400], house, practice),
  rule('requeen.years', 'Queens are replaced after this many winters', 'winters', 2, [1, 6], house, practice),
];
