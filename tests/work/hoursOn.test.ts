import { expect, test } from 'vitest';
import { hoursOn } from '#core/work/hoursOn.ts';
import type { WorkSlot } from '#shared/contract/work.ts';
import { day } from '#shared/days.ts';
import { hoursForPeople } from '#tests/renderer/workSample.ts';

test('a day has the hours of all people on it, its exceptions first, and none that are dark from end to end', () => {
  const minutes = (from: string, until: string) => hoursOn(hoursForPeople, day(from), day(until)).map(({ have, dark }) => [have, dark]);
  // Monday to Sunday in June: evenings alone, Wednesday and Friday none, Saturday eight hours and a helper's four.
  expect(minutes('2026-06-01', '2026-06-07')).toEqual([[150, false], [150, false], [0, false], [150, false], [0, false], [720, false], [0, false]]);
  // In late December the sun is down before half past five; the 28th is a Monday written down otherwise.
  expect(minutes('2026-12-21', '2026-12-22')).toEqual([[0, true], [0, true]]);
  expect(minutes('2026-12-24', '2026-12-24')).toEqual([[0, false]]);
  expect(minutes('2026-12-28', '2026-12-28')).toEqual([[420, false]]);
  expect(minutes('2026-12-28', '2026-12-27')).toEqual([]);
  // At home the dark is no hindrance.
  expect(hoursOn(hoursForPeople, day('2026-12-21'), day('2026-12-26')).map(({ all }) => all)).toEqual([150, 150, 0, 0, 0, 720]);
});

test('somebody who does not go alone has hours only while another is there to go with', () => {
  const [keeper, helper] = hoursForPeople.people;
  const withHelper = (slot: WorkSlot | null, own: WorkSlot | null) => ({ ...hoursForPeople, people: [{ ...keeper!, week: Array.from({ length: 7 }, () => own) }, { ...helper!, week: Array.from({ length: 7 }, () => slot) }] });
  const on = (slot: WorkSlot | null, own: WorkSlot | null) => hoursOn(withHelper(slot, own), day('2026-06-01'), day('2026-06-01')).map(({ have, dark, unled }) => [have, dark, unled]);
  const morning = { from: 480, until: 720 };
  expect(on(morning, null)).toEqual([[0, false, true]]);
  expect(on(morning, { from: 600, until: 900 })).toEqual([[300 + 120, false, false]]);
  // Less than an hour together is no outing for two, as in the plan.
  expect(on(morning, { from: 690, until: 900 })).toEqual([[210, false, false]]);
  expect(on(null, null)).toEqual([[0, false, false]]);
});

test('each day is there once when the clocks change', () => {
  for (const zone of ['America/Chicago', 'Europe/Berlin', 'Pacific/Kiritimati', 'Pacific/Pago_Pago']) {
    const days = hoursOn({ ...hoursForPeople, place: { latitude: 44.5, longitude: -92, zone } }, day('2026-03-01'), day('2026-04-05'));
    expect(days.map((one) => one.day)).toEqual([...new Set(days.map((one) => one.day))]);
    expect(days).toHaveLength(36);
  }
});
