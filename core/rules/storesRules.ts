import type { HouseRule } from '#shared/contract/order.ts';

const practice = 'common practice, no source';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source: string, confidence: HouseRule['confidence']): Omit<HouseRule, 'value'> {
  return { key: `stores.${key}`, label, room: 'stores', unit, type: 'number', default: standard, range, source, confidence };
}

function yearDay(key: string, label: string, standard: string, source: string, confidence: HouseRule['confidence']): Omit<HouseRule, 'value'> {
  return { key: `stores.${key}`, label, room: 'stores', unit: 'month-day', type: 'month-day', default: standard, range: null, source, confidence };
}

const survey = 'one author’s survey of dozens of sources (honeybeesuite.com)';

/** What a colony should have for winter, by place; what combs hold; and what syrup adds. */
export const storesRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  rule('target.south', 'Stores for winter, south', 'lb', 40, [10, 150], `About 40 lb: ${survey}; published from 30 (Georgia Piedmont) to 60 (north Alabama)`, 'read'),
  rule('target.middle', 'Stores for winter, middle', 'lb', 60, [10, 200], `About 60 lb: ${survey}; published from 50 (Virginia mountains) to 60`, 'read'),
  rule('target.north', 'Stores for winter, north', 'lb', 90, [20, 250], 'Moeller 1977, USDA-ARS Production Research Report 169: 90 lb in October in Wisconsin; published from 80 to 90', 'read'),
  rule('slack', 'So much above or below is let be', 'lb', 5, [0, 40], 'House choice: less than one deep comb, which no look tells apart', practice),
  rule('frame.deep', 'Stores in a full deep comb', 'lb', 7, [3, 10], 'A general article (biologyinsights.com): 6 to 8 lb net', 'read-weak'),
  rule('frame.medium', 'Stores in a full medium comb', 'lb', 4, [2, 7], 'General articles (biologyinsights.com): 3.5 to 5 lb', 'read-weak'),
  rule('frame.shallow', 'Stores in a full shallow comb', 'lb', 3, [1, 5], 'Extension practice: 2.5 to 3.5 lb', 'from memory'),
  rule('hive.bees', 'Bees in a hive that is weighed in autumn', 'lb', 6, [0, 20], 'House choice; 8 to 10 lb were wanted of a strong colony (Farrar, as cited by Oliver 2016)', practice),
  rule('hive.other', 'Pollen and the rest in a hive that is weighed', 'lb', 4, [0, 20], 'House choice', practice),
  rule('gain.heavy', 'Stores from a gallon of heavy syrup (2:1)', 'lb', 7, [4, 9], 'Extension rule of thumb: about 7 lb, 6.5 to 8; 9.0 lb if nothing were lost (arithmetic)', 'from memory'),
  rule('gain.light', 'Stores from a gallon of light syrup (1:1)', 'lb', 5, [2, 6.3], '6.26 lb if nothing were lost, less the fifth that handling takes', 'arithmetic'),
  { key: 'stores.feedBy', label: 'Heavy syrup is fed until', room: 'stores', unit: 'month-day', type: 'month-day', default: '10-15', range: null, source: 'Moeller 1977: about 15 October in the northern tier and southern Canada', confidence: 'read' },
  { key: 'stores.place', label: 'Where you winter: south, middle or north', room: 'stores', unit: 'words', type: 'text', default: 'north', range: null, choices: ['south', 'middle', 'north'], source: 'House choice; put in your own', confidence: practice },
  yearDay('autumnFrom', 'Stores are judged by the winter’s target from', '08-15', 'House choice for the northern tier: the main crop is off', practice),
  rule('holds', 'A word on stores is good for', 'days', 30, [7, 90], 'House choice: a flow or a dearth changes them in a month', practice),
  rule('low', 'Less than this is called low at any time', 'lb', 15, [2, 60], 'House choice: two deep combs', practice),
  rule('week', 'Stores a colony uses in a winter week', 'lb', 2, [0.5, 6], 'A hobby page quoting a UK author: 2 lb in a week without flying, strong colony (happyhourtopbar.blogspot.com, 2016)', 'read-weak'),
  yearDay('takeFrom', 'Supers may be taken from', '07-15', 'House choice for the northern tier: capped by the end of the main flow', practice),
  yearDay('unite.from', 'Weak colonies are united from', '08-20', 'House choice for the northern tier', practice),
  yearDay('unite.until', 'Weak colonies are united until', '10-15', 'House choice for the northern tier', practice),
  rule('winterFrames', 'Frames of bees to winter on', 'frames', 5, [2, 20], 'Extension practice in the north: 5 to 6 deep frames of bees in mid October, less in the south', 'from memory'),
  rule('partnerFrames', 'Frames of bees a colony has that a weak one is united into', 'frames', 6, [3, 20], 'House choice: two weak ones make no strong one', practice),
];
