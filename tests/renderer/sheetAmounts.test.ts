import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amountUnits, boxes, feeds } from '#shared/entryForms.ts';
import { marksFrom } from '#shared/roundMarks.ts';
import { feedText, feedUnit, readFeed, readSupers, readWeight, supersText, weightIn, weightText } from '../../renderer/screens/tonight/sheetAmounts.ts';
import { readCell } from '../../renderer/screens/tonight/sheetCell.ts';
import { plainSetting } from '../../renderer/screens/tonight/sheetSetting.ts';

const metric = { ...plainSetting, massUnit: 'kg' as const };

describe('feed as typed', () => {
  test.each([
    ['1 gal', null, 1, 'gal'], ['2l', null, 2, 'l'], ['2 L', null, 2, 'l'], ['1,5', null, 1.5, null], ['5 lb f', 'fondant', 5, 'lb'], ['f 5 lb', 'fondant', 5, 'lb'],
    ['1 gal 2:1', 'syrup 2:1', 1, 'gal'], ['syrup 1:1 2 l', 'syrup 1:1', 2, 'l'], ['1:1 3', 'syrup 1:1', 3, null], ['pol 1 kg', 'pollen substitute', 1, 'kg'],
  ])('"%s"', (typed, feed, amount, unit) => {
    expect(readFeed(typed, plainSetting)).toEqual({ feed, amount: { amount, unit } });
  });

  test.each([['p', 'pollen substitute'], ['fondant', 'fondant'], ['syrup 2:1', 'syrup 2:1'], ['pollen substitute', 'pollen substitute']])('"%s" alone is that feed without an amount', (typed, feed) => {
    expect(readFeed(typed, plainSetting)).toEqual({ feed, amount: null });
  });

  test.each(['gal', 'gal 1', '1 2', '1 gal l', 'f p', 'syrup', '1 pint', '-1 gal', '1e3', 'y y', '1 gal yes'])('"%s" is not understood', (typed) => {
    expect(readFeed(typed, plainSetting)).toBeNull();
  });

  test('the mark for yes leaves both to the sheet', () => {
    expect(readFeed('y', plainSetting)).toEqual({ feed: null, amount: null });
    expect(readFeed('j', { ...plainSetting, marks: marksFrom({ yes: 'j' }) })).toEqual({ feed: null, amount: null });
  });

  test('syrup is measured, solid feed weighed, in the book’s units', () => {
    expect(feeds.map((feed) => feedUnit(feed, plainSetting))).toEqual(['gal', 'gal', 'lb', 'lb']);
    expect(feeds.map((feed) => feedUnit(feed, metric))).toEqual(['l', 'l', 'kg', 'kg']);
  });

  test('whatever a feed says reads as the same again', () => {
    const given = fc.record({
      feed: fc.option(fc.constantFrom(...feeds)),
      amount: fc.option(fc.record({ amount: fc.integer({ min: 0, max: 99_999 }).map((cents) => cents / 100), unit: fc.option(fc.constantFrom(...amountUnits)) })),
    });
    fc.assert(fc.property(given, (one) => {
      expect(readFeed(feedText(one), plainSetting)).toEqual(one);
    }));
  });
});

describe('boxes as typed', () => {
  test.each([
    ['2m', [[2, 'medium']]], ['1 d', [[1, 'deep']]], ['s', [[1, 'shallow']]], ['2m 1s', [[2, 'medium'], [1, 'shallow']]], ['2m+1d', [[2, 'medium'], [1, 'deep']]], ['3 medium', [[3, 'medium']]],
  ] as const)('"%s"', (typed, expected) => {
    expect(readSupers(typed, plainSetting)?.map(({ count, box }) => [count, box])).toEqual(expected);
  });

  test.each(['2', '0m', '2x', 'm m', '2m 3m', '-1m', '1.5m', '200m', '2 3m'])('"%s" is not understood', (typed) => {
    expect(readSupers(typed, plainSetting)).toBeNull();
  });

  test('whatever a count says reads as the same again', () => {
    const supers = fc.uniqueArray(fc.record({ count: fc.integer({ min: 1, max: 99 }), box: fc.constantFrom(...boxes) }), { minLength: 1, selector: ({ box }) => box });
    fc.assert(fc.property(supers, (one) => {
      expect(readSupers(supersText(one), plainSetting)).toEqual(one);
    }));
  });
});

describe('weights as typed', () => {
  test.each([['45', 45, 'lb'], ['45,5', 45.5, 'lb'], ['20kg', 20, 'kg'], ['20 KG', 20, 'kg'], ['45 lbs', 45, 'lb']])('"%s"', (typed, amount, unit) => {
    expect(readWeight(typed, plainSetting)).toEqual({ amount, unit });
  });

  test('without a unit it is the book’s, and only another one is written out', () => {
    expect(readWeight('20', metric)).toEqual({ amount: 20, unit: 'kg' });
    expect(weightText({ amount: 20, unit: 'kg' }, metric)).toBe('20');
    expect(weightText({ amount: 20, unit: 'kg' }, plainSetting)).toBe('20 kg');
    expect(readCell('weight', '45 lb', metric)).toEqual({ state: 'read', value: '45 lb' });
  });

  test.each(['1,000', 'heavy', '45 oz', '', '4 5'])('"%s" is not understood', (typed) => {
    expect(readWeight(typed, plainSetting)).toBeNull();
  });

  test('a pound is 0.45359237 kg (NIST Handbook 44, appendix C)', () => {
    expect(weightIn({ amount: 100, unit: 'lb' }, 'kg')).toBe(45.36);
    expect(weightIn({ amount: 10, unit: 'kg' }, 'lb')).toBe(22.05);
  });
});
