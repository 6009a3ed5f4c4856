import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  expectedEnd,
  faultsInCounts,
  increases,
  populationUnchanged,
  recordedLosses,
  removed,
  usLoss,
  usLossCombinedAsRemoval,
  type UnitCounts,
} from '#core/losses/lossDefinitions.ts';
import { lossRate, lossRates } from '#core/losses/lossRate.ts';

const still: UnitCounts = {
  unit: 'QY',
  start: 10,
  splits: 0,
  purchased: 0,
  swarms: 0,
  sold: 0,
  given: 0,
  combined: 0,
  dead: 2,
  queen: 1,
  disaster: 0,
  end: 7,
};

const few = fc.integer({ min: 0, max: 12 });

/** A yard whose counts balance: it starts with enough colonies for everything that leaves. */
const balanced: fc.Arbitrary<UnitCounts> = fc
  .record({ splits: few, purchased: few, swarms: few, movedIn: few, sold: few, given: few, movedOut: few, combined: few, dead: few, absconded: few, queen: few, disaster: few, left: few })
  .map(({ left, ...counts }) => {
    const leaving = counts.sold + counts.given + counts.movedOut + counts.combined + counts.dead + counts.absconded + counts.queen + counts.disaster;
    const unit = { unit: 'LB', ...counts, start: leaving + left, end: 0 };
    return Object.freeze({ ...unit, end: expectedEnd(unit) });
  });

describe('loss definitions', () => {
  test('the two treatments of united colonies differ by just those colonies', () => {
    fc.assert(
      fc.property(balanced, (unit) => {
        const lost = usLoss(unit);
        const takenOut = usLossCombinedAsRemoval(unit);
        expect(lost.lost - takenOut.lost).toBe(unit.combined);
        expect(lost.atRisk - takenOut.atRisk).toBe(unit.combined);
        expect(takenOut.lost).toBe(recordedLosses(unit));
        expect(lost.atRisk - lost.lost).toBe(unit.end);
      }),
    );
  });

  test('a move is like a purchase or a sale, and an absconded colony like a dead one', () => {
    fc.assert(
      fc.property(balanced, (unit) => {
        const { movedIn = 0, movedOut = 0, absconded = 0, ...rest } = unit;
        const plain = { ...rest, purchased: rest.purchased + movedIn, sold: rest.sold + movedOut, dead: rest.dead + absconded };
        expect(usLoss(plain)).toEqual(usLoss(unit));
        expect(usLossCombinedAsRemoval(plain)).toEqual(usLossCombinedAsRemoval(unit));
      }),
    );
  });

  test('moving colonies between two yards changes nothing in total', () => {
    const giving = { ...still, movedOut: 3, end: 4 };
    const taking = { ...still, movedIn: 3, end: 10 };
    const moved = lossRates([giving, taking]).us;
    const stayed = lossRates([still, still]).us;
    expect([moved.totalAtRisk, moved.totalLost]).toEqual([stayed.totalAtRisk, stayed.totalLost]);
  });

  test('counts that balance have no faults; others get a sentence that names the yard', () => {
    fc.assert(
      fc.property(balanced, (unit) => {
        expect(faultsInCounts(unit)).toEqual([]);
      }),
    );
    expect(faultsInCounts({ ...still, end: 8 })).toEqual([
      'QY: the counts lead to 7 colonies at the end, but 8 are given; enter what is missing, or correct the count at the end.',
    ]);
    expect(faultsInCounts({ ...still, sold: -1 })).toEqual(['QY: sold is -1; give a whole number of colonies, 0 or more.']);
  });

  test('the population counts as changed by anything but a loss', () => {
    expect(populationUnchanged({ ...still, absconded: 1 })).toBe(true);
    for (const change of [{ splits: 1 }, { purchased: 1 }, { swarms: 1 }, { movedIn: 1 }, { sold: 1 }, { given: 1 }, { movedOut: 1 }, { combined: 1 }]) {
      expect(populationUnchanged({ ...still, ...change })).toBe(false);
    }
    expect(increases(still)).toBe(0);
    expect(removed(still)).toBe(0);
  });
});

describe('lossRates', () => {
  test('total is the sum of the yards, and lies between the best and the worst yard', () => {
    fc.assert(
      fc.property(fc.array(balanced, { minLength: 1, maxLength: 8 }), (units) => {
        const { us } = lossRates(Object.freeze(units));
        expect(us.totalAtRisk).toBe(us.atRisk.reduce((sum, count) => sum + count, 0));
        expect(us.totalLost).toBe(us.lost.reduce((sum, count) => sum + count, 0));
        const { smallest, largest } = us.average;
        if (us.total.rate !== null && smallest !== null && largest !== null) {
          expect(us.total.rate).toBeGreaterThanOrEqual(smallest - 1e-12);
          expect(us.total.rate).toBeLessThanOrEqual(largest + 1e-12);
        }
      }),
    );
  });

  test('the COLOSS rule is given only while nothing moved, with its three parts adding up', () => {
    const rates = lossRates([still, { ...still, disaster: 2, absconded: 1, end: 4 }]);
    expect(rates.coloss).toMatchObject({ totalAtRisk: 20, totalLost: 9, deadRate: 5 / 20, queenRate: 2 / 20, disasterRate: 2 / 20 });
    expect(lossRates([still, { ...still, sold: 1, end: 6 }]).coloss).toBeNull();
  });

  test('no yard, and a yard without colonies, have no rate', () => {
    expect(lossRate([])).toMatchObject({ totalAtRisk: 0, total: { rate: null }, quasi: { defined: false }, shown: { method: 'none' } });
    expect(lossRate([{ atRisk: 0, lost: 0 }])).toMatchObject({ rate: [null], average: { units: 0, mean: null } });
    expect(lossRates([]).coloss).toMatchObject({ deadRate: null, queenRate: null, disasterRate: null });
  });

  test('counts that cannot be are refused', () => {
    expect(() => lossRates([{ ...still, end: 12 }])).toThrow(RangeError);
    expect(() => lossRate([{ atRisk: 3, lost: 4 }])).toThrow(RangeError);
  });
});
