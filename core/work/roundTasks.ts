import type { YardId } from '#shared/brands.ts';
import type { WorkTask } from '#shared/contract/work.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { minutesFor, type OwnPace } from './ownMinutes.ts';
import { dueAfter, phaseOn, phaseWords, roundOf } from './roundPhases.ts';
import { sourcesOf } from './seasonTasks.ts';
import type { WorkFacts } from './workFacts.ts';

export interface YardRound {
  readonly yard: Yard;
  /** The living colonies, those that are due first before the others. */
  readonly colonies: readonly { readonly state: ColonyState; readonly seen: Day; readonly due: Day }[];
}

/** The living colonies of each yard with the day by which each is to be seen again. One that was never looked at counts from when it came. */
export function yardRounds({ today, states, yards, rules }: Pick<WorkFacts, 'today' | 'states' | 'yards' | 'rules'>): YardRound[] {
  const living = Map.groupBy(states.filter((state) => aliveOn(state, today)), (state) => yardOn(state, today));
  const dues = new Map<Day, Day>();
  const dueOf = (seen: Day) => {
    const due = dues.get(seen) ?? dueAfter(rules, seen);
    dues.set(seen, due);
    return due;
  };
  return yards.flatMap((yard) => {
    const colonies = (living.get(yard.id) ?? []).map((state) => {
      const seen = lastSeen(state, today);
      return { state, seen, due: dueOf(seen) };
    }).toSorted((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : a.state.id - b.state.id));
    return colonies.length === 0 ? [] : [{ yard, colonies }];
  });
}

/** What a round on that day is for. */
export function roundWords(rules: RuleValues, day: Day): string {
  const phase = phaseOn(rules, day);
  return phase === 'swarm' ? 'Round: look for swarm cells' : phase === 'winter' ? 'Winter round: heft and look' : 'Round';
}

/** In winter hives stay closed, so a dry day will do. */
export function roundWeather(rules: RuleValues, day: Day): WorkTask['weather'] {
  return phaseOn(rules, day) === 'winter' ? 'dry' : 'flying';
}

/** How often the days around that one ask for a round. */
export function roundReason(rules: RuleValues, day: Day): string {
  const phase = phaseOn(rules, day);
  return `Every ${roundOf(rules, phase).every} days ${phaseWords[phase]}.`;
}

/** The next round of each yard as a task; those after it follow from the day on which it is made. */
export function roundTasks(facts: WorkFacts, pace: OwnPace): WorkTask[] {
  const { today, until, rules } = facts;
  return yardRounds(facts).flatMap(({ yard, colonies }): WorkTask[] => {
    const [first] = colonies;
    if (first === undefined || first.due > until) return [];
    const on = first.due < today ? today : first.due;
    const phase = phaseOn(rules, on);
    const { every, each } = roundOf(rules, phase);
    const earliest = addDays(first.due, -Math.floor(every / 2));
    return [{
      key: roundKey(yard.id), source: 'round', what: roundWords(rules, on),
      reason: first.due < today ? sinceWhen(colonies, today, `a round is due every ${every} days ${phaseWords[phase]}`) : `Every ${every} days ${phaseWords[phase]}; the colony seen longest ago is due again.`, yard: yard.id,
      colonies: colonies.map(({ state }) => ({ id: state.id, label: state.label })), earliest: earliest < today ? today : earliest, latest: first.due, overdue: first.due < today, grave: numberRule(rules, 'work.grave.season'),
      ...minutesFor(each, colonies.length, pace), people: 1, weather: roundWeather(rules, on), bring: [], after: null,
      sources: sourcesOf([`work.rounds.${phase}`, `work.minutes.${phase === 'buildUp' || phase === 'late' ? 'round' : phase}`], rules),
    }];
  });
}

/** What makes a round overdue: since when nobody was seen, or how many of the colonies wait and when those were seen. */
function sinceWhen(colonies: YardRound['colonies'], today: Day, rule: string): string {
  const waiting = colonies.filter(({ due }) => due < today);
  const seen = waiting.map((one) => one.seen).toSorted();
  const [first = today, last = today] = [seen[0], seen.at(-1)];
  const told = `as far as the record tells; ${rule}.`;
  if (waiting.length === colonies.length && last < (waiting[0]?.due ?? today)) return `No colony here has been seen since ${dayInWords(last)}, ${told}`;
  const many = waiting.length < colonies.length ? `${waiting.length} of ${colonies.length} colonies` : waiting.length === 2 ? 'Both colonies' : `All ${waiting.length} colonies`;
  const when = first === last ? `on ${dayInWords(first)}` : `between ${dayInWords(first)} and ${dayInWords(last)}`;
  return `${many} ${waiting.length === 1 ? 'is' : 'are'} overdue, seen last ${when}, ${told}`;
}

const roundMark = 'round|';

export function roundKey(yard: number): string {
  return `${roundMark}${yard}`;
}

export function isRound(key: string): boolean {
  return key.startsWith(roundMark);
}

/** The yard that a round is of; null for any other task. */
export function roundYard(key: string): YardId | null {
  const yard = isRound(key) ? Number(key.slice(roundMark.length)) : Number.NaN;
  return Number.isInteger(yard) ? (yard as YardId) : null;
}

function lastSeen({ looks, start, miteCounts, storesWeights }: ColonyState, today: Day): Day {
  return [...looks, ...miteCounts, ...storesWeights].reduce((last, { day }) => (day > last && day <= today ? day : last), start);
}
