/** Mean time survived up to `tau`, with its standard error, in the unit of the time axis. */
export interface RestrictedMean {
  readonly tau: number;
  readonly value: number;
  readonly se: number;
}

/** The survival curve as the restricted mean needs it: one element per loss time, ascending. */
export interface LossSteps {
  readonly time: ArrayLike<number>;
  readonly atRisk: ArrayLike<number>;
  readonly lost: ArrayLike<number>;
  readonly survival: ArrayLike<number>;
}

/**
 * Restricted mean survival: the area under the curve from `start` to `tau`; the curve counts as flat after
 * its last step, so choose `tau` no later than the last time anything was watched.
 *
 * Standard error: sqrt of the sum over loss times of A^2 d / (n (n - d)) with A the area from that time to
 * tau (Klein and Moeschberger, Survival Analysis, section 4.5, from memory); where all at risk are lost,
 * A is 0. `tau` at or before `start`: RangeError.
 */
export function restrictedMean(steps: LossSteps, tau: number, start = 0): RestrictedMean {
  if (!(tau > start)) throw new RangeError(`the mean is restricted to a time after ${start}, not to ${tau}`);
  let last = steps.time.length;
  while (last > 0 && (steps.time[last - 1] as number) > tau) last--;
  // From the right: the area behind each step is known when the step is reached.
  let area = 0;
  let variance = 0;
  let right = tau;
  for (let at = last - 1; at >= 0; at--) {
    const time = steps.time[at] as number;
    const n = steps.atRisk[at] as number;
    const d = steps.lost[at] as number;
    area += (steps.survival[at] as number) * (right - time);
    if (n > d) variance += (area * area * d) / (n * (n - d));
    right = time;
  }
  return { tau, value: area + (right - start), se: Math.sqrt(variance) };
}
