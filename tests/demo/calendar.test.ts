import { expect, test } from 'vitest';
import { addDays, day, dayNumber } from '#shared/days.ts';
import { dayIn, dayOfYear, dayText, saturday, saturdayFrom, seasonOfNumber, sunday, weekday } from '#core/demo/calendar.ts';

test('day numbers and day texts are each other\'s inverse from 1900 to 2100', () => {
  for (let number = dayNumber(day('1900-01-01')); number <= dayNumber(day('2100-12-31')); number += 1) {
    if (dayNumber(dayText(number)) !== number) expect(dayText(number)).toBe(number);
  }
  expect(dayText(dayIn(2024, 2, 28) + 1)).toBe('2024-02-29');
  expect(dayText(dayIn(2024, 12, 31) + 1)).toBe(addDays(day('2024-12-31'), 1));
});

test('weekdays, days of the year and seasons are the calendar\'s', () => {
  // 25 November 2026 is a Wednesday, 4 July 2026 a Saturday.
  expect(weekday(dayIn(2026, 11, 25))).toBe(2);
  expect(weekday(dayIn(2026, 7, 4))).toBe(saturday);
  expect(weekday(dayIn(2026, 7, 5))).toBe(sunday);
  expect(weekday(-1)).toBe(2);
  expect(saturdayFrom(dayIn(2026, 7, 5))).toBe(dayIn(2026, 7, 11));
  expect(dayOfYear(dayIn(2024, 12, 31))).toBe(365);
  expect([seasonOfNumber(dayIn(2026, 3, 31)), seasonOfNumber(dayIn(2026, 4, 1))]).toEqual([2025, 2026]);
});
