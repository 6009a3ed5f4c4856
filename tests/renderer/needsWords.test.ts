import { expect, test } from 'vitest';
import { words } from '#renderer/screens/needs/words.ts';

test('what a need takes along: whole things are counted, what is measured is of its unit', () => {
  const taken = ([[3, 'block', 'fondant'], [1, 'block', 'fondant'], [2, 'feeder', 'syrup (1:1)'], [12.5, 'gal', 'heavy syrup (2:1)'], [19, '', 'entrance reducer or mouse guard'], [1, '', 'mite wash kit'], [1204, 'l', 'heavy syrup (2:1)']] as const).map(([count, unit, item]) => words.item({ count, unit, item }));
  expect(taken).toEqual(['3 blocks of fondant', '1 block of fondant', '2 feeders of syrup (1:1)', '12.5 gal of heavy syrup (2:1)', '19 entrance reducers or mouse guards', '1 mite wash kit', '1,204 l of heavy syrup (2:1)']);
});

test('one thing is overdue itself; of more, some are', () => {
  expect([words.sentence(1, 1, '2 h'), words.sentence(1, 0, '2 h'), words.sentence(3, 1, '2 h')]).toEqual([
    '1 thing is to be done now, and it is overdue; about 2 h of work, without the way.', '1 thing is to be done now; about 2 h of work, without the way.', '3 things are to be done now, 1 of them overdue; about 2 h of work, without the way.',
  ]);
});
