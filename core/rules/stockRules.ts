import type { HouseRule } from '#shared/contract/order.ts';

const practice = 'common practice, no source';
const rotation = 'Three to five years: association summary (hbka.org.uk, the merits of comb change); two to three in a practice note (buttsbees.com, 2019)';

/** What the stock book assumes of hives where the record says nothing. */
export const stockRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  { key: 'stock.frames', label: 'Frames in a box where its name says nothing', room: 'stock', unit: 'frames', type: 'number', default: 10, range: [8, 10], source: 'House choice: ten-frame equipment, or eight', confidence: practice },
  { key: 'stock.startDeeps', label: 'Deep boxes that a package, nuc, swarm or split begins on', room: 'stock', unit: 'boxes', type: 'number', default: 1, range: [1, 3], source: 'One box until it is filled', confidence: practice },
  { key: 'stock.nucFrames', label: 'Frames that come with a nuc', room: 'stock', unit: 'frames', type: 'number', default: 4, range: [2, 6], source: 'Nucs are sold on four or five frames; ask the seller', confidence: practice },
  { key: 'stock.splitFrames', label: 'Frames that go over with a split, where they were not written down', room: 'stock', unit: 'frames', type: 'number', default: 4, range: [1, 8], source: 'Two or three frames of brood and one or two of stores', confidence: practice },
  { key: 'stock.drawnDays', label: 'Summer days on a hive after which a frame counts as drawn', room: 'stock', unit: 'days', type: 'number', default: 60, range: [14, 183], source: 'Foundation is drawn in a colony’s first season', confidence: practice },
  { key: 'stock.combYears', label: 'Years after which brood comb is due for rotation', room: 'stock', unit: 'years', type: 'number', default: 5, range: [2, 10], source: rotation, confidence: 'read-weak' },
];
