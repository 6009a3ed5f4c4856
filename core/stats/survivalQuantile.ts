const TIE = 1.5e-8;

/**
 * The first time at which a survival step curve has come down to `level` (0.5 for the median), or null if it
 * never does. `curve[i]` is the value from `times[i]` on; NaN never counts as down.
 *
 * Where the curve lies exactly on the level for a while and drops later, the middle of that flat piece is
 * given, as is usual for a printed median. A band may rise again (late entries make it do so); its first
 * crossing still counts. Ties are judged with a tolerance of 1.5e-8, the customary square root of the
 * rounding unit, since the curve is a product of many factors.
 */
export function survivalQuantile(times: ArrayLike<number>, curve: ArrayLike<number>, level: number): number | null {
  for (let at = 0; at < times.length; at++) {
    const value = curve[at] as number;
    if (!(value <= level + TIE)) continue;
    const time = times[at] as number;
    if (value < level - TIE) return time;
    const drop = nextDrop(curve, at, level - TIE);
    return drop === null ? time : (time + (times[drop] as number)) / 2;
  }
  return null;
}

/** The index at which the flat piece that begins at `from` ends by a drop below `floor`, if it does. */
function nextDrop(curve: ArrayLike<number>, from: number, floor: number): number | null {
  for (let at = from + 1; at < curve.length; at++) {
    const value = curve[at] as number;
    if (value < floor) return at;
    if (Math.abs(value - (curve[from] as number)) > TIE) return null;
  }
  return null;
}
