import type { waterPlaces } from '#shared/contract/lots.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';

export type WaterPlace = (typeof waterPlaces)[number];

export interface WaterVerdict {
  /** Key of the house rule that was asked. */
  readonly rule: string;
  readonly limit: number;
  /** A limit is "not over": honey at the limit is within it. */
  readonly within: boolean;
  /** True below the water at which honey keeps a year whatever its yeasts. */
  readonly keeps: boolean;
}

/** Honey of so many per cent water against the limit of a place; the number is the house rule's, the law's goes before it. */
export function judgeWater(water: number, place: WaterPlace, rules: RuleValues): WaterVerdict {
  const rule = `honey.water.${place}`;
  const limit = numberRule(rules, rule);
  return { rule, limit, within: water <= limit, keeps: water < numberRule(rules, 'honey.water.keeps') };
}

/** The best US grade that the water alone allows; taste, defects and clarity are judged apart. */
export function gradeByWater(water: number, rules: RuleValues): 'A or B' | 'C' | 'substandard' {
  if (judgeWater(water, 'usdaAB', rules).within) return 'A or B';
  return judgeWater(water, 'usdaC', rules).within ? 'C' : 'substandard';
}
