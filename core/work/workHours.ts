import type { WorkHours, WorkPlace, WorkSlot, Worker } from '#shared/contract/work.ts';
import { dayNumber, dayInWords, type Day } from '#shared/days.ts';
import { knownZone } from './daylight.ts';

const evening: WorkSlot = { from: 18 * 60, until: 20 * 60 };
const saturday: WorkSlot = { from: 8 * 60, until: 16 * 60 };

/** Until somebody writes down other hours: ten hours of evenings and a Saturday, alone, at 44 degrees north. House choice. */
export const houseHours: WorkHours = {
  people: [{ name: 'You', week: [evening, evening, evening, evening, evening, saturday, null], alone: true, exceptions: [] }],
  place: { latitude: 44, longitude: -92, zone: 'America/Chicago' },
};

/** 0 Monday to 6 Sunday; day 0, 1 January 1970, was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((dayNumber(day) + 3) % 7) + 7) % 7;
}

export function slotOn({ week, exceptions }: Worker, day: Day): WorkSlot | null {
  const own = exceptions.find((one) => one.day === day);
  return own === undefined ? (week[weekdayOf(day)] ?? null) : own.slot;
}

/** What is wrong with hours as they were written down, or null. */
export function hoursTrouble({ people, place }: WorkHours): { sentence: string; mend: string; field: string } | null {
  const names = people.map(({ name }) => name.toLowerCase());
  const twice = people.find(({ name }, at) => names.indexOf(name.toLowerCase()) < at);
  if (twice !== undefined) return { sentence: `Two people are called ${twice.name}.`, mend: 'Give each a name of their own.', field: 'people' };
  if (!people.some(({ alone }) => alone)) return { sentence: 'Nobody may go to the bees alone, so no outing could start with one person.', mend: 'Say of one person at least that they go alone.', field: 'people' };
  for (const { name, exceptions } of people) {
    const days = exceptions.map(({ day }) => day);
    const again = days.find((day, at) => days.indexOf(day) < at);
    if (again !== undefined) return { sentence: `${dayInWords(again)} is written down twice for ${name}.`, mend: 'Keep one of the two lines.', field: 'people' };
  }
  return placeTrouble(place);
}

function placeTrouble({ zone }: WorkPlace): { sentence: string; mend: string; field: string } | null {
  return knownZone(zone) ? null : { sentence: `No time zone is called “${zone}”.`, mend: 'Write it as in “America/Chicago” or “Europe/Berlin”.', field: 'place.zone' };
}
