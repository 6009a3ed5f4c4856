import { expect, test } from 'vitest';
import { milesDriven, workedTime } from '#renderer/screens/tonight/workedTime.ts';

test.each([
  ['2.5', 2.5, null],
  ['1,5', 1.5, null],
  ['2.5 h', 2.5, null],
  ['1,5 hours', 1.5, null],
  ['90 min', 1.5, null],
  ['100 minutes', 1.67, null],
  ['17:30-20:15', 2.75, '17:30 to 20:15'],
  ['1730-2015', 2.75, '17:30 to 20:15'],
  ['17.30 – 20', 2.5, '17:30 to 20:00'],
  ['5 to 7', 2, '5:00 to 7:00'],
  ['22:30-0:30', 2, '22:30 to 0:30'],
  ['8:00 until 8:10', 0.17, '8:00 to 8:10'],
])('%s is %s h', (typed, hours, clock) => expect(workedTime(typed)).toEqual({ hours, clock }));

test.each(['two', '17:30-', '25:00-26:00', '17:75-18', '8-8', '', '8-9-10', '18-17', '20:00-15:00', '2 km', '-2 h', 'h'])('“%s” is no time worked', (typed) => expect(workedTime(typed)).toBeNull());

// 1 mile is 1.609344 km (NIST Handbook 44, appendix C, from memory).
test.each([['24', 24], ['24,5', 24.5], ['24 mi', 24], ['24.5 miles', 24.5], ['38 km', 23.6], ['far', null], ['3 h', null], ['-3 mi', null], ['', null]])('“%s” is %s miles', (typed, miles) => expect(milesDriven(typed)).toBe(miles));
