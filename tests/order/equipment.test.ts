import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { equipmentList, isForPart, type EquipmentQuestion } from '#core/order/equipment.ts';
import { foldStock } from '#core/stock/foldStock.ts';
import { equipmentAvailable, type Available } from '#core/stock/stockTable.ts';
import { hived, lost, recorded } from '../losses/recorded.ts';

const none: Available = { shed: 0, yards: 0, onHives: 0, toCheck: 0, toMend: 0, wornOut: 0, drawn: 0, drawnToCheck: 0 };
const question = { hives: 30, survivors: 18, deadOuts: 2, frames: 10, usual: 10 } as const;
const rules = new Map<string, number | string>();

function line(item: string, there: EquipmentQuestion['there'], more: Partial<EquipmentQuestion> = {}) {
  const found = equipmentList({ ...question, there, ...more }, rules).find((one) => one.item === item);
  if (found === undefined) throw new Error(`no line of ${item}`);
  return found;
}

describe('a part of the order', () => {
  test('what hives carry stays with survivors or comes back from dead-outs; what is to mend is not counted', () => {
    const found = line('deep box', (item) => (item === 'deep box' ? { ...none, onHives: 40, toCheck: 6, toMend: 3, wornOut: 9, shed: 5, yards: 2 } : null));
    // 40 on hives: 36 stay, 4 come back; with 6 to check that is 10, of which nine in ten are sound.
    expect(found).toMatchObject({ need: 66, onHives: 36, fromDeadOuts: 9, toMend: 4, shed: 5, yards: 2, have: 52, order: 14 });
    expect(found.reason).toMatch(/40 are on hives and 6 with dead-outs to check.*3 wait to be mended/);
  });

  test('a shed that owes pieces counts as none', () => {
    expect(line('stand', () => ({ ...none, onHives: 20, shed: -3 }))).toMatchObject({ onHives: 18, fromDeadOuts: 1, shed: 0, have: 19, order: 14 });
  });

  test('without a stock row each colony is taken to have its own, and the line says so', () => {
    const found = line('medium super', () => null);
    expect(found).toMatchObject({ need: 99, onHives: 54, fromDeadOuts: 5, shed: 0, yards: 0, have: 59, order: 40 });
    expect(found.reason).toContain('No stock row names it');
  });

  test('hives of the other size keep their own parts, and what lies free for them fits nothing', () => {
    const there = (item: string) => (item === 'deep box' ? { ...none, onHives: 40, shed: 12 } : item === 'deep box, 8-frame' ? { ...none, shed: 4 } : null);
    const found = line('deep box, 8-frame', there, { frames: 8 });
    expect(found).toMatchObject({ need: 66, onHives: 36, fromDeadOuts: 0, shed: 4, have: 40, order: 26 });
    expect(found.reason).toContain('12 more are for hives of 10 frames.');
    expect([isForPart('Deeps', 'deep box, 8-frame', 8), isForPart('deep box, 10-frame', 'deep box, 8-frame', 8), isForPart('deep box, 8-frame', 'deep box', 10), isForPart('deep frames, foundation', 'deep frame', 10)]).toEqual([true, false, false, true]);
  });

  test('nothing is counted twice: what can be used and what is to mend is never more than there is', () => {
    const count = fc.nat(60);
    fc.assert(fc.property(fc.record({ shed: count, yards: count, onHives: count, toCheck: count, toMend: count, wornOut: count, drawn: fc.constant(0), drawnToCheck: fc.constant(0) }), fc.nat(30), fc.nat(30), fc.nat(80), (account, survivors, deadOuts, hives) => {
      fc.pre(survivors + deadOuts > 0);
      const found = line('bottom board', (item) => (item === 'bottom board' ? account : null), { survivors, deadOuts, hives });
      const { shed, yards, onHives, toCheck, toMend } = account;
      expect(found.have + found.toMend).toBeLessThanOrEqual(shed + yards + onHives + toCheck + toMend);
      // Whole pieces only: at most one is lost to rounding for those that stay.
      expect(found.have + found.toMend).toBeGreaterThanOrEqual(shed + yards + onHives + toCheck + toMend - 1);
      expect(found.order).toBe(Math.max(0, found.need - found.have));
    }), { numRuns: 200 });
  });
});

test('from the record: boxes bought, put on, lost with a colony, mended and worn out', () => {
  const stock = (date: string, quantity: number, item: string, from: string, to: string): Cells => ({ date, entry: 'stock', item, quantity: String(quantity), from, to });
  const { entries } = recorded([
    stock('2025-03-01', 20, 'deep box', 'supplier', 'shed'), stock('2025-03-02', 2, 'deep box, to mend', 'supplier', 'shed'),
    hived('2025-04-20', 'A'), hived('2025-04-20', 'B'), hived('2025-04-20', 'C'), stock('2025-05-10', 3, 'deep box', 'shed', 'QY'), lost('2025-12-20', 'C'),
  ]);
  const book = foldStock(entries, { rules, borders: defaultBorders });
  // Three hives of two boxes; one of them is a dead-out now, two live, and one of those is expected to live until spring.
  expect(equipmentAvailable(book, 'deep box')).toMatchObject({ shed: 14, yards: 0, onHives: 4, toCheck: 2, toMend: 2 });
  expect(line('deep box', (item) => equipmentAvailable(book, item), { hives: 10, survivors: 1, deadOuts: 1 })).toMatchObject({ need: 22, onHives: 2, fromDeadOuts: 3, toMend: 3, shed: 14, have: 19, order: 3 });
});
