import type { YardDue } from '#shared/contract/due.ts';
import type { OrderDeadline, PlacedOrder } from '#shared/contract/placed.ts';
import type { WorkPlan } from '#shared/contract/work.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { loadLines } from '#shared/loadWords.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import type { CalendarItem } from './calendarItem.ts';

/** The visits of a plan from today on, one for each yard and day. */
export function visitItems(plan: WorkPlan | null, yards: readonly Yard[], today: Day): CalendarItem[] {
  return (plan?.outings ?? []).filter(({ day }) => day >= today).flatMap(({ day, leave, back, people, visits, bring }) =>
    visits.map(({ yard: id, arrive, leave: go, tasks }): CalendarItem => {
      const yard = yards.find((one) => one.id === id);
      const name = yard?.name ?? `yard ${id}`;
      return {
        kind: 'visit', key: `visit ${id} ${day} ${arrive}`, line: `visit ${id}`, first: day, last: day,
        time: { from: arrive, minutes: Math.max(1, go - arrive) },
        summary: `${name}: ${tasks.length === 0 ? 'visit' : [...new Set(tasks.map(({ what }) => what))].join('; ')}`,
        description: [
          ...tasks.map(({ what, colonies, of }) => `${what}${of === 0 ? '' : colonies === of ? ` (${of} ${of === 1 ? 'colony' : 'colonies'})` : ` (${colonies} of ${of} colonies)`}`),
          `Leave home ${clockText(leave)}, back ${clockText(back)}; ${people.join(', ')}.`,
          ...(bring.length === 0 ? [] : [`Load: ${loadLines(bring).join(', ')}.`]),
        ].join('\n'),
        location: name,
      };
    }),
  );
}

/** What is open in a yard, from its first day to its last. */
export function dueItems(yard: Yard, dues: readonly YardDue[]): CalendarItem[] {
  const items = dues.map((due): CalendarItem => ({
    kind: 'due', key: `due ${yard.id} ${due.rule} ${due.what} ${due.earliest} ${due.latest} ${due.reason}`, line: `due ${yard.id} ${due.rule} ${due.what}`, first: due.earliest, last: due.latest, time: null,
    summary: `${yard.name}: ${due.what}`,
    description: [due.reason, ...(due.colonies.length === 0 ? [] : [`Colonies: ${due.colonies.map(({ label }) => label).join(', ')}.`])].join('\n'),
    location: yard.name,
  }));
  return onePerKey(items);
}

export function deadlineItems(deadlines: readonly OrderDeadline[]): CalendarItem[] {
  return onePerKey(deadlines.map(({ seller, orderBy, what }): CalendarItem => ({
    kind: 'deadline', key: `deadline ${seller} ${orderBy} ${what}`, line: null, first: orderBy, last: orderBy, time: null,
    summary: `Last day to order from ${seller}`, description: `${what.charAt(0).toUpperCase()}${what.slice(1)} from ${seller}: order by ${dayInWords(orderBy)}.`, location: null,
  })));
}

/** Orders still on their way, on the days they are promised for; one without a day cannot stand in a calendar. */
export function deliveryItems(orders: readonly PlacedOrder[]): CalendarItem[] {
  return orders.flatMap(({ entry, seller, item, left, awaited, delivery: [from, until] }): CalendarItem[] => {
    const [first, last] = [from ?? until, until ?? from];
    if (!awaited || left <= 0 || first === null || last === null) return [];
    return [{
      kind: 'delivery', key: `delivery ${entry}`, line: null, first, last: last < first ? first : last, time: null,
      summary: `Delivery: ${left} × ${item}${seller === null ? '' : ` from ${seller}`}`, description: null, location: null,
    }];
  });
}

/** "17:30" */
export function clockText(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.round(minutes) % 60).padStart(2, '0')}`;
}

function onePerKey(items: readonly CalendarItem[]): CalendarItem[] {
  return [...new Map(items.map((item) => [item.key, item])).values()];
}
