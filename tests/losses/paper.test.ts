import { describe, expect, test } from 'vitest';
import { reviewPaper as paperContract, type PaperCell, type PaperTable, type ReviewPaper } from '#shared/contract/paper.ts';
import { day } from '#shared/days.ts';
import { paperLayout } from '#shared/paperLayout.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { tableCsv } from '#core/exchange/tableCsv.ts';
import { drawCurve, mostCurves } from '#core/losses/paper/drawCurve.ts';
import { field } from '#core/losses/paper/drawFrame.ts';
import { drawIncidence } from '#core/losses/paper/drawIncidence.ts';
import { drawIntervals } from '#core/losses/paper/drawIntervals.ts';
import { keepNew, lossAnswers, type LossAnswers } from '#core/losses/lossAnswers.ts';
import { yardTreatmentsOf } from '#core/losses/winterCovariates.ts';
import { cellOnPaper, drawingHtml, sectionHtml } from '#core/losses/paper/paperText.ts';
import { paperFiles, reviewPaper, type PaperAsked } from '#core/losses/paper/reviewPaper.ts';
import { reviewContents } from '../../renderer/screens/losses/reviewContents.ts';
import { hived, lost, recorded, yards } from './recorded.ts';

function answersOf(rows: readonly Cells[], asOf: string): LossAnswers {
  const { states, entries } = recorded(rows);
  return lossAnswers({ states, byId: new Map(states.map((state) => [state.id, state])), yards, borders: defaultBorders, asOf: day(asOf), today: day(asOf), rules: new Map(), massUnit: 'lb', yardTreatments: yardTreatmentsOf(entries) }, keepNew());
}
const partsOf = (paper: ReviewPaper) => paper.sections.flatMap(({ parts }) => parts);
const tablesOf = (paper: ReviewPaper) => partsOf(paper).flatMap(({ tables }) => tables);
function paperOf(rows: readonly Cells[], asOf: string, season?: number, more: Partial<PaperAsked> = {}) {
  const paper = reviewPaper({ answers: answersOf(rows, asOf), united: 'lost', by: null, notes: null, ...more }, season);
  expect(paperContract.parse(paper)).toEqual(paper);
  expect(JSON.stringify(paper)).not.toMatch(/NaN|Infinity|undefined/);
  for (const { key, columns, rows: body } of tablesOf(paper)) for (const row of body) expect(row, key).toHaveLength(columns.length);
  for (const { key, columns } of tablesOf(paper)) expect(new Set(columns.map(({ label, only }) => `${label} ${only === 'paper'}`)).size, key).toBe(columns.length);
  const keys = partsOf(paper).map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  const names = paperFiles(paper).map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  return paper;
}
/** A table as its file has it, row by row under the heads of its columns. */
function fileOf(paper: ReviewPaper, key: string): Record<string, PaperCell>[] {
  const found = tablesOf(paper).find((one) => one.key === key);
  if (found === undefined) throw new Error(`no table ${key}`);
  return found.rows.map((row) => Object.fromEntries(found.columns.flatMap(({ label, only }, at) => (only === 'paper' ? [] : [[label, row[at] ?? null]]))));
}
const twelve = Array.from({ length: 12 }, (_, at) => hived('2024-05-01', `C${at}`, ['QY', 'LB', 'OO'][at % 3] ?? ''));
const dead = [lost('2024-11-05', 'C0'), lost('2024-12-05', 'C3'), lost('2025-01-05', 'C1'), { date: '2025-02-01', entry: 'loss', colony: 'C2', cause: 'mites; cold' }];

