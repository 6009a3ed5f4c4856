import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { daylightOn } from '#core/work/daylight.ts';
import { numberRule } from '#core/rules/houseRules.ts';

// The example that the solar calculation sheet of the NOAA Global Monitoring Division opens with: 40 N, 105 W, 21 June 2010,
// sunrise about 5:32 and sunset about 20:32 daylight time (from memory).
test('sunrise and sunset of the NOAA sheet’s own example', () => {
  const light = daylightOn(day('2010-06-21'), { latitude: 40, longitude: -105, zone: 'America/Denver' });
  expect(Math.abs((light?.sunrise ?? 0) - (5 * 60 + 32))).toBeLessThanOrEqual(3);
  expect(Math.abs((light?.sunset ?? 0) - (20 * 60 + 32))).toBeLessThanOrEqual(3);
});

test('days of a change of the clock, of midnight sun and of polar night', () => {
  const chicago = { latitude: 44, longitude: -92, zone: 'America/Chicago' };
  const [before, after] = [daylightOn(day('2026-03-07'), chicago), daylightOn(day('2026-03-08'), chicago)];
  expect((after?.sunset ?? 0) - (before?.sunset ?? 0)).toBeGreaterThanOrEqual(60);
  expect((after?.sunset ?? 0) - (before?.sunset ?? 0)).toBeLessThanOrEqual(63);
  expect(daylightOn(day('2026-06-21'), { latitude: 75, longitude: 20, zone: 'Europe/Oslo' })).toEqual({ sunrise: 0, sunset: 1440 });
  expect(daylightOn(day('2026-12-21'), { latitude: 75, longitude: 20, zone: 'Europe/Oslo' })).toBeNull();
});

// Time commitment of beekeeping by operation size (docslib.org/doc/5575782, read): a sideline round takes up to 50 h for 250 colonies.
test('a round of 250 colonies takes 50 hours, and one of 80 takes 16', () => {
  const each = numberRule(new Map(), 'work.minutes.round');
  expect((250 * each) / 60).toBe(50);
  expect((80 * each) / 60).toBe(16);
});
