import type { YardId } from '#shared/brands.ts';
import type { MoveDay } from '#shared/contract/moveDays.ts';
import type { Day } from '#shared/days.ts';
import { dayWithWeekday } from '../../parts/format.ts';
import { spell } from './planWeeks.ts';
import { words } from './words.ts';

/** Minutes by which a visit’s work has too little room on a day; none or less where it has room. */
export function shortOf({ room, taken, kept, work, together }: MoveDay): number {
  return work - (room - (together ? taken : kept));
}

/** The room is what is left with the way there too, so what is planned already may be more. */
const fillOf = (taken: number, room: number) => (taken < room ? words.dayPart(spell(taken), spell(room)) : words.dayFull(spell(room)));

/** What is said of a day to which a visit can go: how full it is, and whether the visit’s work has room. */
export function moveDayText(there: MoveDay, nameOf: (yard: YardId) => string): string {
  const { day, room, taken, kept, beside, together, elsewhere, forbidden } = there;
  const names = (yards: readonly YardId[]) => yards.map(nameOf).join(', ');
  const staying = beside.filter((yard) => !elsewhere.includes(yard));
  const fill = beside.length === 0 ? words.dayFree(spell(room)) : together ? words.dayBeside(names(beside), fillOf(taken, room)) : staying.length === 0 ? words.dayInstead(names(elsewhere), spell(room)) : words.dayBoth(names(staying), fillOf(kept, room), names(elsewhere));
  const short = shortOf(there);
  return [`${dayWithWeekday(day)}: ${fill}`, ...(short > 0.5 ? [words.dayShort(spell(short))] : []), ...(forbidden ? [words.dayForbidden] : [])].join('; ');
}

/** The day that is proposed: the next one after the visit’s own on which its work has room, else the next, else the first. */
export function usualMove(days: readonly MoveDay[], from: Day): Day | null {
  const later = days.filter(({ day, forbidden }) => day > from && !forbidden);
  return (later.find(({ room, taken, work, together }) => together && room - taken >= work) ?? later[0] ?? days[0])?.day ?? null;
}
