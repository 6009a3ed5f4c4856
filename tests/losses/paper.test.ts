import { describe, expect, test } from 'vitest';
import { reviewPaper as paperContract, type PaperTable } from '#shared/contract/paper.ts';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { tableCsv } from '#core/exchange/tableCsv.ts';
import { drawCurve } from '#core/losses/paper/drawCurve.ts';
import { lossReview } from '#core/losses/lossReview.ts';
import { type ReviewFacts } from '#core/losses/reviewFacts.ts';
import { cellOnPaper, drawingHtml, sectionHtml } from '#core/losses/paper/paperText.ts';
import { paperFiles, reviewPaper } from '#core/losses/paper/reviewPaper.ts';
import { hived, lost, recorded, yards } from './recorded.ts';

function factsOf(rows: readonly Cells[], asOf: string): ReviewFacts {
  return { states: recorded(rows).states, yards, borders: defaultBorders, asOf: day(asOf), today: day(asOf) };
}
function paperOf(rows: readonly Cells[], asOf: string, season?: number) {
  const paper = reviewPaper(factsOf(rows, asOf), season, 'lost');
  expect(paperContract.parse(paper)).toEqual(paper);
  expect(JSON.stringify(paper)).not.toMatch(/NaN|Infinity|undefined/);
  for (const { columns, rows: body } of paper.sections.flatMap(({ tables }) => tables)) for (const row of body) expect(row).toHaveLength(columns.length);
  return paper;
}
const twelve = Array.from({ length: 12 }, (_, at) => hived('2024-05-01', `C${at}`, ['QY', 'LB', 'OO'][at % 3] ?? ''));
const dead = [lost('2024-11-05', 'C0'), lost('2024-12-05', 'C3'), lost('2025-01-05', 'C1'), { date: '2025-02-01', entry: 'loss', colony: 'C2', cause: 'mites; cold' }];

test('every part stands on paper with the counts of the review', () => {
  const facts = factsOf([...twelve, ...dead], '2025-06-01');
  const review = lossReview(facts, 2024, 'lost');
  const paper = paperOf([...twelve, ...dead], '2025-06-01', 2024);
  expect(paper.sections.map(({ key }) => key)).toEqual(['rates-winter', 'rates-summer', 'rates-year', 'past', 'survival-winter', 'survival-age', 'ledger', 'ended']);
  const table = (key: string) => paper.sections.flatMap(({ tables }) => tables).find((one) => one.key === key)!;
  expect(table('loss-winter').rows.at(-1)?.slice(0, 3)).toEqual(['All yards', 12, 4]);
  expect(table('account').rows.at(-1)?.at(-1)).toBe(8);
  expect(table('ended').rows).toEqual([
    ['2024-11-05', 'C0', 'QY yard', 'lost', null], ['2024-12-05', 'C3', 'QY yard', 'lost', null], ['2025-01-05', 'C1', 'LB yard', 'lost', null], ['2025-02-01', 'C2', 'OO yard', 'lost', 'mites; cold'],
  ]);
  const curve = table('survival-winter').rows.filter(([name]) => name === 'All yards');
  expect(curve.map((row) => row[1])).toEqual(review.sinceOctober.all.times);
  expect(curve.map((row) => row[2])).toEqual(['2024-11-05', '2024-12-05', '2025-01-05', '2025-02-01']);
  expect(paperFiles(paper).map(({ name }) => name)).toContain('losses-2024-account.csv');
});

describe('records with little in them', () => {
  test('an empty book has no parts, and a season without colonies none of its own', () => {
    expect(paperOf([], '2025-06-01').sections).toEqual([]);
    expect(paperOf([hived('2024-05-01', 'A'), { date: '2024-06-01', entry: 'sale', colony: 'A' }], '2026-06-01', 2025).sections.map(({ key }) => key)).toEqual(['survival-age', 'ledger']);
  });
  test('one colony, lost', () => {
    const paper = paperOf([hived('2024-05-01', 'A'), lost('2024-12-01', 'A')], '2025-06-01', 2024);
    expect(paper.sections[0]?.tables[0]?.rows).toContainEqual(['QY yard', 1, 1, 1, expect.closeTo(0.2065, 3), 1, 'Wilson']);
    // A yard with nothing at risk has no count of lost and no rate.
    expect(paper.sections[0]?.tables[0]?.rows).toContainEqual(['LB yard', 0, null, null, null, null, '']);
  });
});

test('a curve is drawn no further than it was watched, its band within the picture', () => {
  const { sinceOctober } = lossReview(factsOf([...twelve, ...dead.slice(0, 1)], '2024-11-20'), 2024, 'lost');
  const { marks } = drawCurve('Alive', [{ name: 'All yards', curve: sinceOctober.all }], day('2024-10-01'));
  const numbers = marks.flatMap((mark) => (mark.tag === 'path' && ['band', 'line'].includes(mark.look) ? [...mark.d.matchAll(/H([\d.]+)/g)].map(([, x]) => Number(x)) : []));
  // 51 of 182 days over 456 pixels from 44.
  expect(Math.max(...numbers.filter((x) => x !== 534))).toBeLessThanOrEqual(44 + (51 / 182) * 456 + 0.1);
  expect(marks.filter((mark) => mark.tag === 'text' && mark.text === '0').length).toBe(1);
});

test('a table as CSV: what is not known is empty, quotes double, and nothing is a formula', () => {
  const table: PaperTable = {
    key: 'k', title: 't', totals: false, onPaper: true,
    columns: [{ label: 'Yard', unit: 'text' }, { label: 'Rate, share', unit: 'share' }],
    rows: [['=1+1', 1 / 3], ['a "b", c', null], ['-', 0], ['+49', 1]],
  };
  expect(tableCsv(table)).toBe('Yard,"Rate, share"\n\'=1+1,0.333333\n"a ""b"", c",\n\'-,0\n\'+49,1\n');
  expect(cellOnPaper(null, table.columns[1]!)).toBe('–');
  expect(cellOnPaper(1 / 3, table.columns[1]!)).toBe('33 %');
});

test('names cannot break out of the page', () => {
  const evil = '<script>"&';
  const html = sectionHtml({ key: 'k', title: evil, sentences: [evil], drawings: [{ name: evil, width: 1, height: 1, marks: [{ tag: 'text', x: 0, y: 0, text: evil, anchor: 'start', look: 'label' }] }], tables: [{ key: 'k', title: evil, totals: false, onPaper: true, columns: [{ label: evil, unit: 'text' }], rows: [[evil]] }], notes: [evil] });
  expect(html).not.toContain('<script>');
  expect(html.match(/&lt;script&gt;&quot;&amp;/g)).toHaveLength(7);
  expect(drawingHtml({ name: 'n', width: 2, height: 3, marks: [{ tag: 'circle', cx: 1, cy: 1, r: 1, look: 'dot' }] })).toContain('<circle class="dot" cx="1" cy="1" r="1"/>');
});
