import type { NeedKey } from '#shared/contract/needs.ts';
import { dueNeeds } from './dueNeeds.ts';
import { mitesCount } from './mitesCount.ts';
import { mitesOver } from './mitesOver.ts';
import { mitesSoon } from './mitesSoon.ts';
import type { NeedRule } from './needRule.ts';
import { supersOff } from './supersOff.ts';
import { winterBees } from './winterBees.ts';

/** Every rule there is; another is one file and its line here. */
export const needRules: readonly NeedRule[] = [...dueNeeds, mitesOver, mitesCount, mitesSoon, winterBees, supersOff];

const byKey = new Map(needRules.map((rule) => [rule.key, rule]));

export function needRuleOf(key: NeedKey): NeedRule {
  const rule = byKey.get(key);
  if (rule === undefined) throw new Error(`no rule asks for ${key}`);
  return rule;
}
