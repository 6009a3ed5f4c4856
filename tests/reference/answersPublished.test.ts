import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { answerSheets } from '#core/losses/answers/answerSheets.ts';
import { hived, recorded, yards } from '#tests/losses/recorded.ts';

/** The answers of a record, by sheet and row; the cell of the given column. */
function answers(rows: readonly Cells[], asOf: string, season: number, quarter: { year: number; quarter: 1 | 2 | 3 | 4 } = { year: season, quarter: 1 }) {
  const { states, entries } = recorded(rows.toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1)));
  const requeens = entries.filter(({ kind }) => kind === 'requeen');
  const { sheets } = answerSheets({ states, yards, borders: defaultBorders, requeens, asOf: day(asOf), today: day(asOf) }, season, quarter);
  return (sheet: string, row: string, column = 0) => sheets.find(({ key }) => key === sheet)?.rows.find(({ key }) => key === row)?.cells[column];
}
const many = (count: number, row: (at: number) => Cells) => Array.from({ length: count }, (_, at) => row(at + 1));
const opening = (date: string, count: number) => many(count, (at) => hived(date, `C${at}`, 'QY', { origin: 'opening' }));

// Turnover of a yard: 100 on 1 October, 20 split and bought, 5 sold, 85 on 1 April: at risk 115, lost 30, 26.1 %; the same
// when 3 of the 30 were united. Arithmetic on the rule of vanEngelsdorp et al. 2013 (from memory; consistent with Spleen
// et al. 2013, read) and on the treatment of united colonies in an interview of 2020 (read).
test('a winter by the turnover rule, united colonies among the lost', () => {
  const rows = [
    ...opening('2025-09-01', 100),
    ...many(12, (at) => ({ date: '2026-02-01', entry: 'split', colony: `C${at}`, new_colony: `S${at}`, queen: 'stays' })),
    ...many(8, (at) => hived('2026-03-01', `P${at}`)),
    ...many(5, (at) => ({ date: '2026-03-02', entry: 'sale', colony: `C${90 + at}` })),
    ...many(27, (at) => ({ date: '2026-03-10', entry: 'loss', colony: `C${20 + at}` })),
    ...many(3, (at) => ({ date: '2026-03-11', entry: 'combine', colony: `C${60 + at}`, into: 'C1' })),
  ];
  const at = answers(rows, '2026-06-01', 2025);
  const winter = (row: string) => at('turnover', row, 1)?.value;
  expect(['start', 'splits', 'purchased', 'sold', 'combined', 'end', 'atRisk', 'lost', 'dead'].map(winter)).toEqual([100, 12, 8, 5, 3, 85, 115, 30, 27]);
  expect(at('turnover', 'rate', 1)?.text).toMatch(/^30 of 115, 26\.1 % \(95 % range 19 to 35\)$/);
});

// COLOSS 2018/19: 738,233 wintered, 79,146 dead or empty, 29,912 queen problems, 13,895 disaster, 16.7 % (Gray et al. 2020,
// read), here in thousandths: 738 wintered, 79, 30 and 14.
test('wintering in three parts, published totals in thousandths', () => {
  const gone = (from: number, count: number, cause: string) => many(count, (at) => ({ date: '2019-01-15', entry: 'loss', colony: `C${from + at}`, cause }));
  const at = answers([...opening('2018-09-01', 738), ...gone(0, 79, 'starvation'), ...gone(100, 30, 'queen failure'), ...gone(200, 14, 'flood')], '2019-06-01', 2018);
  expect(['wintered', 'dead', 'queen', 'disaster', 'lost'].map((row) => at('wintering', row)?.value)).toEqual([738, 79, 30, 14, 123]);
  expect(at('wintering', 'rate')?.text).toContain('123 of 738, 16.7 %');
});

// NASS, Honey Bee Colonies, US, January to March 2020 (release of 2 August 2021, read), in thousands: 2,876 on the first
// day, 415 lost (14 %), 511 added, 153 renovated (5 %); rolled forward 2,972, as published for 1 April.
describe('a quarter, published totals in thousands', () => {
  const at = answers(
    [
      ...opening('2019-12-01', 2876),
      ...many(511, (one) => hived('2020-02-01', `P${one}`)),
      ...many(415, (one) => ({ date: '2020-02-10', entry: 'loss', colony: `C${one}` })),
      ...many(153, (one) => ({ date: '2020-03-01', entry: 'requeen', colony: `C${1000 + one}` })),
      // Requeened and lost: not renovated. Both lost and requeened on one colony stay one.
      { date: '2020-01-20', entry: 'requeen', colony: 'C5' },
      { date: '2020-03-15', entry: 'requeen', colony: 'C1001' },
    ],
    '2020-06-01', 2019, { year: 2020, quarter: 1 },
  );
  test('counts', () => expect(['firstDay', 'maximum', 'lost', 'added', 'renovated', 'lastDay'].map((row) => at('quarter', row)?.value)).toEqual([2876, 2876, 415, 511, 153, 2972]));
  test('per cent as printed', () => {
    expect(at('quarter', 'lostPercent')?.text).toMatch(/^14 printed; 415 of 2876, 14\.4 %/);
    expect(at('quarter', 'renovatedPercent')?.text).toMatch(/^5 printed/);
  });
});
