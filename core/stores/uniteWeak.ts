import type { ColonyId } from '#shared/brands.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { number } from '#shared/figures.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { inSeasonOf, inYearWindow } from '#core/rules/yearWindow.ts';
import { latestStrength } from '#core/space/latestLook.ts';

/** A colony of the yard with what is known of it that day. */
export interface YardColony {
  readonly state: ColonyState;
  readonly splitDays: readonly Day[];
}

export interface UniteCandidate {
  readonly colony: ColonyId;
  readonly bees: number;
  readonly queenless: boolean;
  readonly reason: string;
  readonly rests: RestsOn;
  /** The colony of the same yard that it would go into; null where none of them is fit. */
  readonly partner: { readonly colony: ColonyId; readonly bees: number; readonly reason: string; readonly rests: RestsOn } | null;
}

/**
 * Colonies too weak to winter alone or without a queen, weakest first, each with a partner of its own in the same yard: of the queenright
 * ones that are fit, the one with fewest bees, since it gains most by them. Nothing outside the house's days.
 */
export function uniteCandidates(yard: readonly YardColony[], day: Day, rules: RuleValues): UniteCandidate[] {
  if (!inYearWindow(day, 'stores.unite.from', 'stores.unite.until', rules)) return [];
  const known = yard.flatMap(({ state, splitDays }) => {
    const strength = latestStrength(state, { day, rules, splitDays });
    return strength === null || strength.past !== null ? [] : [{ state, look: strength.look, queen: queenright(state, day, rules) }];
  });
  const least = numberRule(rules, 'stores.winterFrames');
  // No eggs at one look is a doubt, and asks for another look; no queen in the record is known.
  const weak = known.filter(({ state, look }) => look.framesBees < least || !hasQueen(state, day)).toSorted((a, b) => a.look.framesBees - b.look.framesBees || a.state.id - b.state.id);
  const fit = known.filter(({ look, queen }) => queen && look.framesBees >= numberRule(rules, 'stores.partnerFrames')).toSorted((a, b) => a.look.framesBees - b.look.framesBees || a.state.id - b.state.id);
  return weak.map(({ state, look, queen }, at) => {
    const other = fit[at];
    return {
      colony: state.id, bees: look.framesBees, queenless: !queen, rests: { kind: 'inspection', day: look.day },
      reason: `${number(look.framesBees, 2)} ${look.framesBees === 1 ? 'frame' : 'frames'} of bees on ${dayInWords(look.day)}${look.framesBees < least ? `, fewer than ${number(least, 1)}` : ''}${queen ? '' : hasQueen(state, day) ? ', and no eggs when they were looked for' : ', and no queen in the record: unite it or give it one'}.`,
      partner: other === undefined ? null : { colony: other.state.id, bees: other.look.framesBees, rests: { kind: 'inspection', day: other.look.day }, reason: `${number(other.look.framesBees, 2)} frames of bees on ${dayInWords(other.look.day)}, queenright.` },
    };
  });
}

/** A queen is in the record, and the last look that told of eggs or of her has not missed both; in winter no eggs say nothing. */
export function queenright({ reigns, looks }: Pick<ColonyState, 'reigns' | 'looks'>, day: Day, rules: RuleValues): boolean {
  const reign = reignOn(reigns, day);
  if (reign === undefined) return false;
  const look = looks.findLast((one) => one.day <= day && (one.eggs !== null || one.queenSeen === true));
  return look === undefined || look.day < reign.since || look.eggs !== false || look.queenSeen === true || look.day >= inSeasonOf(look.day, 'season.winter', rules);
}

function hasQueen({ reigns }: Pick<ColonyState, 'reigns'>, day: Day): boolean {
  return reignOn(reigns, day) !== undefined;
}

function reignOn(reigns: ColonyState['reigns'], day: Day): ColonyState['reigns'][number] | undefined {
  return reigns.findLast((one) => one.since <= day && (one.until === null || one.until > day));
}
