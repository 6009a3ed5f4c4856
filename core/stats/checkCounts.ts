/**
 * Throws a RangeError unless `count` and `of` are whole numbers with 0 <= count <= of.
 * A proportion of anything else is a defect of the caller, not a matter for an interval.
 */
export function checkCounts(count: number, of: number): void {
  if (!Number.isSafeInteger(count) || !Number.isSafeInteger(of) || count < 0 || of < count) {
    throw new RangeError(`a proportion needs whole numbers with 0 <= count <= total, not ${count} of ${of}`);
  }
}
