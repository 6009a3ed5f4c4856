/** An interval with its two limits, in the unit of the quantity it belongs to. `lower <= upper`. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}
