/** A repeatable source of chance, passed in: the same seed gives the same plan. */
export interface Chance {
  /** Uniform in [0, 1). */
  next(): number;
  normal(mean: number, deviation: number): number;
}

/** Gamma with scale 1 (Marsaglia and Tsang 2000, ACM TOMS 26:363-372, from memory). shape > 0. */
export function gammaDraw(shape: number, chance: Chance): number {
  if (shape < 1) return gammaDraw(shape + 1, chance) * (1 - chance.next()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = chance.normal(0, 1);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - chance.next()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

export function betaDraw(alpha: number, beta: number, chance: Chance): number {
  const one = gammaDraw(alpha, chance);
  const other = gammaDraw(beta, chance);
  // Both may underflow to 0 at tiny shapes; the mean is then as good a draw as any.
  return one + other > 0 ? one / (one + other) : alpha / (alpha + beta);
}
