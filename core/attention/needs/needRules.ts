import type { NeedKey } from '#shared/contract/needs.ts';
import { dueNeeds } from './dueNeeds.ts';
import { mitesOver } from './mitesOver.ts';
import type { NeedRule } from './needRule.ts';

/** Every rule there is; another is one file and its line here. */
export const needRules: readonly NeedRule[] = [...dueNeeds, mitesOver];

const byKey = new Map(needRules.map((rule) => [rule.key, rule]));

export function needRuleOf(key: NeedKey): NeedRule {
  const rule = byKey.get(key);
  if (rule === undefined) throw new Error(`no rule asks for ${key}`);
  return rule;
}
