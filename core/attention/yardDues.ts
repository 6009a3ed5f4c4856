import type { ColonyId } from '#shared/brands.ts';
import type { DueItem, YardDue } from '#shared/contract/due.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { isOpen } from './colonyDues.ts';

export interface ColonysDues {
  readonly id: ColonyId;
  readonly label: string;
  readonly items: readonly DueItem[];
}

/** What is open in a yard: the same act for the same reason and days is one line with its colonies; the soonest first. */
export function yardDues(colonies: readonly ColonysDues[], renewal: Day | null, registration: string | null, rules: RuleValues, today: Day): YardDue[] {
  const lines = new Map<string, YardDue>();
  for (const { id, label, items } of colonies) {
    for (const item of items.filter(isOpen)) {
      const key = `${item.rule} ${item.what} ${item.reason} ${item.earliest} ${item.latest}`;
      const line = lines.get(key) ?? { rule: item.rule, what: item.what, reason: item.reason, earliest: item.earliest, latest: item.latest, status: item.status, colonies: [], sources: item.sources };
      lines.set(key, line);
      if (!line.colonies.some((one) => one.id === id)) line.colonies.push({ id, label });
    }
  }
  const due = renewalDue(renewal, registration, rules, today);
  return [...(due === null ? [] : [due]), ...lines.values()].toSorted((a, b) => (a.latest < b.latest ? -1 : a.latest > b.latest ? 1 : 0));
}

function renewalDue(renewal: Day | null, registration: string | null, rules: RuleValues, today: Day): YardDue | null {
  if (renewal === null) return null;
  const earliest = addDays(renewal, -numberRule(rules, 'attention.renewal'));
  if (today < earliest) return null;
  return {
    rule: 'renewal', what: 'Renew the registration of the yard', reason: `${registration === null ? 'It' : registration} is to be renewed by ${dayInWords(renewal)}, as you wrote it down.`,
    earliest, latest: renewal, status: today > renewal ? 'overdue' : 'due', colonies: [], sources: [],
  };
}
