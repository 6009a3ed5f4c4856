import type { DueItem } from '#shared/contract/due.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import { houseRuleDefinitions, numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { Due, DueRecord, DueRule } from './dueRule.ts';
import { miteRecount } from './miteRecount.ts';
import { newQueenLaying } from './newQueenLaying.ts';
import { queenlessLaying } from './queenlessLaying.ts';
import { swarmCellsLook } from './swarmCellsLook.ts';
import { treatmentOff } from './treatmentOff.ts';
import { walkAwayLaying } from './walkAwayLaying.ts';

/** Every rule there is; another is one file and its line here. */
export const dueRules: readonly DueRule[] = [walkAwayLaying, newQueenLaying, queenlessLaying, swarmCellsLook, treatmentOff, miteRecount];

const urgency: Readonly<Record<DueItem['status'], number>> = { overdue: 0, due: 1, coming: 2, 'not told': 3, missed: 3, done: 3, overtaken: 3 };

/** What was and is due for one colony: what is open first, the most urgent at the top, then the newest. */
export function colonyDues(record: DueRecord, rules: RuleValues, today: Day): DueItem[] {
  return dueRules
    .flatMap((rule) => rule.find(record, rules).map((due) => itemOf(rule, due, record, rules, today)))
    .toSorted((a, b) => urgency[a.status] - urgency[b.status] || (urgency[a.status] < 3 ? compare(a.latest, b.latest) : compare(b.latest, a.latest)) || a.cause - b.cause);
}

/** True for what still has to be done. */
export function isOpen({ status }: Pick<DueItem, 'status'>): boolean {
  return urgency[status] < 3;
}

function itemOf(rule: DueRule, due: Due, { said, entries }: DueRecord, rules: RuleValues, today: Day): DueItem {
  const status = statusOf(due, rules, today);
  const answered = status === 'done' ? due.done : null;
  return {
    rule: rule.key, what: due.what, reason: due.reason, cause: due.cause, since: entries.find(({ id }) => id === due.cause)?.day ?? due.earliest, earliest: due.earliest, latest: due.latest, status,
    done: answered === null ? null : { day: answered.day, entry: answered.id, sentence: said(answered), late: Math.max(0, daysBetween(due.latest, answered.day)) },
    says: status === 'overtaken' ? (due.overtaken?.says ?? null) : status === 'not told' ? due.untold : null,
    sources: rule.numbers.flatMap((key) => {
      const number = houseRuleDefinitions.find((one) => one.key === key);
      return number === undefined ? [] : [{ label: number.label, value: numberRule(rules, key), source: number.source, confidence: number.confidence }];
    }),
  };
}

function statusOf({ done, overtaken, untold, earliest, latest }: Due, rules: RuleValues, today: Day): DueItem['status'] {
  if (overtaken !== null) return 'overtaken';
  if (done !== null) return 'done';
  if (untold !== null) return 'not told';
  if (today < earliest) return 'coming';
  if (today <= latest) return 'due';
  return today <= addDays(latest, numberRule(rules, 'attention.letGo')) ? 'overdue' : 'missed';
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
