import type { YardId } from '#shared/brands.ts';
import type { MoveDay } from '#shared/contract/moveDays.ts';
import type { Day } from '#shared/days.ts';
import { dayWithWeekday } from '../../parts/format.ts';
import { spell } from './planWeeks.ts';
import { words } from './words.ts';

/** What is said of a day to which a visit can go: how full it is, and whether the visit’s work has room. */
export function moveDayText({ day, room, taken, work, beside, together, forbidden }: MoveDay, nameOf: (yard: YardId) => string): string {
  const names = beside.map(nameOf).join(', ');
  const fill = beside.length === 0 ? words.dayFree(spell(room)) : together ? words.dayBeside(names, spell(taken), spell(room)) : words.dayInstead(names, spell(room));
  const short = work - (room - (together ? taken : 0));
  return [`${dayWithWeekday(day)}: ${fill}`, ...(short > 0.5 ? [words.dayShort(spell(short))] : []), ...(forbidden ? [words.dayForbidden] : [])].join('; ');
}

/** The day that is proposed: the next one after the visit’s own on which its work has room, else the next, else the first. */
export function usualMove(days: readonly MoveDay[], from: Day): Day | null {
  const later = days.filter(({ day, forbidden }) => day > from && !forbidden);
  return (later.find(({ room, taken, work, together }) => together && room - taken >= work) ?? later[0] ?? days[0])?.day ?? null;
}
