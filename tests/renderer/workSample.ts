import type { WorkHours } from '#shared/contract/work.ts';
import { day } from '#shared/days.ts';

const evening = { from: 1050, until: 1200 };

/** Two people, one with a day that is otherwise. */
export const hoursForPeople: WorkHours = {
  people: [
    { name: 'Keeper', week: [evening, evening, null, evening, null, { from: 480, until: 960 }, null], alone: true, exceptions: [{ day: day('2026-12-24'), slot: null }, { day: day('2026-12-28'), slot: { from: 540, until: 960 } }] },
    { name: 'Helper', week: [null, null, null, null, null, { from: 480, until: 720 }, null], alone: false, exceptions: [] },
  ],
  place: { latitude: 44.5, longitude: -92, zone: 'America/Chicago' },
};
