import { expect, test } from 'vitest';
import type { CurveSet, LedgerRow, LossReview, LossRow } from '#shared/contract/losses.ts';
import { noColonies, northSlope, otherYards } from '../charts/sampleCurves.ts';
import { cameTo, usedColumns, wentFrom } from '../../renderer/screens/losses/ledgerColumns.ts';
import { endedIn, isAbove, pastRates, rangeOf, ratesOf } from '../../renderer/screens/losses/lossChoice.ts';
import { originOf, survivalLines, worstYard } from '../../renderer/screens/losses/survivalChoice.ts';

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

test('a yard’s ended colonies are found by its code or its name', () => {
  const ended = [{ yard: 'QY' }, { yard: 'Quarry' }, { yard: 'NS' }];
  const part = { yards: [{ code: 'QY', name: 'Quarry' }], ended } as unknown as LossReview;
  expect(endedIn(part, 'QY')).toHaveLength(2);
  expect(endedIn(part, 'all')).toHaveLength(3);
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

const set: CurveSet = {
  axis: 'days since 1 October 2025',
  all: otherYards,
  byYard: [
    { yard: 'QY', yardName: 'Quarry', curve: otherYards },
    { yard: 'NS', yardName: 'North Slope', curve: northSlope },
    { yard: 'LB', yardName: 'Larch Bend', curve: noColonies },
  ],
  sentence: '',
};

test('the yard with the fewest left alive is shown beside all', () => {
  expect(worstYard(set)).toBe('NS');
  expect(worstYard({ ...set, byYard: set.byYard.slice(1, 2) })).toBeNull();
  expect(worstYard({ ...set, byYard: set.byYard.map((yard) => ({ ...yard, curve: { ...yard.curve, colonies: 4 } })) })).toBeNull();
});

test('a yard keeps its place in the series whatever else is shown', () => {
  expect(survivalLines(set, new Set(['NS']), ['QY', 'NS', 'LB']).map(({ label, place }) => [label, place])).toEqual([['All yards', 0], ['North Slope', 2]]);
  expect(survivalLines(set, new Set(['QY', 'NS']), ['QY', 'NS', 'LB']).at(-1)?.place).toBe(2);
});

test('the axis names the day it counts from', () => {
  expect(originOf('days since 1 October 2025')).toBe('2025-10-01');
  expect(originOf('days since 15\u00a0September 2024')).toBe('2024-09-15');
  expect(originOf('days since the colony’s start')).toBeNull();
});
