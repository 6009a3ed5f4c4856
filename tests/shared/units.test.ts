import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Minor } from '#shared/brands.ts';
import { gramsFrom, massIn, millilitresFrom, minorFrom, moneyText, volumeIn } from '#shared/units.ts';

const typed = fc.integer({ min: 0, max: 9_999_999 }).map((thousandths) => thousandths / 1000);

describe('mass and volume', () => {
  // NIST Handbook 44, appendix C: the avoirdupois pound is 453.59237 g, the US gallon 3.785411784 l, both exact; from memory.
  test('a pound and a gallon are what the handbook says', () => {
    expect(gramsFrom(1, 'lb')).toBe(453.59237);
    expect(millilitresFrom(1, 'gal')).toBe(3785.411784);
    expect(massIn(gramsFrom(100, 'lb'), 'kg')).toBe(45.359237);
    expect(volumeIn(millilitresFrom(2, 'gal'), 'l')).toBe(7.570824);
  });

  test('what was typed comes back as typed, in either unit', () => {
    fc.assert(
      fc.property(typed, fc.constantFrom('lb' as const, 'kg' as const), (amount, unit) => void expect(massIn(gramsFrom(amount, unit), unit)).toBe(amount)),
    );
    fc.assert(
      fc.property(typed, fc.constantFrom('gal' as const, 'l' as const), (amount, unit) => void expect(volumeIn(millilitresFrom(amount, unit), unit)).toBe(amount)),
    );
  });
});

describe('money', () => {
  test.each([
    [185, 18_500], [185.5, 18_550], [0.07, 7], [1.1, 110], [0, 0], [1234.56, 123_456],
  ])('%d is %d cents', (amount, cents) => expect(minorFrom(amount)).toBe(cents));
  test.each([0.005, 12.345, 1.999])('%d has parts of a cent and is refused', (amount) => expect(minorFrom(amount)).toBeNull());

  test('its text reads back as the same amount', () => {
    fc.assert(fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), (cents) => void expect(minorFrom(Number(moneyText(cents as Minor)))).toBe(cents)));
    expect([moneyText(17_400 as Minor), moneyText(17_450 as Minor), moneyText(5 as Minor)]).toEqual(['174', '174.50', '0.05']);
  });
});
