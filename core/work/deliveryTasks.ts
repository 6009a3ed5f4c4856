import type { YardId } from '#shared/brands.ts';
import type { PlacedOrder } from '#shared/contract/placed.ts';
import type { WorkTask } from '#shared/contract/work.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { counted } from '#shared/figures.ts';
import { countedItems, oneItem } from '#shared/itemWords.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { asWritten, minutesFor, type OwnPace } from './ownMinutes.ts';
import { sourcesOf } from './seasonTasks.ts';
import type { WorkFacts } from './workFacts.ts';

/** Minutes for taking over equipment or queens at home. */
const takingOver = 20;

/**
 * Bees that were ordered and are on their way: hived on a day of their delivery, then the chain that follows from it,
 * which moves with the day they are hived on. Where they go is not on the order, so the yard with the most room is taken.
 */
export function deliveryTasks(facts: WorkFacts, pace: OwnPace): WorkTask[] {
  const { today, until, awaited, rules } = facts;
  return awaited.flatMap((order): WorkTask[] => {
    const [from, by] = [order.delivery[0] ?? order.delivery[1], order.delivery[1] ?? order.delivery[0]];
    if (from === null || by === null || by < today || from > until) return [];
    const key = `delivery|${order.entry}`;
    const bees = order.kind === 'package' || order.kind === 'nuc' || order.kind === 'colony';
    const yard = bees ? roomiest(facts) : null;
    if (yard === null) return [{ ...frame(order, from, by, rules), key, what: `Take over ${thing(order)}`, yard: null, ...asWritten(takingOver), sources: [] }];
    const minutes = order.kind === 'package' ? 'work.minutes.unpack' : 'work.minutes.nuc';
    const hive: WorkTask = {
      ...frame(order, from, by, rules), key, what: order.kind === 'package' ? `Hive ${counted(order.left, 'package', 'packages')}` : `Put ${thing(order)} in ${order.left === 1 ? 'its place' : 'their places'}`,
      reason: `${order.sentence} ${yard.name} has the most room for them.`, yard: yard.id, ...minutesFor(numberRule(rules, minutes), order.left, pace), weather: 'dry', sources: sourcesOf([minutes], rules),
      bring: [{ item: order.item, count: order.left }, ...(order.kind === 'colony' ? [] : [{ item: 'hive with frames', count: order.left }, { item: 'feeder', count: order.left }])],
    };
    const check = (step: string, what: string, keys: readonly [string, string], after: string): WorkTask => ({
      ...hive, key: `${key}|${step}`, what, reason: 'So many days after they are hived.', bring: [], weather: 'flying', ...minutesFor(numberRule(rules, 'work.minutes.check'), order.left, pace),
      after: { key: after, from: numberRule(rules, keys[0]), by: Math.max(numberRule(rules, keys[0]), numberRule(rules, keys[1])) }, sources: sourcesOf([...keys, 'work.minutes.check'], rules),
    });
    if (order.kind !== 'package') return [hive];
    return [
      hive,
      check('cage', 'See that the queens are out of their cages', ['queens.cage.outFrom', 'queens.cage.outBy'], key),
      check('eggs', 'Look for eggs of the new queens', ['attention.newQueen.from', 'attention.newQueen.by'], key),
    ];
  });
}

function thing({ item, left }: PlacedOrder): string {
  return countedItems(left, oneItem(item));
}

function frame(order: PlacedOrder, from: Day, by: Day, rules: RuleValues): Omit<WorkTask, 'key' | 'what' | 'yard' | 'minutes' | 'minutesReason' | 'sources'> {
  return {
    source: 'delivery', reason: `${order.sentence} Due ${dayInWords(from)}${by === from ? '' : ` to ${dayInWords(by)}`}.`, colonies: [], earliest: from, latest: by < from ? from : by, overdue: false,
    grave: numberRule(rules, 'work.grave.delivery'), people: 1, weather: 'any', bring: [{ item: order.item, count: order.left }], after: null,
  };
}

function roomiest({ today, states, yards }: WorkFacts): { id: YardId; name: string } | null {
  const rooms = yards.flatMap(({ id, name, room, minutes }) => {
    if (room === null || minutes === null) return [];
    return [{ id, name, free: room - states.filter((state) => aliveOn(state, today) && yardOn(state, today) === id).length }];
  });
  return rooms.toSorted((a, b) => b.free - a.free || a.id - b.id)[0] ?? null;
}
