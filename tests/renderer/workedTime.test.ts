import { expect, test } from 'vitest';
import { milesDriven, readWorkedTime, workedTime } from '#renderer/screens/tonight/workedTime.ts';

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
  ['5-8pm', 3, '17:00 to 20:00'],
  ['5 to 8 pm', 3, '17:00 to 20:00'],
  ['17-20', 3, '17:00 to 20:00'],
  ['5.30pm-8', 2.5, '17:30 to 20:00'],
  ['9am-5', 8, '9:00 to 17:00'],
  ['10pm-1am', 3, '22:00 to 1:00'],
  ['9pm-1', 4, '21:00 to 1:00'],
  ['20-midnight', 4, '20:00 to 24:00'],
])('%s is %s h', (typed, hours, clock) => expect(workedTime(typed)).toEqual({ hours, clock }));

test.each(['two', '17:30-', '25:00-26:00', '17:75-18', '8-8', '', '8-9-10', '18-17', '20:00-15:00', '2 km', '-2 h', 'h', '8-5', '11-1', '2-3 h', '8pm-5pm'])('“%s” is no time worked', (typed) => expect(workedTime(typed)).toBeNull());

test.each([
  ['two', '“two” is no number of hours. Type it like 1.5, 90 min or 17:30-20, or leave it empty.'],
  ['17:75-18', '“17:75-18” cannot be read: “17:75” is no time of the day. Type it like 17:30 or 5:30 pm.'],
  ['18-17', '“18-17” ends before it begins. Turn it round, or type it like 17:30-20 or 5:30-8 pm.'],
  ['2-3 h', '“2-3 h” may be times or a number of hours. Type times like 14-15, or hours like 2.5.'],
])('“%s” is refused with what would mend it', (typed, sentence) => expect(readWorkedTime(typed)).toEqual({ ok: false, sentence }));

// 1 mile is 1.609344 km (NIST Handbook 44, appendix C, from memory).
test.each([['24', 24], ['24,5', 24.5], ['24 mi', 24], ['24.5 miles', 24.5], ['38 km', 23.6], ['far', null], ['3 h', null], ['-3 mi', null], ['', null]])('“%s” is %s miles', (typed, miles) => expect(milesDriven(typed)).toBe(miles));
