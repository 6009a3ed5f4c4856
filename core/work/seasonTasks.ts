import type { WorkTask } from '#shared/contract/work.ts';
import { addDays, monthDayInWords, yearOf, type Day } from '#shared/days.ts';
import { tools } from '#shared/loadWords.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { houseRuleDefinitions, numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { minutesFor, type OwnPace } from './ownMinutes.ts';
import { seasonDays, type SeasonDays } from './roundPhases.ts';
import type { WorkFacts } from './workFacts.ts';

interface Rule {
  readonly key: string;
  readonly what: string;
  readonly minutes: string;
  readonly people: number;
  readonly weather: WorkTask['weather'];
  /** For each colony, or once for the visit. */
  readonly bring: { readonly item: string; readonly each: boolean };
  readonly numbers: readonly string[];
  /** Null where the place or the year has none. */
  readonly window: (days: SeasonDays, number: (key: string) => number) => { readonly from: Day; readonly by: Day; readonly says: string } | null;
  readonly wants: (state: ColonyState, from: Day) => boolean;
}

const supersOn = ({ supers }: ColonyState) => supers.deep + supers.medium + supers.shallow;

/** What the season asks of every yard; what hangs on a colony’s own record is on the list of needs. */
const rules: readonly Rule[] = [
  {
    key: 'first supers', what: 'Put on the first supers', minutes: 'work.minutes.super', people: 1, weather: 'flying', bring: { item: 'medium super with combs', each: true }, numbers: ['work.flow.from', 'work.firstSupers.before', 'work.firstSupers.by'],
    window: ({ flowFrom }, number) => ({
      from: addDays(flowFrom, -number('work.firstSupers.before')), by: addDays(flowFrom, -number('work.firstSupers.by')), says: `The main flow begins about ${monthDayInWords(flowFrom)}.`,
    }),
    wants: (state) => supersOn(state) === 0,
  },
  {
    key: 'supers off', what: 'Take the supers off', minutes: 'needs.minutes.harvest', people: 2, weather: 'flying', bring: { item: tools.escape, each: false }, numbers: ['work.flow.until', 'work.supersOff.by'],
    window: ({ flowUntil }, number) => ({ from: flowUntil, by: addDays(flowUntil, number('work.supersOff.by')), says: `The main flow ends about ${monthDayInWords(flowUntil)}. A full super is heavy: two people.` }),
    wants: (state) => supersOn(state) > 0,
  },
  {
    key: 'mouse guards', what: 'Put on mouse guards', minutes: 'work.minutes.guard', people: 1, weather: 'any', bring: { item: 'mouse guard', each: true }, numbers: ['work.frost.first', 'work.guards.by'],
    window: ({ frost }, number) => (frost === null ? null : { from: addDays(frost, -7), by: addDays(frost, number('work.guards.by')), says: `The first frost is about ${monthDayInWords(frost)}.` }),
    wants: () => true,
  },
];

/** Tasks that the season brings to each yard with living colonies, whose days lie within the plan. */
export function seasonTasks({ today, until, states, yards, rules: kept }: WorkFacts, pace: OwnPace): WorkTask[] {
  const number = (key: string) => numberRule(kept, key);
  const living = Map.groupBy(states.filter((state) => aliveOn(state, today)), (state) => yardOn(state, today));
  return rules.flatMap((rule) => [yearOf(today), yearOf(today) + 1].flatMap((year) => {
    const window = rule.window(seasonDays(kept, year), number);
    if (window === null || window.by < today || window.from > until) return [];
    return yards.flatMap((yard) => taskOf(rule, window, yard, (living.get(yard.id) ?? []).filter((state) => rule.wants(state, window.from)), kept, pace));
  }));
}

function taskOf(rule: Rule, { from, by, says }: { readonly from: Day; readonly by: Day; readonly says: string }, { id }: Yard, colonies: readonly ColonyState[], kept: RuleValues, pace: OwnPace): WorkTask[] {
  if (colonies.length === 0) return [];
  const timed = minutesFor(numberRule(kept, rule.minutes), colonies.length, pace);
  return [{
    key: `season|${rule.key}|${id}|${from}`, source: 'season', what: rule.what, reason: says, yard: id, colonies: colonies.map((state) => ({ id: state.id, label: state.label })),
    earliest: from, latest: by < from ? from : by, overdue: false, grave: numberRule(kept, 'work.grave.season'), ...timed, people: rule.people, weather: rule.weather,
    bring: [{ item: rule.bring.item, count: rule.bring.each ? colonies.length : 1 }], after: null, sources: sourcesOf([...rule.numbers, rule.minutes, 'work.grave.season'], kept),
  }];
}

/** The house rules behind a task, as they are set. */
export function sourcesOf(keys: readonly string[], kept: RuleValues): WorkTask['sources'] {
  return keys.flatMap((key) => {
    const rule = houseRuleDefinitions.find((one) => one.key === key);
    return rule === undefined ? [] : [{ label: rule.label, value: kept.get(key) ?? rule.default, source: rule.source, confidence: rule.confidence }];
  });
}
