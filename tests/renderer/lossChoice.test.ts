import { expect, test } from 'vitest';
import type { LedgerRow, LossReview, LossRow } from '#shared/contract/losses.ts';
import type { SurvivalGroup } from '#shared/contract/lossSections.ts';
import { northSlope, otherYards } from '../charts/sampleCurves.ts';
import { cameTo, usedColumns, wentFrom } from '../../renderer/screens/losses/ledgerColumns.ts';
import { firstShown, isAbove, pastRates, publishedLines, publishedSpan, rangeOf, ratesOf } from '#shared/lossChoice.ts';
import { survivalLines } from '../../renderer/screens/losses/survivalLines.ts';

function rate(part: Partial<LossRow>): LossRow {
  return {
    season: 2025, period: 'winter', group: 'QY', united: 'lost', atRisk: 10, lost: 2, rate: 0.2, wilson: [0.06, 0.51], clopperPearson: [0.03, 0.56],
    quasi: null, quasiWhy: 'one yard', average: null, complete: true, ...part,
  };
}

const rows = [
  rate({ group: 'QY', rate: 0.2 }),
  rate({ group: 'LB', atRisk: 0, lost: 0, rate: null, wilson: null, clopperPearson: null }),
  rate({ group: 'NS', rate: 0.5 }),
  rate({ group: 'all', atRisk: 20, rate: 0.3, quasi: { lower: 0.1, upper: 0.6, dispersion: 1.2, units: 3, df: 2 }, quasiWhy: null }),
  rate({ group: 'NS', period: 'summer' }),
  rate({ group: 'all', season: 2024 }),
  rate({ group: 'all', season: 2023, atRisk: 0, rate: null }),
  rate({ group: 'all', united: 'takenOut' }),
];
const review = { season: 2025, united: 'lost', rates: rows } as unknown as LossReview;

test('a season’s yards stand from the highest rate down, those without a rate last, all yards apart', () => {
  const { yards, all } = ratesOf(review, 'winter');
  expect(yards.map(({ group }) => group)).toEqual(['NS', 'QY', 'LB']);
  expect(all?.atRisk).toBe(20);
});

test('past seasons have a colony at risk and the same treatment of united colonies', () => {
  expect(pastRates(review, 'winter').map(({ season }) => season)).toEqual([2025, 2024]);
});

test('the range shown allows for yards sharing their fate where that can be given', () => {
  expect(rangeOf(rows[3]!)).toEqual([0.1, 0.6]);
  expect(rangeOf(rows[0]!)).toEqual([0.06, 0.51]);
  expect(rangeOf(rows[1]!)).toBeNull();
});

test('two yards are too few to judge how much yards differ', () => {
  expect(rangeOf({ ...rows[3]!, quasi: { lower: 0, upper: 1, dispersion: 1, units: 2, df: 1 } })).toEqual([0.06, 0.51]);
});

test('a yard is marked only when its whole range lies above that of all yards', () => {
  const total = rate({ group: 'all', wilson: [0.1, 0.3] });
  expect(isAbove(rate({ wilson: [0.31, 0.8] }), total)).toBe(true);
  // One colony of eleven lost and none elsewhere: not news.
  expect(isAbove(rate({ wilson: [0.016, 0.38] }), total)).toBe(false);
  expect(isAbove(total, total)).toBe(false);
  expect(isAbove(rate({ wilson: null }), total)).toBe(false);
});

const blank: LedgerRow = {
  season: 2025, yard: 'QY', opening: 10, packages: 2, nucs: 0, swarms: 1, splits: 4, boughtColonies: 0, movedIn: 0, movedOut: 1, sold: 0, given: 0,
  combined: 0, absconded: 0, lostSummer: 0, lostWinter: 3, closing: 13, aliveOn1October: 16,
};

test('columns without an entry are left out, losses never', () => {
  const { came, went, leftOut } = usedColumns([blank]);
  expect(came).toEqual(['packages', 'swarms', 'splits']);
  expect(went).toEqual(['movedOut', 'lostSummer', 'lostWinter']);
  expect(leftOut).toEqual(['nucs', 'boughtColonies', 'movedIn', 'sold', 'given', 'combined', 'absconded']);
});

test('what came and went brings the start to the end', () => {
  expect(blank.opening + cameTo(blank) - wentFrom(blank)).toBe(blank.closing);
});

const group = (key: string, place: number, curve: SurvivalGroup['curve']): SurvivalGroup => ({ key, label: key, place, curve, why: null, colonies: curve?.colonies ?? 0, losses: curve?.losses ?? 0, median: null, mean: null, difference: null });
const groups = [group('QY', 1, otherYards), group('NS', 2, northSlope), group('LB', 3, null)];

test('of a few groups all curves are shown, of many the worst and the best', () => {
  expect(firstShown(groups)).toEqual(['QY', 'NS']);
  const many = ['A', 'B', 'C', 'D'].map((key, at) => group(key, at + 4, otherYards));
  expect(firstShown([...groups, ...many])).toEqual(['NS', 'D']);
  expect(firstShown([])).toEqual([]);
});

test('a group keeps its place in the series whatever else is shown, and one without a curve is left out', () => {
  const all = group('all', 0, otherYards);
  expect(survivalLines({ all, groups }, new Set(['NS', 'LB'])).map(({ label, place }) => [label, place])).toEqual([['All together', 0], ['NS', 2]]);
  expect(survivalLines({ all: { ...all, curve: null }, groups }, new Set())).toEqual([]);
});

test('published rates of one season, place and kind stand in one line, newest first', () => {
  const published = (season: number, period: 'winter' | 'year', rate: number, what: 'total' | 'average' = 'total') => ({ survey: 'us' as const, place: 'United States', season, period, what, rate, range: null, rangeIs: null, source: 'a report' });
  const all = [published(2012, 'winter', 0.3), published(2012, 'year', 0.45), published(2012, 'winter', 0.448, 'average'), published(2018, 'winter', 0.37)];
  expect(publishedLines(all).map(({ season, what, rates }) => [season, what, Object.keys(rates)])).toEqual([[2018, 'total', ['winter']], [2012, 'total', ['winter', 'year']], [2012, 'average', ['winter']]]);
  expect(publishedSpan(all, 'us')).toEqual([0.3, 0.37]);
  expect(publishedSpan(all, 'coloss')).toBeNull();
});
