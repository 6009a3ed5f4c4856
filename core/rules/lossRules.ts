import type { HouseRule } from '#shared/contract/order.ts';

const practice = 'common practice, no source';

/** The numbers by which colonies are grouped in the season-end review, and below which nothing is compared. */
export const lossRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  { key: 'losses.few', label: 'Fewer at risk than this: the counts lead', room: 'losses', unit: 'colonies', type: 'number', default: 10, range: [1, 100], source: 'House choice: below about 10 the interval of a rate says more than the rate', confidence: practice },
  { key: 'losses.test.fewest', label: 'Fewer losses than this in all: nothing is tested', room: 'losses', unit: 'losses', type: 'number', default: 5, range: [2, 100], source: 'House choice: with fewer than about 5 losses counts are shown alone', confidence: practice },
  { key: 'losses.curve.atRisk', label: 'A curve begins once so many are watched', room: 'losses', unit: 'colonies', type: 'number', default: 5, range: [1, 50], source: 'House choice: with late entry one early loss among very few would pull a curve to nought for ever', confidence: practice },
  { key: 'losses.pairs', label: 'Most groups that are compared pair by pair', room: 'losses', unit: 'groups', type: 'number', default: 6, range: [2, 12], source: 'House choice: six groups are 15 pairs already', confidence: practice },
  { key: 'losses.mites.from', label: 'Mite counts before a winter are taken from', room: 'losses', unit: 'month-day', type: 'month-day', default: '07-15', range: null, source: 'House choice: late summer, when winter bees are raised', confidence: practice },
  { key: 'losses.mites.until', label: 'Mite counts before a winter are taken until', room: 'losses', unit: 'month-day', type: 'month-day', default: '09-30', range: null, source: 'House choice: the last day before a winter that begins on 1 October', confidence: practice },
  { key: 'losses.mites.threshold', label: 'Many mites in late summer begin at', room: 'losses', unit: 'mites per 100 bees', type: 'number', default: 3, range: [0.5, 20], source: 'USDA-ARS Tucson: treat at 3 per 100 (gilroybeekeepers.org/sampling-for-varroa); others say 2 or 5', confidence: 'read' },
  { key: 'losses.stores.from', label: 'Autumn stores and strength are taken from', room: 'losses', unit: 'month-day', type: 'month-day', default: '08-15', range: null, source: 'House choice: after the last honey is off', confidence: practice },
  { key: 'losses.stores.until', label: 'Autumn stores are taken until', room: 'losses', unit: 'month-day', type: 'month-day', default: '11-15', range: null, source: 'House choice: colonies are weighed when feeding is over', confidence: practice },
  { key: 'losses.stores.pounds', label: 'Enough stores for winter begin at', room: 'losses', unit: 'lb', type: 'number', default: 60, range: [5, 200], source: 'About 40 lb in the south, 60 in the middle, 80 to 90 in the north: one author’s survey of dozens of sources (honeybeesuite.com)', confidence: 'read' },
  { key: 'losses.stores.frames', label: 'Enough frames of stores, where nothing was weighed', room: 'losses', unit: 'deep frames', type: 'number', default: 9, range: [1, 30], source: 'About 60 lb at 6 to 8 lb in a deep frame', confidence: 'read-weak' },
];
