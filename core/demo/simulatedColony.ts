import type { Ending } from '#shared/contract/values.ts';
import { dayOfYear } from './calendar.ts';
import type { SeededRandom } from './seededRandom.ts';

export type SimulatedOrigin = 'package' | 'nuc' | 'swarm' | 'split';

/** What was true of a colony's autumn, known to the simulator and only in part to the keeper. */
export interface AutumnTruth {
  readonly season: number;
  readonly yard: string;
  /** Mites per 100 bees in August before treatment. */
  readonly mites: number;
  /** Seasons since the queen hatched: 0 for one of this year. */
  readonly queenAge: number;
  readonly storesLb: number;
  readonly framesBees: number;
  /** Washed at least once in the season. */
  readonly washed: boolean;
  /** Died in that winter; null while the winter still runs. */
  lost: boolean | null;
}

/** A colony as it really is, of which the records show a part. */
export interface SimulatedColony {
  readonly label: string;
  readonly origin: SimulatedOrigin;
  readonly start: number;
  readonly startYard: string;
  /** Stands on eight-frame boxes kept from before the book, which the shed does not count. */
  readonly eightFrame: boolean;
  yard: string;
  end: number | null;
  how: Ending;
  queenYear: number;
  queenLine: string;
  /** A queen is laying. A failed mating shows at a later look. */
  queenright: boolean;
  temper: number;
  /** Strength against an average colony. */
  vigor: number;
  /** Day and share of bees it last lost to a split or a swarm. */
  setBack: { readonly day: number; readonly share: number } | null;
  deeps: 1 | 2;
  supers: number;
  excluder: boolean;
  mites: number;
  washed: boolean;
  storesLb: number;
  fedGallons: number;
  storesWeighed: number | null;
  splitThisYear: boolean;
  /** Day on which it really dies, if it is doomed, and of what. */
  death: { readonly day: number; readonly causes: readonly string[] } | null;
  /** Pounds weighed, by season. */
  readonly honeyLb: Map<number, number>;
  readonly autumns: AutumnTruth[];
}

/** Frames of bees of an established colony through the year, by day of the year. */
const established = [
  [0, 7], [60, 5], [95, 4.5], [112, 6], [140, 11], [166, 16], [201, 17], [238, 13.5], [268, 10.5], [293, 9], [366, 8],
] as const;
/** Frames of bees of a package by days since it was hived: it shrinks until its first brood hatches. */
const afterPackage = [[0, 4], [22, 3], [45, 6], [70, 11], [100, 15], [400, 20]] as const;
const afterNuc = [[0, 4.5], [21, 7], [45, 11.5], [75, 15], [400, 20]] as const;
const afterSplit = [[0, 4], [25, 3.5], [50, 7], [80, 11.5], [110, 13], [400, 20]] as const;

export function framesOfBees(colony: SimulatedColony, day: number): number {
  const young = colony.origin === 'package' ? afterPackage : colony.origin === 'split' ? afterSplit : afterNuc;
  let frames = Math.min(onCurve(established, dayOfYear(day)), onCurve(young, day - colony.start)) * colony.vigor;
  if (colony.setBack !== null) {
    const passed = day - colony.setBack.day;
    if (passed < 42) frames *= 1 - colony.setBack.share * (1 - passed / 42);
  }
  if (!colony.queenright) frames *= 0.65;
  if (colony.death !== null && day > colony.death.day - 40) frames *= 0.6;
  return Math.max(0.5, Math.min(20, frames));
}

const broodShare = [[0, 0], [50, 0.1], [95, 0.5], [130, 0.62], [166, 0.5], [201, 0.42], [238, 0.36], [268, 0.25], [293, 0.08], [310, 0], [366, 0]] as const;

export function framesOfBrood(colony: SimulatedColony, day: number): number {
  if (!colony.queenright) return 0;
  return Math.min(12, framesOfBees(colony, day) * onCurve(broodShare, dayOfYear(day)));
}

/** Straight lines between points of rising position. */
export function onCurve(points: readonly (readonly [number, number])[], at: number): number {
  let before = points[0] ?? [0, 0];
  for (const point of points) {
    if (point[0] >= at) {
      const span = point[0] - before[0];
      return span === 0 ? point[1] : before[1] + ((at - before[0]) / span) * (point[1] - before[1]);
    }
    before = point;
  }
  return before[1];
}

/** August mites of the running season: skewed, lower where the brood was young or interrupted. */
export function drawMites(colony: SimulatedColony, median: number, season: number, startSeason: number, random: SeededRandom): number {
  const youth = startSeason !== season ? 0 : colony.origin === 'split' ? -0.55 : -0.35;
  const broken = colony.setBack !== null ? -0.15 : 0;
  return median * Math.exp(youth + broken + random.normal(0.08, 0.58));
}
