import type { Need } from '#shared/contract/needs.ts';
import { addDays } from '#shared/days.ts';
import { whole, type Slices } from '#shared/slices.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { Found, NeedFacts, NeedRule } from './needRule.ts';
import { needRules } from './needRules.ts';

/** All that is needed on the day, by every rule that the house has not silenced; what begins within `facts.ahead` days is coming. */
export function needsOf(facts: NeedFacts, rules: readonly NeedRule[] = needRules): Need[] {
  return whole(needsInSlices(facts, rules));
}

/** The same, one rule after the other. */
export function* needsInSlices(facts: NeedFacts, rules: readonly NeedRule[] = needRules): Slices<Need[]> {
  const horizon = addDays(facts.today, facts.ahead);
  const all: Need[] = [];
  for (const rule of rules) {
    if (numberRule(facts.rules, `needs.grave.${rule.key}`) <= 0) continue;
    const minutes = numberRule(facts.rules, `needs.minutes.${rule.key}`);
    for (const found of rule.find(facts)) if (found.earliest <= horizon) all.push(needFrom(rule, found, minutes, facts));
    yield;
  }
  const instead = new Map(rules.flatMap(({ key, instead: of }) => (of === undefined ? [] : [[key, of]])));
  const covered = new Set(all.flatMap(({ rule, colony, status }) => (colony === null || status === 'coming' ? [] : (instead.get(rule) ?? []).map((other) => `${other}|${colony.id}`))));
  return covered.size === 0 ? all : all.filter(({ rule, colony }) => colony === null || !covered.has(`${rule}|${colony.id}`));
}

function needFrom(rule: NeedRule, found: Found, minutes: number, { today }: NeedFacts): Need {
  const { colony, ended, episode, act, because, detail, records, earliest, bring, times } = found;
  // Days of the house may be set so that a last day lies before the first one.
  const latest = found.latest < earliest ? earliest : found.latest;
  const about = colony?.state ?? ended;
  const yard = colony?.yard.yard ?? found.yard?.yard ?? null;
  return {
    key: `${rule.key}|${about !== undefined ? `c${about.id}` : yard !== null ? `y${yard.id}` : 'all'}|${episode}`,
    rule: rule.key, colony: about === undefined ? null : { id: about.id, label: about.label }, yard: yard === null ? null : { id: yard.id, code: yard.code, name: yard.name },
    act, because, detail: detail ?? null, records: [...(records ?? [])], earliest, latest,
    status: today < earliest ? 'coming' : today <= latest ? 'due' : 'overdue',
    minutes: Math.round(minutes * (times ?? 1)), people: rule.people ?? 1, weather: rule.weather, bring: [...(bring ?? [])],
  };
}
