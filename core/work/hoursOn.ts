import type { WorkHours } from '#shared/contract/work.ts';
import type { WorkDay } from '#shared/contract/workDays.ts';
import { addDays, type Day } from '#shared/days.ts';
import { daylightOn } from './daylight.ts';
import { goingOn } from './goingOn.ts';
import { slotOn } from './workHours.ts';

/** What hours there are on each of some days; a stretch that sees no daylight is good for nothing at the hives. */
export function hoursOn(hours: WorkHours, from: Day, until: Day): WorkDay[] {
  const days: WorkDay[] = [];
  for (let day = from; day <= until; day = addDays(day, 1)) {
    const light = daylightOn(day, hours.place);
    const slots = goingOn(hours, day);
    const lit = light === null ? [] : slots.filter((slot) => slot.from < light.sunset && slot.until > light.sunrise);
    const own = hours.people.flatMap((person) => slotOn(person, day) ?? []);
    days.push({ day, all: own.reduce((sum, slot) => sum + slot.until - slot.from, 0), have: lit.reduce((sum, slot) => sum + slot.until - slot.from, 0), dark: slots.length > 0 && lit.length === 0, unled: slots.length === 0 && own.length > 0 });
  }
  return days;
}
