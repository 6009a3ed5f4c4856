import { Temporal } from 'temporal-polyfill';
import type { WorkPlace } from '#shared/contract/work.ts';
import { dayNumber, yearOf, type Day } from '#shared/days.ts';

/** Minutes of the clock on that day; a sun that never sets gives 0 and 1440, one that never rises null. */
export interface Daylight {
  readonly sunrise: number;
  readonly sunset: number;
}

/**
 * Sunrise and sunset by the general solar position calculations of the NOAA Global Monitoring Division: Fourier series for the
 * equation of time and the sun’s declination, and a zenith of 90.833 degrees for refraction and the sun’s disk. Good
 * to a few minutes between the polar circles. The clock of the place, with its changes, comes from the time zone’s rules.
 */
export function daylightOn(day: Day, { latitude, longitude, zone }: WorkPlace): Daylight | null {
  const year = yearOf(day);
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const dayOfYear = dayNumber(day) - dayNumber(`${day.slice(0, 4)}-01-01` as Day) + 1;
  const turn = ((2 * Math.PI) / (leap ? 366 : 365)) * (dayOfYear - 1);
  const equation = 229.18 * (0.000075 + 0.001868 * Math.cos(turn) - 0.032077 * Math.sin(turn) - 0.014615 * Math.cos(2 * turn) - 0.040849 * Math.sin(2 * turn));
  const declination = 0.006918 - 0.399912 * Math.cos(turn) + 0.070257 * Math.sin(turn) - 0.006758 * Math.cos(2 * turn) + 0.000907 * Math.sin(2 * turn) - 0.002697 * Math.cos(3 * turn) + 0.00148 * Math.sin(3 * turn);
  const radians = (latitude * Math.PI) / 180;
  const cosine = Math.cos((90.833 * Math.PI) / 180) / (Math.cos(radians) * Math.cos(declination)) - Math.tan(radians) * Math.tan(declination);
  if (cosine >= 1) return null;
  if (cosine <= -1) return { sunrise: 0, sunset: 1440 };
  const angle = (Math.acos(cosine) * 180) / Math.PI;
  const noon = 720 - 4 * longitude - equation + offsetMinutes(day, zone);
  return { sunrise: clamp(noon - 4 * angle), sunset: clamp(noon + 4 * angle) };
}

/** Minutes by which the clock of the zone is ahead of UTC at noon of that day, hence after any change of the clock in the night. */
function offsetMinutes(day: Day, zone: string): number {
  return Temporal.PlainDate.from(day).toZonedDateTime({ timeZone: zone, plainTime: '12:00' }).offsetNanoseconds / 60e9;
}

/** True for a name that the time zone rules know. */
export function knownZone(zone: string): boolean {
  try {
    Temporal.PlainDate.from('2025-01-01').toZonedDateTime(zone);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function clamp(minutes: number): number {
  return Math.max(0, Math.min(1440, Math.round(minutes)));
}
