/** Pounds that the equation starts from, and inches of the best reach and height (Waters et al. 1994, NIOSH 94-110). */
const loadConstant = 51;
const bestReach = 10;
const bestHeight = 30;

export interface Lift {
  /** Inches from between the ankles to the hands, from the floor to the hands, and of the way up or down. */
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  /** Degrees of twist. */
  readonly angle: number;
  /** Multipliers for how often and for the grip, 1 at best. */
  readonly frequency: number;
  readonly coupling: number;
}

/**
 * Recommended weight limit in pounds by the revised NIOSH lifting equation: 51 x HM x VM x DM x AM x FM x CM with HM = 10/H,
 * VM = 1 - 0.0075 |V - 30|, DM = 0.82 + 1.8/D, AM = 1 - 0.0032 A. Reach and way count at least 10 inches.
 */
export function recommendedWeight({ horizontal, vertical, distance, angle, frequency, coupling }: Lift): number {
  const reach = bestReach / Math.max(bestReach, horizontal);
  const height = Math.max(0, 1 - 0.0075 * Math.abs(vertical - bestHeight));
  const way = Math.min(1, 0.82 + 1.8 / Math.max(10, distance));
  return loadConstant * reach * height * way * Math.max(0, 1 - 0.0032 * angle) * frequency * coupling;
}

/** Load over what is recommended: above 1 the risk grows, from 3 on it is high. */
export function liftingIndex(load: number, limit: number): number {
  return load / limit;
}

/** A box lifted off a hive at the height of the hips: 16 inches out, since a box is as deep as that, and set down 20 inches off. */
export const offTheHive: Lift = { horizontal: 16, vertical: 30, distance: 20, angle: 0, frequency: 1, coupling: 1 };
/** Full ten-frame boxes, pounds: 50 to 60 and 80 to 90 (general articles, read-weak). */
export const fullBox = { medium: 55, deep: 85 } as const;

/** The caution where supers are taken: what a full one weighs against what the equation recommends. */
export function liftingCaution(): string {
  const limit = recommendedWeight(offTheHive);
  const times = (box: keyof typeof fullBox) => liftingIndex(fullBox[box], limit).toFixed(1);
  return `A full ten-frame medium super weighs about ${fullBox.medium} lb, a full deep about ${fullBox.deep} lb. Held an arm’s bend away, the lifting equation of NIOSH recommends no more than ${Math.round(limit)} lb: they are ${times('medium')} and ${times('deep')} times that. Lift in twos, use a hive lifter, or carry combs over into an empty box.`;
}

/** The caution where boxes are added: what is on comes off first. */
export function addingCaution(): string {
  return `Where a box goes below others, those come off first. ${liftingCaution()}`;
}