test('every section stands on paper with the counts of the review', () => {
  const answers = answersOf([...twelve, ...dead], '2025-06-01');
  const paper = paperOf([...twelve, ...dead], '2025-06-01', 2024, { notes: { text: 'Feed earlier.\n\nLess drone comb.', before: { name: '2023–24', text: 'Wrap them.' } } });
  expect(paper.sections.map(({ number, title }) => [number, title])).toEqual(reviewContents.map(({ title }, at) => [at + 1, title]));
  expect(fileOf(paper, 'loss-winter').at(-1)).toMatchObject({ Yard: 'All yards', 'At risk': 12, Lost: 4 });
  expect(fileOf(paper, 'account').at(-1)).toMatchObject({ Yard: 'All yards', Packages: 12, 'Lost, winter': 4, End: 8 });
  expect(fileOf(paper, 'ended').map((row) => Object.values(row))).toEqual([
    ['2024-11-05', 'C0', 'QY yard', 'lost', null], ['2024-12-05', 'C3', 'QY yard', 'lost', null], ['2025-01-05', 'C1', 'LB yard', 'lost', null], ['2025-02-01', 'C2', 'OO yard', 'lost', 'mites; cold'],
  ]);
  const curve = fileOf(paper, 'survival-yard').filter(({ Group }) => Group === 'All together');
  expect(curve.map(({ Days }) => Days)).toEqual(answers.survival({ season: 2024, axis: 'winter', by: 'yard', united: 'alive' }).all.curve?.times);
  expect(curve.map(({ Day }) => Day)).toEqual(['2024-11-05', '2024-12-05', '2025-01-05', '2025-02-01']);
  expect(fileOf(paper, 'causes').map(({ Cause, 'Named for': named, Lost }) => [Cause, named, Lost])).toEqual([['cold', 1, 4], ['mites', 1, 4], ['unknown or not recorded', 3, 4]]);
  expect(partsOf(paper).filter(({ key }) => key.startsWith('notes')).map(({ title, sentences }) => [title, sentences])).toEqual([['What you wrote after 2023–24', ['Wrap them.']], ['For the next year', ['Feed earlier.', 'Less drone comb.']]]);
  expect(paperFiles(paper).map(({ name }) => name)).toContain('losses-2024-account.csv');
});

test('what has too few for curves is named, and a grouping that is asked for is there all the same', () => {
  const keys = (paper: ReviewPaper) => partsOf(paper).map(({ key }) => key).filter((key) => key.startsWith('survival'));
  const usual = paperOf([...twelve, ...dead], '2025-06-01', 2024);
  expect(keys(usual)).toEqual(['survival-yard', 'survival-age']);
  expect(partsOf(usual).find(({ key }) => key === 'survival-yard')?.notes.at(-1)).toBe('Too few for curves by age of the queen, by mites in late summer, by treatment before winter.');
  expect(keys(paperOf([...twelve, ...dead], '2025-06-01', 2024, { by: 'source' }))).toEqual(['survival-yard', 'survival-source', 'survival-age']);
  const aged = Array.from({ length: 24 }, (_, at) => hived('2024-05-01', `C${at}`, ['QY', 'LB', 'OO'][at % 3] ?? '', { queen_year: at < 12 ? '2024' : '2022' }));
  expect(keys(paperOf([...aged, ...dead], '2025-06-01', 2024))).toContain('survival-queenAge');
});

describe('records with little in them', () => {
  test('an empty book has no sections, and a season without colonies only says so', () => {
    expect(paperOf([], '2025-06-01').sections).toEqual([]);
    const bare = paperOf([hived('2024-05-01', 'A'), { date: '2024-06-01', entry: 'sale', colony: 'A' }], '2026-06-01', 2025);
    expect(bare.sections.map(({ key }) => key)).toEqual(['account', 'losses', 'survival', 'factors', 'causes', 'say']);
    expect(JSON.stringify(bare)).not.toMatch(/0 of 0/);
  });
  test('one colony, lost', () => {
    const paper = paperOf([hived('2024-05-01', 'A'), lost('2024-12-01', 'A')], '2025-06-01', 2024);
    expect(fileOf(paper, 'loss-winter')).toContainEqual({ Yard: 'QY yard', 'At risk': 1, Lost: 1, Rate: 1, '95 % range from': expect.closeTo(0.2065, 3), '95 % range to': 1, 'Range is': 'Wilson' });
    // A yard with nothing at risk has no count of lost and no rate.
    expect(fileOf(paper, 'loss-winter')).toContainEqual({ Yard: 'LB yard', 'At risk': 0, Lost: null, Rate: null, '95 % range from': null, '95 % range to': null, 'Range is': '' });
    expect(JSON.stringify(paper)).toMatch(/too few|Too few|one yard/);
  });
});

test('a curve is drawn no further than it was watched, its band within the picture', () => {
  const { all } = answersOf([...twelve, ...dead.slice(0, 1)], '2024-11-20').survival({ season: 2024, axis: 'winter', by: 'none', united: 'alive' });
  const { marks } = drawCurve('Alive', [{ name: 'All yards', curve: all.curve! }], day('2024-10-01'));
  const ends = marks.flatMap((mark) => (mark.tag === 'path' && ['band', 'line'].includes(mark.look) ? [...mark.d.matchAll(/H([\d.]+)/g)].map(([, x]) => Number(x)) : []));
  const { left, right } = field;
  // 51 of 182 days.
  expect(Math.max(...ends)).toBeLessThanOrEqual(left + (51 / 182) * (right - left) + 0.1);
  expect(marks.filter((mark) => mark.tag === 'text' && mark.text === '0').length).toBe(1);
});

