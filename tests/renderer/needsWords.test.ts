import { expect, test } from 'vitest';
import type { YardId } from '#shared/brands.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { needsPages, yardInAddress } from '#renderer/parts/needsPages.ts';
import { pageLinks } from '#renderer/screens/needs/pageLinks.ts';
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

test('a line leads to its own yard on the page of its act, or to each of its yards; more than six are opened there', () => {
  const yards = (count: number) => Array.from({ length: count }, (_, at) => ({ id: (at + 1) as YardId, code: `Y${at + 1}`, name: `Yard ${at + 1}`, colonies: 1, whole: false }));
  const of = (page: string | null, count: number) => pageLinks({ page, act: 'Count mites', yards: yards(count) });
  expect(of('/needs/mites', 1)).toEqual({ name: null, links: [{ at: '/needs/mites/1', text: 'Mites', label: 'Mites: Count mites' }] });
  expect(of('/needs/mites', 2)).toEqual({ name: 'Mites', links: [{ at: '/needs/mites/1', text: 'Y1', label: 'Y1 Yard 1, Mites: Count mites' }, { at: '/needs/mites/2', text: 'Y2', label: 'Y2 Yard 2, Mites: Count mites' }] });
  expect(of('/needs/stores', 9)?.links.map(({ at, text }) => [at, text]).slice(5)).toEqual([['/needs/stores/6', 'Y6'], ['/needs/stores', 'and 3 more']]);
  // Other pages know of no yard, a page that is not there is not led to, and some lines have none.
  expect(of('/orders', 0)?.links.map(({ at }) => at)).toEqual(['/orders']);
  expect(of('/stock', 3)?.links.map(({ at }) => at)).toEqual(['/stock']);
  expect([of('/needs/weather', 1), of(null, 1)]).toEqual([null, null]);
  expect([yardInAddress(undefined), yardInAddress('3'), yardInAddress('0'), yardInAddress('QY')]).toEqual([null, 3, null, null]);
  for (const { page } of needRules) if (page !== undefined) expect(page.startsWith('/needs') ? needsPages.map(({ at }) => at) : ['/stock', '/orders'], page).toContain(page);
});
