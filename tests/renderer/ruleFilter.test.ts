import { expect, test } from 'vitest';
import { ruleBook } from '#core/rules/ruleBook.ts';
import { fittingRules } from '../../renderer/screens/rules/ruleFilter.ts';

const { rooms } = ruleBook(new Map<string, number | string>([['losses.few', 12]]));
const keys = (show: 'all' | 'changed' | 'memory', typed: string) => fittingRules(rooms, show, typed).flatMap(({ rules }) => rules.map(({ key }) => key));

test('every word typed must be in the rule, its heading, its source or what it affects', () => {
  expect(keys('all', '')).toHaveLength(rooms.flatMap(({ rules }) => rules).length);
  expect(keys('all', 'walk-away verdict')).toEqual(['attention.walkAway.by']);
  expect(keys('all', 'PARTS of a hive feeders')).toEqual(['order.feeders']);
  expect(keys('all', 'check the label taken off within')).toEqual(['attention.treatmentOff.by']);
  expect(keys('all', 'no such word')).toEqual([]);
});

test('changed ones and ones from memory', () => {
  expect(keys('changed', '')).toEqual(['losses.few']);
  expect(keys('memory', '').length).toBeGreaterThan(3);
  expect(fittingRules(rooms, 'memory', '').flatMap(({ rules }) => rules).every(({ confidence }) => confidence === 'from memory')).toBe(true);
});
