/**
 * One row of the US quarterly colony statistics: colonies on the first day of the quarter and, for a state,
 * the maximum (first day + all moved in during the quarter). The US row has no maximum: null.
 */
export interface NassBase {
  readonly firstDay: number;
  readonly maximum: number | null;
}

/**
 * A printed per cent: `value` in whole per cent (null where a sign stands instead) and `text` as printed.
 * `-` means zero, `(Z)` less than half a per cent, `(X)` not applicable.
 */
export interface NassPercent {
  readonly value: number | null;
  readonly text: string;
}

/**
 * Per cent of colonies lost or renovated in a quarter, as the US quarterly statistics print it: the base is
 * the maximum for a state and the first-day count for the US; halves are rounded up. Splits made in the
 * quarter are not in the base, so the figure must not be mixed with survey rates.
 *
 * Source: USDA NASS, Honey Bee Colonies, release of 2 August 2021, notes 1 to 4 and the list of signs.
 * A base of 0 gives `(X)`. Negative or broken counts: RangeError.
 */
export function nassPercent(count: number, base: NassBase): NassPercent {
  const of = base.maximum ?? base.firstDay;
  for (const figure of [count, of]) {
    if (!Number.isSafeInteger(figure) || figure < 0) {
      throw new RangeError(`colonies are counted in whole numbers from 0 up, not ${figure}`);
    }
  }
  if (of === 0) return { value: null, text: '(X)' };
  if (count === 0) return { value: null, text: '-' };
  // In whole numbers: 200 * count < of says "less than half a per cent" without a rounding error.
  if (200 * count < of) return { value: null, text: '(Z)' };
  const value = Math.floor((200 * count + of) / (2 * of));
  return { value, text: String(value) };
}
