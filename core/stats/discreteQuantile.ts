const TOLERANCE = 1e-12;

/**
 * The smallest k with cdf[k] >= u, for a distribution on 0, 1, 2, ... given by its distribution function.
 * Compared with a tolerance of 1e-12: `cdf` is a sum of floating-point numbers, and without it a tie could
 * fall either way. `cdf` must not be empty; u in [0, 1], else RangeError.
 */
export function discreteQuantile(cdf: readonly number[], u: number): number {
  if (cdf.length === 0 || !(u >= 0 && u <= 1)) throw new RangeError(`no quantile at ${u} of ${cdf.length} values`);
  let low = 0;
  let high = cdf.length - 1;
  while (low < high) {
    const mid = (low + high) >>> 1;
    if ((cdf[mid] as number) >= u - TOLERANCE) high = mid;
    else low = mid + 1;
  }
  return low;
}
