import type { WorkHours, WorkSlot } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { slotOn } from './workHours.ts';

/** Shorter than this, two are not out together; as for the crews of the plan. */
const leastTogether = 60;

/** The stretches of a day in which each person can go out: those who go alone in all of theirs, the others in the longest that one of those shares. */
export function goingOn({ people }: Pick<WorkHours, 'people'>, day: Day): WorkSlot[] {
  const own = people.flatMap((person) => {
    const slot = slotOn(person, day);
    return slot === null ? [] : [{ alone: person.alone, slot }];
  });
  const leading = own.flatMap(({ alone, slot }) => (alone ? [slot] : []));
  return own.flatMap(({ alone, slot }) => {
    if (alone) return [slot];
    const shared = leading.map((lead) => ({ from: Math.max(lead.from, slot.from), until: Math.min(lead.until, slot.until) })).toSorted((a, b) => b.until - b.from - (a.until - a.from));
    return shared.filter(({ from, until }) => until - from >= leastTogether).slice(0, 1);
  });
}
