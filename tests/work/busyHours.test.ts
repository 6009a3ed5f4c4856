import { expect, test } from 'vitest';
import { lessBusy } from '#core/work/busyHours.ts';
import { slotOn } from '#core/work/workHours.ts';
import type { WorkHours } from '#shared/contract/work.ts';
import { day } from '#shared/days.ts';

const evening = { from: 17 * 60, until: 20 * 60 };
const hours: WorkHours = {
  people: [
    { name: 'A', week: [evening, evening, evening, evening, evening, { from: 480, until: 960 }, null], alone: true, exceptions: [{ day: day('2026-12-01'), slot: { from: 600, until: 720 } }] },
    { name: 'B', week: [evening, null, null, null, null, null, null], alone: false, exceptions: [] },
  ],
  place: { latitude: 44, longitude: -92, zone: 'America/Chicago' },
};
const span = (on: string, from: number | null, until: number | null) => ({ day: day(on), from, until, what: 'x' });
const left = (person: number, on: string, ...spans: ReturnType<typeof span>[]) => slotOn(lessBusy(hours, [{ person: 'A', spans }]).people[person]!, day(on));

test('taken time goes off the hours of that person on that day', () => {
  // 30 November 2026 is a Monday.
  expect(left(0, '2026-11-30', span('2026-11-30', null, null))).toBeNull();
  expect(left(0, '2026-11-30', span('2026-11-30', 9 * 60, 17 * 60 + 30))).toEqual({ from: 17 * 60 + 30, until: 20 * 60 });
  expect(left(0, '2026-11-30', span('2026-11-30', 19 * 60, 23 * 60))).toEqual({ from: 17 * 60, until: 19 * 60 });
  expect(left(0, '2026-12-05', span('2026-12-05', 600, 660), span('2026-12-05', 630, 720))).toEqual({ from: 720, until: 960 });
  expect(left(0, '2026-11-30', span('2026-11-30', 0, 17 * 60), span('2026-11-30', 20 * 60, 1440))).toEqual(evening);
  expect(left(1, '2026-11-30', span('2026-11-30', null, null))).toEqual(evening);
});

test('what was written down for that very day stands', () => {
  expect(left(0, '2026-12-01', span('2026-12-01', null, null))).toEqual({ from: 600, until: 720 });
});
