import { expect, test } from 'vitest';
import { loadLines, tools, treatmentItem } from '#shared/loadWords.ts';

test('things are counted in words that fit their number, whoever wrote them down', () => {
  expect(loadLines([{ item: 'boxes', count: 1 }])).toEqual(['1 box']);
  expect(loadLines([{ item: 'box', count: 2 }, { item: 'boxes', count: 1 }])).toEqual(['3 boxes']);
  expect(loadLines([{ item: '3 lb packages', count: 1 }, { item: 'fence posts', count: 3 }])).toEqual(['1 3 lb package', '3 fence posts']);
  expect(loadLines([{ item: 'gal of heavy syrup (2:1)', count: 2.5 }, { item: 'feeder of syrup (1:1)', count: 2 }, { item: 'block of fondant', count: 1 }])).toEqual(['2.5 gal of heavy syrup (2:1)', '2 feeders of syrup (1:1)', '1 block of fondant']);
  // As plans of an earlier version say it.
  expect(loadLines([{ item: 'gal heavy syrup (2:1)', count: 4 }])).toEqual(['4 gal heavy syrup (2:1)']);
});

test('boxes stand first, then feed, queens, treatments by their ingredient and without a dose, other things, tools once however many yards', () => {
  const lines = loadLines([
    { item: tools.washKit, count: 3 }, { item: 'mouse guard', count: 16 }, { item: treatmentItem(['oxalic acid', 'thymol']), count: 12 }, { item: 'mated queen', count: 1 }, { item: 'block of fondant', count: 3 },
    { item: 'medium super with combs', count: 4 }, { item: tools.escape, count: 2 }, { item: treatmentItem([]), count: 1 },
  ]);
  expect(lines).toEqual([
    '4 medium supers with combs', '3 blocks of fondant', '1 mated queen', 'mite treatment for 12\u00a0colonies: by the record fits oxalic acid or thymol', 'mite treatment for 1\u00a0colony: its ingredient chosen on the page of mites', '16 mouse guards', 'mite wash kit',
    'bee escape or blower',
  ]);
});
