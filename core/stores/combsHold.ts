import type { Grams } from '#shared/brands.ts';
import { gramsFrom } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { HiveBoxes } from '#core/space/hiveBoxes.ts';

/** What all combs of a colony's brood boxes hold when full: deep boxes put on for honey are not counted. Null where the account knows of no box. */
export function combsHold(boxes: HiveBoxes | null, { supers }: Pick<ColonyState, 'supers'>, rules: RuleValues): Grams | null {
  if (boxes === null) return null;
  const brood = (['deep', 'medium', 'shallow'] as const).map((depth) => Math.max(0, boxes[depth] - supers[depth]) * numberRule(rules, `stores.frame.${depth}`));
  const pounds = boxes.frames * brood.reduce((sum, one) => sum + one, 0);
  return pounds > 0 ? gramsFrom(pounds, 'lb') : null;
}
