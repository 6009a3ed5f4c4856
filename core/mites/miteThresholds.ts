import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import { monthDayOf, type Day } from '#shared/days.ts';

/** The phases of a colony's year by which mites are judged. */
export const mitePhases = ['increase', 'peak', 'decrease', 'dormantBrood', 'dormantBroodless'] as const;
export type MitePhase = (typeof mitePhases)[number];

export interface MiteThresholds {
  readonly phase: MitePhase;
  /** Mites in 100 bees; `rule` and `watchRule` are the keys of the house rules they come from. */
  readonly watch: number;
  readonly treat: number;
  readonly rule: string;
  readonly watchRule: string;
}

const borders = ['increase', 'peak', 'decrease', 'dormant'] as const;

/** The phase of a day by the house's four borders, in whatever order the year meets them; brood matters at rest only. */
export function mitePhaseOn(on: Day, hasBrood: boolean, rules: RuleValues): MitePhase {
  const at = monthDayOf(on);
  const begun = borders.map((name) => ({ name, from: textRule(rules, `mites.begins.${name}`) })).toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  // Before the first border of the year the phase is still the one that the last border of the year before began.
  const name = (begun.findLast(({ from }) => from <= at) ?? begun.at(-1))?.name ?? 'dormant';
  return name === 'dormant' ? (hasBrood ? 'dormantBrood' : 'dormantBroodless') : name;
}

export function miteThresholdsOn(on: Day, hasBrood: boolean, rules: RuleValues): MiteThresholds {
  const phase = mitePhaseOn(on, hasBrood, rules);
  const [rule, watchRule] = [`mites.treat.${phase}`, `mites.watch.${phase}`];
  return { phase, watch: numberRule(rules, watchRule), treat: numberRule(rules, rule), rule, watchRule };
}

/** Below what is watched, between, or from the threshold on. */
export function judgeMites(per100: number, { watch, treat }: MiteThresholds): 'low' | 'watch' | 'act' {
  return per100 >= treat ? 'act' : per100 >= watch ? 'watch' : 'low';
}
