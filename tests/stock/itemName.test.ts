import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearItems, withHead } from '#core/stock/nearItems.ts';
import { boxItems, countedAs, frameItems, itemName, itemOf, pieceStates, readItem, writeItem, type StockItem } from '#core/stock/itemName.ts';

const bare: StockItem = { item: '', frames: null, comb: null, year: null, state: null, more: [] };

describe('trade names', () => {
  test.each<[string, Partial<StockItem>]>([
    ['medium super, 8-frame', { item: 'medium super', frames: 8 }],
    ['Deep Boxes, ten frames, TO MEND', { item: 'deep box', frames: 10, state: 'to mend' }],
    ['deep frame, drawn, 2022', { item: 'deep frame', comb: 'drawn', year: 2022 }],
    ['drawn deep frames, of 2021', { item: 'deep frame', comb: 'drawn', year: 2021 }],
    ['medium frames, on foundation', { item: 'medium frame', comb: 'foundation' }],
    ['8-frame deep box', { item: 'deep box', frames: 8 }],
    ['deep box, painted Green, worn', { item: 'deep box', state: 'worn out', more: ['painted Green'] }],
    ['deep box, 2019', { item: 'deep box', more: ['2019'] }],
    ['deep frame, drawn, foundation', { item: 'deep frame', comb: 'drawn', more: ['foundation'] }],
    ['honey jar, 1 lb', { item: 'honey jar, 1 lb' }],
    ['smoker, to mend', { item: 'smoker', state: 'to mend' }],
    ['excluders', { item: 'queen excluder' }],
    ['', { item: '' }],
    ['constructor, toString', { item: 'constructor, toString' }],
  ])('%s', (typed, read) => expect(readItem(typed)).toEqual({ ...bare, ...read }));

  const more = fc.array(fc.stringMatching(/^[A-Za-z][a-z]{0,6}( [a-z0-9]{1,5})?$/).filter((word) => readItem(`deep box, ${word}`).more.length === 1 && readItem(`deep frame, ${word}`).more.length === 1), { maxLength: 2 });
  const state = fc.constantFrom(null, ...pieceStates);
  const anyItem: fc.Arbitrary<StockItem> = fc.oneof(
    fc.record({ item: fc.constantFrom(...boxItems, 'bottom board', 'queen excluder'), frames: fc.constantFrom(null, 8 as const, 10 as const), comb: fc.constant(null), year: fc.constant(null), state, more }),
    fc.record({ item: fc.constantFrom(...frameItems), frames: fc.constant(null), comb: fc.constantFrom(null, 'drawn' as const, 'foundation' as const), year: fc.option(fc.integer({ min: 1990, max: 2035 })), state, more }),
    fc.record({ item: fc.constantFrom('smoker', 'honey jar, 1 lb', 'hive tool'), frames: fc.constant(null), comb: fc.constant(null), year: fc.constant(null), state, more: fc.constant([]) }),
  );

  test('what is written is read again as the same', () => {
    fc.assert(fc.property(anyItem, (item) => {
      expect(readItem(writeItem(item))).toEqual(item);
    }));
  });

  test('whatever was typed, reading what was read of it gives the same', () => {
    fc.assert(fc.property(fc.array(fc.oneof(fc.constantFrom('deep box', 'medium frames', 'drawn', '2022', 'to mend', '8-frame', 'sound', 'worn'), fc.string({ maxLength: 8 })), { maxLength: 5 }), (parts) => {
      const once = readItem(parts.join(', '));
      // One spelling may need a second reading where a made-up name ends in several s.
      const twice = readItem(writeItem(once));
      fc.pre(readItem(once.item.split(',')[0] ?? '').item === (once.item.split(',')[0] ?? ''));
      expect(twice).toEqual(once);
    }));
  });

  test('nothing that was typed is dropped', () => {
    fc.assert(fc.property(more, (words) => {
      const name = readItem(['deep box', ...words, 'to mend'].join(', '));
      expect([name.state, name.more]).toEqual(['to mend', words]);
    }));
  });

  test('an item of the usual size is counted as the plain one', () => {
    expect([countedAs({ item: 'deep box', frames: 10 }, 10), countedAs({ item: 'deep box', frames: null }, 8), countedAs({ item: 'deep box', frames: 8 }, 10)]).toEqual(['deep box', 'deep box', 'deep box, 8-frame']);
    expect(itemOf('deep box, 8-frame')).toBe('deep box');
  });
});

test('one spelling of an item, and the trade’s other names of a part are the same part', () => {
  expect(['Deep Boxes', 'bee brushes', 'stands', 'glass', 'frames '].map(itemName)).toEqual(['deep box', 'bee brush', 'stand', 'glass', 'frame']);
  expect(['Deeps', 'medium boxes', 'Bottoms', 'queen excluders', 'excluder', 'deep frames'].map(itemName)).toEqual(['deep box', 'medium super', 'bottom board', 'queen excluder', 'queen excluder', 'deep frame']);
});

describe('items that may be misspelt', () => {
  const known = new Set(['deep box', 'deep frame', 'medium super', 'feeder', 'honey jar', 'white sugar', 'nuc box']);
  test.each([
    ['deap box', ['deep box']], ['Deap Boxes', ['deep box']], ['deep bxo', ['deep box']], ['deepbox', ['deep box']], ['box deep', ['deep box']], ['deap box, to mend', ['deep box']], ['8-frame deap box', ['deep box']],
    ['bottom bord', ['bottom board']], ['bottomboards', ['bottom board']], ['quen exluder', ['queen excluder']], ['medum super', ['medium super']], ['feedr', ['feeder']], ['hony jar, 1 lb', ['honey jar']], ['whit sugar', ['white sugar']],
    ['super', ['medium super', 'shallow super']], ['cover', ['inner cover', 'outer cover']], ['frames', ['deep frame', 'medium frame', 'shallow frame']],
  ])('“%s” may be %j', (typed, nearest) => expect(nearItems(typed, known)).toEqual(nearest));

  test.each(['deep box', 'Deep boxes', 'deep hive body', 'feeder', 'honey jar, 2 lb', 'smoker', 'hive tool', 'veil', 'wax', 'shallow frame', 'entrance reducer', 'pail', 'wheelbarrow', 'nuc box', 'frame rest', 'queen cage', ''])('“%s” is known, or like nothing that is', (typed) => expect(nearItems(typed, known)).toEqual([]));

  test('a figure in a name is a size, not a slip', () => {
    const sizes = new Set(['bucket 5 gal']);
    expect([nearItems('bucket 6 gal', sizes), nearItems('bucket 5 gla', sizes)]).toEqual([[], ['bucket 5 gal']]);
  });

  test('what else was said of it stays', () => {
    expect([withHead('Deap box, to mend', 'deep box'), withHead('hony jar,1 lb', 'honey jar'), withHead('deap box', 'deep box')]).toEqual(['deep box, to mend', 'honey jar, 1 lb', 'deep box']);
  });
});
