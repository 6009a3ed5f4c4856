import type { YardId } from '#shared/brands.ts';
import type { Need, NeedItem, NeedLine } from '#shared/contract/needs.ts';
import { daysBetween, type Day } from '#shared/days.ts';
import { fixed } from '#shared/figures.ts';
import { roundTo } from '#shared/units.ts';
import { houseRuleDefinitions, numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { ruleWords } from '#core/rules/ruleWords.ts';
import { needRuleOf } from './needRules.ts';

/** More than these are counted, and not sent. */
const mostMembers = 300;

/** The same act for the same reason is one line, with all that need it; the most pressing line first. */
export function needLines(needs: readonly Need[], standing: ReadonlyMap<YardId, number>, rules: RuleValues, today: Day): NeedLine[] {
  return [...Map.groupBy(needs, lineKey).values()]
    .map((group) => lineOf(group, standing, rules, today))
    .toSorted((a, b) => urgency[a.status] - urgency[b.status] || b.points - a.points || (a.latest < b.latest ? -1 : a.latest > b.latest ? 1 : 0) || (a.key < b.key ? -1 : 1));
}

/** What is coming stands below what can be done now; due and overdue are one list. */
const urgency: Readonly<Record<Need['status'], number>> = { overdue: 0, due: 0, coming: 1 };

export function lineKey({ rule, act, because, status }: Pick<Need, 'rule' | 'act' | 'because' | 'status'>): string {
  return `${rule}|${act}|${because}|${status === 'coming' ? 'coming' : 'now'}`;
}

function lineOf(group: readonly Need[], standing: ReadonlyMap<YardId, number>, rules: RuleValues, today: Day): NeedLine {
  const [first] = group;
  if (first === undefined) throw new Error('a line of needs without a need');
  const rule = needRuleOf(first.rule);
  const earliest = least(group.map((need) => need.earliest));
  const latest = least(group.map((need) => need.latest));
  const grave = numberRule(rules, `needs.grave.${first.rule}`);
  const late = lateness(latest, today, rules);
  const overdue = group.filter(({ status }) => status === 'overdue').length;
  return {
    key: lineKey(first), rule: first.rule, act: first.act, because: first.because, earliest, latest,
    status: overdue > 0 ? 'overdue' : first.status, people: first.people, weather: first.weather,
    members: group.slice(0, mostMembers).map(({ key, colony, yard, detail, records, earliest: from, latest: by, status }) => ({ key, colony, yard, detail, records, earliest: from, latest: by, status })),
    count: group.length, overdue, yards: yardsOf(group, standing), minutes: group.reduce((sum, { minutes }) => sum + minutes, 0), bring: brought(group.map(({ bring }) => bring)),
    sources: [...rule.numbers, `needs.minutes.${first.rule}`].flatMap((key) => sourceOf(key, rules)), grave, points: grave + late.steps, rank: rankWords(grave, late, latest, today),
    caution: rule.caution ?? null, page: rule.page ?? null, optional: rule.optional === true,
  };
}

/** A house rule with its value in words and where it comes from; a number that the person put in is not the source's. */
export function sourceOf(key: string, rules: RuleValues): NeedLine['sources'] {
  const found = houseRuleDefinitions.find((one) => one.key === key);
  if (found === undefined) return [];
  const value = rules.get(key) ?? found.default;
  const source = value === found.default ? found.source : `Your own number; by default ${ruleWords(found, found.default)}: ${found.source}`;
  return [{ key, label: found.label, value: ruleWords(found, value), source, confidence: found.confidence }];
}

/** Days past the last day, or left until it, as steps of gravity. */
function lateness(latest: Day, today: Day, rules: RuleValues): { readonly days: number; readonly steps: number } {
  const days = daysBetween(latest, today);
  const most = numberRule(rules, 'needs.rank.most');
  return { days, steps: Math.max(-most, Math.min(most, days / numberRule(rules, 'needs.rank.step'))) };
}

function rankWords(grave: number, { days, steps }: ReturnType<typeof lateness>, latest: Day, today: Day): string {
  const by = Math.abs(steps).toFixed(1);
  const when = latest === today ? 'its last day is today' : days > 0 ? `its last day was ${days} ${days === 1 ? 'day' : 'days'} ago, which adds ${by}` : `its last day is in ${-days} ${days === -1 ? 'day' : 'days'}, which takes off ${by}`;
  return `How grave: ${grave} of 5 by the house rule; ${when}: ${fixed(roundTo(grave + steps, 1) || 0, 1).replace('-', '−')}.`;
}

function yardsOf(group: readonly Need[], standing: ReadonlyMap<YardId, number>): NeedLine['yards'] {
  const found = new Map<YardId, NeedLine['yards'][number]>();
  for (const { yard, colony } of group) {
    if (yard === null) continue;
    const line = found.get(yard.id) ?? { ...yard, colonies: 0, whole: false };
    found.set(yard.id, line);
    if (colony === null) line.whole = true;
    else line.colonies += 1;
  }
  for (const line of found.values()) line.whole ||= line.colonies > 1 && line.colonies === standing.get(line.id);
  return [...found.values()];
}

/** Each thing once: what every colony takes is added up, what a visit takes is taken once. */
export function brought(all: readonly (readonly NeedItem[])[]): NeedLine['bring'] {
  const found = new Map<string, NeedLine['bring'][number]>();
  for (const { item, count, unit, each } of all.flat()) {
    const key = `${item} ${unit}`;
    const had = found.get(key)?.count ?? 0;
    found.set(key, { item, unit, count: each ? had + count : Math.max(had, count) });
  }
  return [...found.values()];
}

function least(days: readonly Day[]): Day {
  return days.reduce((found, one) => (one < found ? one : found));
}
