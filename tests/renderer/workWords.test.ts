import { expect, test } from 'vitest';
import { hoursWords } from '#renderer/screens/work/hoursWords.ts';
import { aheadSays, fitsAsThen } from '#renderer/screens/work/workedWords.ts';
import { words } from '#renderer/screens/work/words.ts';
import type { MonthAhead } from '#shared/contract/worked.ts';
import { day } from '#shared/days.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const month = (name: string, hours: number | null, seasons: number, fits: MonthAhead['fits'] = 'open'): MonthAhead => ({
  month: name, need: hours === null ? null : { hours, range: seasons < 2 ? null : [0, 10 * hours], seasons }, driving: 2, have: 40, fits,
});

test('with few past seasons one sentence says how it was then and what that cannot tell, and no month is doubted by itself', () => {
  const year = (seasons: number, hours: readonly number[]) => hours.map((one, at) => month(`2027-${String(at + 4).padStart(2, '0')}`, one, seasons));
  expect(aheadSays(year(1, [10, 20, 30]))).toBe('If it takes what it took in the one past season, it fits in every month; how far seasons differ cannot be told from one.');
  expect(aheadSays(year(2, [10, 39, 50]))).toBe('If it takes what it took in the two past seasons, it does not fit in May and June, and fits in the other months; how far seasons differ cannot be told from two.');
  expect(aheadSays(year(1, [50, 50]))).toContain('it fits in no month');
  expect(aheadSays([...year(1, [10]), month('2028-01', null, 0, 'unknown'), month('2028-02', null, 0, 'unknown')])).toMatch(/ Of January and February no past season tells\.$/);
  expect([fitsAsThen(month('2027-04', 38, 1)), fitsAsThen(month('2027-04', 38.1, 1)), fitsAsThen(month('2027-04', null, 0))]).toEqual([true, false, false]);
});

test('with seasons enough the range decides', () => {
  expect(aheadSays([month('2027-04', 10, 4, 'fits'), month('2027-05', 30, 4), month('2027-06', 60, 4, 'short')])).toBe('It does not fit in June, and may not in May.');
  expect(aheadSays([month('2027-04', 10, 3, 'fits')])).toBe('It fits in every month, as far as past seasons tell.');
  expect(aheadSays([month('2027-04', 10, 3, 'fits'), month('2027-05', 30, 1)])).toBe('It fits in every month, as far as past seasons tell. For May there are too few seasons to say.');
});

test('days are said in words, and what is overdue is said to be', () => {
  expect(plain(hoursWords.busyDays(2, 0, '2026-11-25 20:00'))).toBe('2 days, brought in 25 November 2026, 20:00');
  expect(plain(hoursWords.busyDays(2, 1, '2026-11-25 20:00'))).toBe('2 days, 1 event not read, brought in 25 November 2026, 20:00');
  expect(plain(hoursWords.written('2026-11-25 20:00'))).toBe('Written last 25 November 2026, 20:00.');
  expect(plain(hoursWords.outCount({ visit: 2, due: 0, deadline: 1, delivery: 0 }))).toBe('Now: 2 visits, 1 last day to order.');
  expect(hoursWords.outCount({ visit: 0, due: 0, deadline: 0, delivery: 0 })).toContain('nothing that a calendar could be told');
  expect(plain(words.kept('2026-11-25 20:00'))).toBe('Kept 25 November 2026, 20:00.');
  expect(plain(words.overdueLine('Quarry', 'Round', day('2025-11-15'), day('2026-05-02'), 'No colony here has been seen since 27 September 2025.')))
    .toBe('Quarry: Round, overdue since 15 November 2025; planned for Sat 2 May 2026. No colony here has been seen since 27 September 2025.');
});
