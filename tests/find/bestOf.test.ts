import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestOf } from '#core/find/bestOf.ts';
import { matchRank } from '#core/find/matchRank.ts';

test('the best of all are the first of all sorted', () => {
  fc.assert(fc.property(fc.array(fc.record({ rank: fc.integer({ min: 0, max: 5 }), id: fc.nat() })), fc.integer({ min: 1, max: 12 }), (items, limit) => {
    const compare = (a: { rank: number }, b: { rank: number }) => a.rank - b.rank;
    expect(bestOf(items, limit, compare)).toEqual({ rows: items.toSorted(compare).slice(0, limit), total: items.length });
  }));
});

test('a name fits best when it is what was typed, then when it begins with it, then by its words', () => {
  expect(matchRank('lb-05', ['lb-05'])).toBe(0);
  expect(matchRank('lb-05', ['lb'])).toBe(1);
  expect(matchRank('lb-05', ['05'])).toBe(2);
  expect(matchRank('larch bend', ['ben', 'lar'])).toBe(2);
  expect(matchRank('larch bend', ['end'])).toBe(3);
  expect(matchRank('larch bend', ['larch', 'mill'])).toBeNull();
});
