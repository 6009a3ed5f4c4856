import type { NeedKey } from '#shared/contract/needs.ts';
import { addBox } from './addBox.ts';
import { deadOut } from './deadOut.ts';
import { dueNeeds } from './dueNeeds.ts';
import { harvest } from './harvest.ts';
import { heft } from './heft.ts';
import { look } from './look.ts';
import { mend } from './mend.ts';
import { mitesCount } from './mitesCount.ts';
import { mitesOver } from './mitesOver.ts';
import { mitesSoon } from './mitesSoon.ts';
import type { NeedRule } from './needRule.ts';
import { noEggs } from './noEggs.ts';
import { orders } from './orders.ts';
import { renewal } from './renewal.ts';
import { requeen } from './requeen.ts';
import { splitBy } from './splitBy.ts';
import { storesAutumn } from './storesAutumn.ts';
import { storesWinter } from './storesWinter.ts';
import { supersOff } from './supersOff.ts';
import { swarmRisk } from './swarmRisk.ts';
import { weakAutumn } from './weakAutumn.ts';
import { winterBees } from './winterBees.ts';
import { winterList } from './winterList.ts';

/** Every rule there is; another is one file and its line here. */
export const needRules: readonly NeedRule[] = [
  ...dueNeeds, mitesOver, mitesCount, mitesSoon, winterBees, supersOff, storesAutumn, storesWinter, heft, addBox, swarmRisk, splitBy, requeen, noEggs, weakAutumn, winterList, harvest, look, deadOut, renewal,
  orders, mend,
];

const byKey = new Map(needRules.map((rule) => [rule.key, rule]));

export function needRuleOf(key: NeedKey): NeedRule {
  const rule = byKey.get(key);
  if (rule === undefined) throw new Error(`no rule asks for ${key}`);
  return rule;
}
