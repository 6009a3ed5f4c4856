import type { Need, NeedKey, NeedWeather } from '#shared/contract/needs.ts';
import type { WorkTask } from '#shared/contract/work.ts';
import { daysBetween } from '#shared/days.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { loadOf } from './needLoad.ts';
import { minutesFor, type OwnPace } from './ownMinutes.ts';
import type { WorkFacts } from './workFacts.ts';

/** Rounds are planned by season, and see to these. */
const seenOnRounds: ReadonlySet<NeedKey> = new Set<NeedKey>(['look', 'heft']);
/** Done at home. */
const atHome: ReadonlySet<NeedKey> = new Set<NeedKey>(['orders', 'mend', 'renewal']);
/** Orders are made with whom they are made with, and take the rule’s minutes whatever is ordered. */
const notByHand: ReadonlySet<NeedKey> = atHome;

/** Windows this near each other are one job where they overlap. */
const together = 5;

const weather: Readonly<Record<NeedWeather, WorkTask['weather']>> = { open: 'flying', quick: 'flying', top: 'dry', label: 'flying', any: 'any' };

/** What the list of needs asks for, as tasks: the same act in one yard at about the same days is one. */
export function needTasks(needs: readonly Need[], pace: OwnPace, { today, states, fitting, rules }: Pick<WorkFacts, 'today' | 'states' | 'fitting' | 'rules'>): WorkTask[] {
  const groups: Need[][] = [];
  const open = new Map<string, Need[][]>();
  for (const need of needs.filter(({ rule }) => !seenOnRounds.has(rule)).toSorted((a, b) => compare(a.latest, b.latest) || compare(a.key, b.key))) {
    const place = `${need.rule}|${need.act}|${need.yard?.id ?? 'home'}|${need.people}|${need.colony === null ? need.key : ''}`;
    const own = open.get(place) ?? [];
    open.set(place, own);
    const fitting = own.find((group) => fits(group, need));
    if (fitting !== undefined) fitting.push(need);
    else {
      const group = [need];
      own.push(group);
      groups.push(group);
    }
  }
  return groups.map((group) => {
    const task = taskOf(group, pace, rules);
    const { yard, latest } = task;
    const many = () => (task.colonies.length > 0 ? task.colonies.length : states.filter((state) => aliveOn(state, today) && yardOn(state, today) === yard).length);
    return yard === null ? task : { ...task, bring: loadOf(group, many, () => fitting(yard, latest < today ? today : latest)) };
  });
}

function fits(group: readonly Need[], need: Need): boolean {
  const [first] = group;
  return first !== undefined && daysBetween(first.latest, need.latest) <= together && need.earliest <= first.latest;
}

function taskOf(group: readonly Need[], pace: OwnPace, rules: RuleValues): WorkTask {
  const [first] = group as [Need, ...Need[]];
  const colonies = group.flatMap(({ colony }) => (colony === null ? [] : [colony]));
  const home = atHome.has(first.rule) || first.yard === null;
  const timed = minutesFor(group.reduce((sum, { minutes }) => sum + minutes, 0) / group.length, colonies.length, notByHand.has(first.rule) ? { ...pace, factor: 1, rounds: 0, measured: null } : pace);
  return {
    key: `need|${first.key}`, source: first.rule === 'orders' ? 'order' : 'due', what: first.act, reason: first.because, yard: home ? null : (first.yard?.id ?? null), colonies: home ? [] : colonies,
    earliest: group.reduce((most, { earliest }) => (earliest > most ? earliest : most), first.earliest), latest: first.latest, overdue: group.some(({ status }) => status === 'overdue'), grave: numberRule(rules, `needs.grave.${first.rule}`),
    ...timed, people: first.people, weather: weather[first.weather], bring: [], after: null, sources: [],
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
