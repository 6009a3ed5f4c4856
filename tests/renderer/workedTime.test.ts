import { expect, test } from 'vitest';
import { workedTime } from '#renderer/screens/tonight/workedTime.ts';

test.each([
  ['2.5', 2.5, null],
  ['1,5', 1.5, null],
  ['17:30-20:15', 2.75, '17:30 to 20:15'],
  ['1730-2015', 2.75, '17:30 to 20:15'],
  ['17.30 – 20', 2.5, '17:30 to 20:00'],
  ['5 to 7', 2, '5:00 to 7:00'],
  ['22:30-0:30', 2, '22:30 to 0:30'],
  ['8:00 until 8:10', 0.17, '8:00 to 8:10'],
])('%s is %s h', (typed, hours, clock) => expect(workedTime(typed)).toEqual({ hours, clock }));

test.each(['two', '17:30-', '25:00-26:00', '17:75-18', '8-8', '', '8-9-10', '18-17', '20:00-15:00'])('“%s” is no time worked', (typed) => expect(workedTime(typed)).toBeNull());
