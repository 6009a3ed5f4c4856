import { dayInWords, type Day } from '#shared/days.ts';
import { number, percent } from '#shared/figures.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inYearWindow } from '#core/rules/yearWindow.ts';
import { boxesInWords, deepFramesIn, type HiveBoxes, type SpaceFacts } from './hiveBoxes.ts';
import { latestStrength } from './latestLook.ts';

/** Whether a colony wants a box: `look first` where the last look tells nothing of today. */
export interface SpaceNeed {
  readonly say: 'add' | 'watch' | 'enough' | 'look first' | 'not told' | 'out of season';
  /** What to put on, and how many; null where nothing is wanted. */
  readonly add: { readonly box: 'deep' | 'medium'; readonly count: number } | null;
  /** Frames of bees at that look, against all combs of the hive as deep frames. */
  readonly bees: number | null;
  readonly room: number | null;
  readonly look: Day | null;
  readonly reason: string;
  readonly rests: RestsOn | null;
}

/** More than this over what the account's boxes hold cannot be. */
const mostCovered = 1.25;
/** Boxes given at one visit. */
const mostAtOnce = 2;

/**
 * Bees against room: frames of bees at the last look, over the combs of all boxes that stand on the hive now. From the
 * house's share on a box is wanted: brood boxes up to the house's number first, honey supers then.
 */
export function spaceNeed(state: Pick<ColonyState, 'looks' | 'reigns'>, facts: SpaceFacts): SpaceNeed {
  const { day, rules, boxes } = facts;
  if (!inYearWindow(day, 'space.from', 'space.until', rules)) return answer('out of season', 'Boxes are not added at this time of the year.');
  const strength = latestStrength(state, facts);
  if (strength === null) return answer('not told', 'No look has told how many frames of bees there are.');
  const { look, past } = strength;
  const rests: RestsOn = { kind: 'inspection', day: look.day };
  const known = { bees: look.framesBees, look: look.day, rests };
  if (past === 'split') return answer('look first', `${framesOf(look.framesBees)} on ${dayInWords(look.day)}, and split since.`, known);
  if (past === 'swarmed') return answer('look first', `${framesOf(look.framesBees)} on ${dayInWords(look.day)}, and swarmed since.`, known);
  if (past === 'old') return answer('look first', `The last look at its strength was on ${dayInWords(look.day)}.`, known);
  if (boxes === null) return answer('not told', `${framesOf(look.framesBees)} on ${dayInWords(look.day)}, but the account knows of no box under it.`, known);
  const room = deepFramesIn(boxes);
  const share = look.framesBees / room;
  const on = `${framesOf(look.framesBees)} on ${dayInWords(look.day)}; it stands on ${boxesInWords(boxes)}`;
  const all = { ...known, room };
  if (share > mostCovered) return answer('look first', `${on}, which cannot hold them: a box is wanted, or is missing in the account.`, all);
  // Seven of ten, as it is counted, and not a hair less by division.
  if (share < numberRule(rules, 'space.full') - 1e-9) {
    return share < numberRule(rules, 'space.watch') - 1e-9 ? answer('enough', `${on}: ${percent(share)} covered.`, all) : answer('watch', `${on}: ${percent(share)} covered, soon full.`, all);
  }
  return { ...answer('add', `${on}: ${percent(share)} covered.`, all), add: wanted(look.framesBees, boxes, facts) };
}

function wanted(bees: number, boxes: HiveBoxes, { rules }: SpaceFacts): SpaceNeed['add'] {
  if (boxes.deep < Math.round(numberRule(rules, 'order.deeps'))) return { box: 'deep', count: 1 };
  const full = numberRule(rules, 'space.full');
  const enough = Array.from({ length: mostAtOnce - 1 }, (_, at) => at + 1).find((count) => bees < full * deepFramesIn({ ...boxes, medium: boxes.medium + count }));
  return { box: 'medium', count: enough ?? mostAtOnce };
}

function framesOf(bees: number): string {
  return `${number(bees, 2)} ${bees === 1 ? 'frame' : 'frames'} of bees`;
}

function answer(say: SpaceNeed['say'], reason: string, known: Partial<SpaceNeed> = {}): SpaceNeed {
  return { say, add: null, bees: null, room: null, look: null, rests: null, ...known, reason };
}
