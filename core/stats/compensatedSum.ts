/**
 * Running sums of `values`: element i is the sum of values 0..i. Neumaier's compensated summation (1974), so
 * that the error does not grow with the number of terms.
 */
export function compensatedSum(values: readonly number[]): number[] {
  let sum = 0;
  let lost = 0;
  return values.map((value) => {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
    return sum + lost;
  });
}
