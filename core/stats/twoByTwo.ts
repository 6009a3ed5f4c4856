/**
 * Losses of two groups: `a` of a + b exposed colonies were lost, `c` of c + d others.
 * Whole numbers, 0 or more.
 */
export interface TwoByTwo {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Throws a RangeError unless all four cells are whole numbers from 0 up. */
export function checkTwoByTwo({ a, b, c, d }: TwoByTwo): void {
  for (const cell of [a, b, c, d]) {
    if (!Number.isSafeInteger(cell) || cell < 0) throw new RangeError(`a table holds whole numbers from 0 up, not ${cell}`);
  }
}
