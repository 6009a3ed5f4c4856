import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Need, NeedKey } from '#shared/contract/needs.ts';
import type { TripOuting, TripStop, TripTask } from '#shared/contract/trips.ts';
import type { Outing, PlannedTask, PlannedVisit, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { loadLines } from '#shared/loadWords.ts';
import { coloniesByTurn, turnKey } from '#shared/visitColonies.ts';
import { needRuleOf } from '#core/attention/needs/needRules.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { sheetColonies } from '#core/lineage/sheetColonies.ts';
import { phaseOn } from './roundPhases.ts';
import { isRound, roundReason, roundWeather } from './roundTasks.ts';
import { needOf } from './taskSheets.ts';
import type { WorkFacts } from './workFacts.ts';

/** What is asked of a yard as a whole, and so of every colony there. */
const ofWholeYard: ReadonlySet<NeedKey> = new Set<NeedKey>(['mitesOver', 'winterList']);

/** Done in so many colonies of the yard, whichever they are. */
const anyOfYard: ReadonlySet<NeedKey> = new Set<NeedKey>(['mitesCount', 'miteRecount']);

/** What may be wanted, as the look will tell; nobody can say how many. */
const spares: Readonly<Partial<Record<NeedKey, string>>> = {
  swarmCellsLook: 'a hive or nuc box for a split', swarmRisk: 'a hive or nuc box for a split', noEggs: 'a mated queen, or newspaper to unite with', queenlessLaying: 'a mated queen, or newspaper to unite with',
  storesAutumn: 'feeders, for hives that have none', harvest: 'lids or cloths over what is taken off', supersOff: 'lids or cloths over what is taken off',
};
const roundSpares = { winter: 'fondant, for hives that are light', swarm: 'a hive or nuc box for a split', buildUp: null, flow: null, late: null } as const;

export interface TripFacts extends Pick<WorkFacts, 'today' | 'states' | 'yards' | 'rules' | 'needs'> {
  readonly plan: WorkPlan;
  readonly tasks: readonly WorkTask[];
  readonly stands: ReadonlyMap<YardId, readonly ColonyId[]>;
}

/** The trips of a day as they are driven: what to load, and at each yard what to do with which colonies, in the order of the yard’s round sheet. */
export function tripSheet(facts: TripFacts, day: Day): (Omit<TripOuting, 'stops'> & { readonly stops: Omit<TripStop, 'sheet'>[] })[] {
  const tasks = new Map(facts.tasks.map((task) => [task.key, task]));
  const turns = coloniesByTurn(facts.plan, tasks, facts.today);
  return facts.plan.outings.filter((outing) => outing.day === day).map((outing) => ({
    leave: outing.leave, back: outing.back, driving: outing.driving, people: outing.people, weather: weatherOf(outing, tasks, facts), load: loadLines(outing.bring), ...carefully(outing, facts),
    stops: outing.visits.map((visit) => stopOf(visit, day, facts, tasks, turns)),
  }));
}

/** The most that any of the work asks; a winter round only looks under the lids. */
function weatherOf({ day, visits, weather }: Outing, tasks: ReadonlyMap<string, WorkTask>, { rules }: TripFacts): Outing['weather'] {
  const wants = visits.flatMap((visit) => visit.tasks.map(({ key }) => (isRound(key) ? roundWeather(rules, day) : (tasks.get(key)?.weather ?? weather))));
  return wants.includes('flying') ? 'flying' : wants.includes('dry') ? 'dry' : 'any';
}

function carefully({ day, visits }: Outing, { rules }: TripFacts): Pick<TripOuting, 'inCase' | 'cautions'> {
  const keys = visits.flatMap(({ tasks }) => tasks.map(({ key }) => key));
  const needs = keys.flatMap((key) => needOf(key) ?? []);
  const round = keys.some(isRound) ? roundSpares[phaseOn(rules, day)] : null;
  return { inCase: [...new Set([...needs.flatMap((rule) => spares[rule] ?? []), ...(round === null ? [] : [round])])], cautions: [...new Set(needs.flatMap((rule) => needRuleOf(rule).caution ?? []))] };
}

function stopOf({ yard: id, arrive, leave, tasks: planned }: PlannedVisit, day: Day, facts: TripFacts, tasks: ReadonlyMap<string, WorkTask>, turns: ReadonlyMap<string, WorkTask['colonies']>): Omit<TripStop, 'sheet'> {
  const yard = facts.yards.find((one) => one.id === id);
  const here = sheetColonies(facts.states, facts.stands, id, day).map((state) => ({ id: state.id, label: state.label }));
  return {
    yard: { id, code: yard?.code ?? '', name: yard?.name ?? '' }, arrive, leave, standing: here.length,
    tasks: planned.map((one) => taskOf(one, tasks.get(one.key), turns.get(turnKey(day, one.key)), here, day, facts)),
  };
}

function taskOf({ key, what, minutes, colonies: count, of }: PlannedTask, task: WorkTask | undefined, turn: WorkTask['colonies'] | undefined, here: WorkTask['colonies'], day: Day, facts: TripFacts): TripTask {
  const rule = needOf(key);
  const asked = rule === null ? [] : facts.needs.filter((need) => need.rule === rule);
  const yardNeed = of > 0 ? undefined : asked.find((need) => `need|${need.key}` === key);
  const among = (rule !== null && anyOfYard.has(rule) ? yardNeed?.detail : null) ?? null;
  const place = new Map(here.map(({ id }, at) => [id, at]));
  const all = of === 0 && rule !== null && ofWholeYard.has(rule);
  const named = (all ? here : (turn ?? task?.colonies ?? [])).toSorted((a, b) => (place.get(a.id) ?? here.length) - (place.get(b.id) ?? here.length));
  const colonies = named.map(({ id, label }) => {
    const ended = endOf(facts, id);
    return { id, label, detail: ended === null ? detailOf(asked, what, id) : null, ended };
  });
  return {
    key, what, minutes, reason: isRound(key) ? roundReason(facts.rules, day) : [task?.reason ?? '', among === null && yardNeed?.detail ? `${yardNeed.detail}.` : ''].filter(Boolean).join(' '), among, colonies, count: all ? here.length : count, of: all ? here.length : of,
    whole: all || (of > 0 && colonies.length === here.length && here.length > 0 && colonies.every(({ id }) => place.has(id))), known: all || turn !== undefined || count === of,
  };
}

/** What its own record says of why, where the colony is one of several that need the same. */
function detailOf(asked: readonly Need[], what: string, id: ColonyId): string | null {
  return asked.find(({ act, colony }) => act === what && colony?.id === id)?.detail ?? null;
}

function endOf({ states, today }: TripFacts, id: ColonyId): TripTask['colonies'][number]['ended'] {
  const state = states.find((one) => one.id === id);
  return state === undefined || state.end === null || aliveOn(state, today) ? null : { day: state.end, how: state.how === 'absconded' ? 'left' : 'died' };
}