test('every mark stays within its picture, whatever the names and the fates', () => {
  const long = 'A yard with a name that does not fit beside any picture';
  const sold = Array.from({ length: 3 }, (_, at) => ({ date: '2024-12-20', entry: 'sale', colony: `C${at + 4}` }));
  const answers = answersOf([...twelve, ...dead, ...sold], '2025-06-01');
  const found = answers.survival({ season: 2024, axis: 'winter', by: 'yard', united: 'alive' });
  const curves = Array.from({ length: mostCurves }, () => ({ name: long, curve: found.all.curve! }));
  const { incidence } = found;
  const fates = incidence!.fates.filter(({ colonies }) => colonies > 0).map((one) => ({ ...one, name: one.fate }));
  expect(fates.map(({ fate, colonies }) => [fate, colonies])).toEqual([['lost', 4], ['sold', 3]]);
  const drawings = [drawCurve('c', curves, day('2024-10-01')), drawIncidence('i', fates, incidence!.times, day('2024-10-01'), 182), drawIntervals('r', [{ label: long, counts: '1 of 2', rate: 0.5, interval: [0.1, 0.9], all: false }])];
  for (const { width, height, marks } of drawings) {
    for (const mark of marks) {
      if (mark.tag !== 'text') continue;
      // Letters of 12 px are no wider than half of that and a little on the whole.
      const size = mark.text.length * 6.3;
      const from = mark.anchor === 'end' ? mark.x - size : mark.anchor === 'middle' ? mark.x - size / 2 : mark.x;
      expect(from, mark.text).toBeGreaterThanOrEqual(-8);
      expect(from + size, mark.text).toBeLessThanOrEqual(width + 6);
      expect(mark.y).toBeLessThanOrEqual(height);
    }
  }
  const dashes = drawings[0]!.marks.flatMap(({ look }) => (look.startsWith('line') ? [look] : []));
  expect(new Set(dashes).size).toBe(mostCurves);
});

test('a table as CSV: what is not known is empty, quotes double, and nothing is a formula', () => {
  const table: PaperTable = {
    key: 'k', title: 't', totals: false, onPaper: true,
    columns: [{ label: 'Yard', unit: 'text' }, { label: 'Rate, share', unit: 'share' }],
    rows: [['=1+1', 1 / 3], ['a "b", c', null], ['-', 0], ['+49', 1]],
  };
  const both: PaperTable = { ...table, columns: [{ label: 'Lost', unit: 'figure', only: 'paper' }, { label: 'At risk', unit: 'count', only: 'file' }], rows: [['1 of 2', 2]] };
  expect(tableCsv(both)).toBe('At risk\n2\n');
  expect(paperLayout(both)).toMatchObject({ columns: [{ label: 'Lost' }], lines: [{ cells: ['1 of 2'] }] });
  const grouped = paperLayout({ ...table, grouped: true, rows: [['a', 1], ['a', 2], ['b', 3]] });
  expect(grouped.lines.map(({ group, cells }) => group ?? cells[0])).toEqual(['a', 1, 2, 'b', 3]);
  expect(tableCsv(table)).toBe('Yard,"Rate, share"\n\'=1+1,0.333333\n"a ""b"", c",\n\'-,0\n\'+49,1\n');
  expect(cellOnPaper(null, table.columns[1]!)).toBe('–');
  expect(cellOnPaper(1 / 3, table.columns[1]!)).toBe('33\u00a0%');
});

test('names cannot break out of the page', () => {
  const evil = '<script>"&';
  const html = sectionHtml({ key: 'k', number: 1, title: evil, parts: [{ key: 'k', title: evil, sentences: [evil], drawings: [{ name: evil, width: 1, height: 1, marks: [{ tag: 'text', x: 0, y: 0, text: evil, anchor: 'start', look: 'label' }] }], tables: [{ key: 'k', title: evil, totals: false, onPaper: true, columns: [{ label: evil, unit: 'text' }], rows: [[evil]] }], notes: [evil] }] });
  expect(html).not.toContain('<script>');
  expect(html.match(/&lt;script&gt;&quot;&amp;/g)).toHaveLength(9);
  expect(drawingHtml({ name: 'n', width: 2, height: 3, marks: [{ tag: 'circle', cx: 1, cy: 1, r: 1, look: 'dot' }] })).toContain('<circle class="dot" cx="1" cy="1" r="1"/>');
});
