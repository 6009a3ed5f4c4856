import { expect, test } from 'vitest';
import { countedItems, isMeasured, oneItem } from '#shared/itemWords.ts';

test('more than one of an item: its own word is made plural, not what it is with, of or for', () => {
  const items = ['deep box', 'medium super, 8-frame', 'winter wrap', 'deep box with combs', 'hive for a split', 'sheet of newspaper', 'entrance reducer or mouse guard', 'supers', 'brush', 'post or box of nails', 'opener'];
  expect(items.map((item) => countedItems(2, item))).toEqual([
    '2 deep boxes', '2 medium supers, 8-frame', '2 winter wraps', '2 deep boxes with combs', '2 hives for a split', '2 sheets of newspaper', '2 entrance reducers or mouse guards', '2 supers', '2 brushes', '2 posts or boxes of nails', '2 openers',
  ]);
  expect(items.slice(0, 7).map((item) => countedItems(1, item))).toEqual(items.slice(0, 7).map((item) => `1 ${item}`));
});

test('one of what somebody wrote as several; what has no other form stays', () => {
  const items = ['deep boxes', 'deep box', 'boxes of nails', '3 lb packages', 'mated queens', 'batteries', 'medium supers, 8-frame', 'posts or brushes', 'glass', 'pliers', 'Queens'];
  expect(items.map(oneItem)).toEqual(['deep box', 'deep box', 'box of nails', '3 lb package', 'mated queen', 'battery', 'medium super, 8-frame', 'post or brush', 'glass', 'pliers', 'Queen']);
  expect(countedItems(2, 'battery')).toBe('2 batteries');
});

test.each([
  ['deep box', false], ['deep frames', false], ['deep frame, foundation', false], ['medium super, 8-frame', false], ['white sugar, 50 lb bag', false], ['bags of sugar', false], ['honey jar, 1 lb', false], ['honey, 1 lb jar', false],
  ['wax melter', false], ['queen', false], ['feeder', false], ['sheets of foundation', false], ['fuel can', false], ['smoker', false],
  ['sugar', true], ['White Sugar', true], ['pounds of sugar', true], ['foundation', true], ['wax foundation', true], ['foundation, lb', true], ['nails, kg', true], ['honey in bulk, lb', true], ['honey', true], ['syrup', true], ['oxalic acid', true], ['extraction, hours', true],
])('“%s” is weighed or measured: %s', (item, measured) => expect(isMeasured(item)).toBe(measured));
