import { expect, test } from 'vitest';
import type { AnswerSheet } from '#shared/contract/answers.ts';
import { answerSheets as answersContract } from '#shared/contract/answers.ts';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { answerSheets } from '#core/losses/answers/answerSheets.ts';
import { hived, lost, recorded, yards } from './recorded.ts';

function answers(rows: readonly Cells[], asOf: string, season?: number, quarter?: { year: number; quarter: 1 | 2 | 3 | 4 }) {
  const { states, entries } = recorded(rows);
  const found = answerSheets({ states, yards, borders: defaultBorders, requeens: entries.filter(({ kind }) => kind === 'requeen'), asOf: day(asOf), today: day(asOf) }, season, quarter);
  expect(answersContract.parse(found)).toEqual(found);
  expect(JSON.stringify(found)).not.toMatch(/NaN|Infinity|undefined/);
  return found;
}
const cells = (sheet: AnswerSheet | undefined, row: string) => sheet?.rows.find(({ key }) => key === row)?.cells.map(({ value, text, why }) => value ?? (why === null ? text : `? ${why}`));

test('a book without colonies knows nothing and says so, never 0', () => {
  const { sheets, seasons } = answers([], '2026-05-01');
  expect(seasons).toEqual([]);
  expect(sheets.flatMap(({ rows }) => rows.flatMap((row) => row.cells)).map(({ value }) => value)).toEqual(sheets.flatMap(({ rows }) => rows.flatMap((row) => row.cells)).map(() => null));
  expect(cells(sheets[1], 'wintered')).toEqual(['? No colony is in the book.']);
});

test('a season before the book, one after its last record, and one that has not begun', () => {
  const rows = [hived('2024-05-01', 'A'), hived('2024-05-01', 'B'), { date: '2024-09-01', entry: 'inspection', colony: 'A' }];
  expect(cells(answers(rows, '2026-06-01', 2020).sheets[0], 'start')).toEqual(Array.from({ length: 3 }, () => '? The book begins on 1 May 2024.'));
  expect(cells(answers(rows, '2026-06-01', 2024).sheets[0], 'start')?.[0]).toBe('? The book begins on 1 May 2024; what stood on 1 April 2024 it does not know.');
  expect(cells(answers(rows, '2026-06-01', 2024).sheets[1], 'wintered')).toEqual(['? Nothing is recorded after 1 September 2024.']);
  expect(cells(answers(rows, '2026-06-01', 2030).sheets[0], 'lost')).toEqual(Array.from({ length: 3 }, () => '? It has not begun.'));
  expect(cells(answers(rows, '2026-06-01', 2020, { year: 2019, quarter: 4 }).sheets[2], 'lost')).toEqual(['? The book begins on 1 May 2024.']);
});

test('all sold before winter: nothing wintered, no rate', () => {
  const { sheets } = answers([hived('2024-03-01', 'A'), hived('2024-03-01', 'B'), { date: '2024-08-01', entry: 'sale', colony: 'A' }, { date: '2024-08-02', entry: 'gift', colony: 'B' }], '2025-06-01', 2024);
  expect(cells(sheets[0], 'atRisk')).toEqual([0, 0, 0]);
  expect(cells(sheets[0], 'rate')).toEqual(Array.from({ length: 3 }, () => '? No colony was at risk.'));
  expect(cells(sheets[1], 'wintered')).toEqual([0]);
  expect(cells(sheets[1], 'rate')).toEqual(['? No colony was wintered.']);
  expect(cells(answers([hived('2024-05-01', 'A'), lost('2024-06-01', 'A')], '2025-06-01', 2024, { year: 2024, quarter: 3 }).sheets[2], 'lostPercent')).toEqual(['? No colony stood there on the first day, so there is no per cent.']);
});

test('one colony, lost in a running winter: so far, with its wide range', () => {
  const { sheets } = answers([hived('2025-03-01', 'A', 'QY', { queen_year: '2025' }), lost('2025-12-20', 'A')], '2026-01-15', 2025, { year: 2026, quarter: 1 });
  expect(sheets[0]?.columns).toEqual(['Summer', 'Winter, so far', 'Year, so far']);
  expect(cells(sheets[0], 'end')).toEqual([1, 0, 0]);
  expect(cells(sheets[1], 'rate')).toEqual(['1 of 1, 100.0 % (95 % range 21 to 100)']);
  expect(cells(sheets[1], 'young')).toEqual([1]);
  expect(sheets[2]?.when).toContain('so far to 15 January 2026');
});

test('causes part the losses, queens their age, yards their own; sold and united stay among the wintered', () => {
  const rows = [
    ...['A', 'B', 'C', 'D', 'E'].map((label) => hived('2024-03-01', label, 'QY', { queen_year: label < 'C' ? '2024' : '2023' })),
    hived('2024-03-02', 'F', 'LB'),
    { date: '2024-06-01', entry: 'requeen', colony: 'E', queen_year: '2024' },
    { date: '2024-11-01', entry: 'sale', colony: 'D' },
    { date: '2024-12-01', entry: 'combine', colony: 'C', into: 'A' },
    { date: '2025-01-01', entry: 'loss', colony: 'A', cause: 'queen failure; starvation' },
    { date: '2025-01-02', entry: 'loss', colony: 'B', cause: 'bear or vandal; queen failure' },
    { date: '2025-01-03', entry: 'absconded', colony: 'F' },
  ];
  const { sheets } = answers(rows, '2025-06-01', 2024, { year: 2024, quarter: 2 });
  const [, wintering, quarter] = sheets;
  expect(wintering?.columns).toEqual(['All', 'QY yard', 'LB yard']);
  const table = Object.fromEntries((wintering?.rows ?? []).map(({ key }) => [key, cells(wintering, key)]));
  expect(table).toMatchObject({ wintered: [6, 5, 1], dead: [1, 0, 1], queen: [1, 1, 0], disaster: [1, 1, 0], lost: [3, 2, 1], united: [1, 1, 0], left: [1, 1, 0], young: [3, 3, 0], older: [2, 2, 0], ageUnknown: [1, 0, 1] });
  expect(wintering?.remarks.join(' ')).toContain('2 losses name queen failure beside other causes');
  expect(cells(quarter, 'renovated')).toEqual([1]);
  expect(cells(quarter, 'firstDay')).toEqual([6]);
});

test('more lost in a quarter than stood there on its first day has no share', () => {
  const rows = [hived('2024-03-01', 'A'), hived('2024-04-02', 'B'), hived('2024-04-02', 'C'), lost('2024-05-01', 'B'), lost('2024-05-02', 'C')];
  expect(cells(answers(rows, '2024-08-01', 2024, { year: 2024, quarter: 2 }).sheets[2], 'lostPercent')).toEqual(['200 printed; 2 for 1 on the first day']);
});

test('colonies taken in as already there count from the first day, and that is said', () => {
  const { sheets } = answers([hived('2024-05-01', 'A', 'QY', { origin: 'opening' }), hived('2024-05-01', 'B', 'QY', { origin: 'opening' }), lost('2024-12-01', 'B')], '2025-06-01', 2024, { year: 2024, quarter: 2 });
  expect(cells(sheets[0], 'start')).toEqual([2, 2, 2]);
  expect(sheets[0]?.remarks.join(' ')).toContain('2 colonies were taken into the book as already there after 1 April 2024');
  expect(cells(sheets[2], 'firstDay')).toEqual([2]);
});
