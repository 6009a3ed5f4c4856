import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readClock, readSpan } from '#shared/typedSpan.ts';

test.each([
  ['17:30', 1050], ['1730', 1050], ['17.30', 1050], ['17h30', 1050], ['17 h', 1020], ['8', 480], ['24', 1440], ['5pm', 1020], ['5:30 P.M.', 1050], ['5p', 1020], ['12 am', 0], ['12pm', 720], ['noon', 720], ['midnight', 1440],
  ['24:01', null], ['x', null], ['8:7', null], ['17 pm', null], ['0am', null], ['', null], ['530 min', null],
])('%s by the clock is %s', (typed, minutes) => expect(readClock(typed)).toBe(minutes));

const read = (typed: string, overnight = false) => {
  const found = readSpan(typed, { overnight });
  return found === null ? null : found.ok ? [found.from / 60, found.until / 60] : found.sentence;
};

test.each([
  ['18-20', 18, 20], ['17:30 to 20:15', 17.5, 20.25], ['17-20', 17, 20], ['17h-20h', 17, 20], ['1730 until 2000', 17.5, 20], ['17:30−20', 17.5, 20], ['17:30 – 20', 17.5, 20], ['from 5 to 7', 5, 7],
  ['5-8pm', 17, 20], ['5 to 8 pm', 17, 20], ['5.30-8 p.m.', 17.5, 20], ['5.30pm-8', 17.5, 20], ['5pm-8pm', 17, 20], ['5p-8p', 17, 20], ['5pm-20', 17, 20], ['17:30-8pm', 17.5, 20],
  ['9-5 pm', 9, 17], ['9am-5', 9, 17], ['9 am to 5 pm', 9, 17], ['11-1 pm', 11, 13], ['9am-12', 9, 12], ['10-12pm', 10, 12], ['9-noon', 9, 12], ['noon-5', 12, 17], ['20-midnight', 20, 24], ['0-6', 0, 6],
])('“%s” is from %s until %s', (typed, from, until) => {
  for (const overnight of [false, true]) expect(read(typed, overnight)).toEqual([from, until]);
});

test.each([['22:30-0:30', 22.5, 24.5], ['22-2', 22, 26], ['10pm-1am', 22, 25], ['9pm-1', 21, 25], ['8-5am', 20, 29], ['9-0:30', 9, 24.5]])('“%s” goes past midnight only where that may be', (typed, from, until) => {
  expect(read(typed, true)).toEqual([from, until]);
  expect(read(typed)).toMatch(/ends before it begins/);
});

test.each(['8', 'two', '', '2.5 h', '-2 h', '90 min', 'to 5'])('“%s” has no two times', (typed) => expect(read(typed)).toBeNull());

test.each([
  ['17:30-', '“17:30-” has only one time. Type from when until when, like 17:30-20 or 5:30-8 pm.'],
  ['8-9-10', '“8-9-10” has more than two times. Type one stretch, like 17:30-20 or 5:30-8 pm.'],
  ['25:00-26:00', '“25:00-26:00” cannot be read: “25:00” is no time of the day. Type it like 17:30 or 5:30 pm.'],
  ['17-late', '“17-late” cannot be read: “late” is no time of the day. Type it like 17:30 or 5:30 pm.'],
  ['8-8', '“8-8” ends when it begins. Type from when until when, like 17:30-20 or 5:30-8 pm.'],
  ['8-5', '“8-5” ends before it begins. Say which half of the day is meant, like 8 am-5 pm, or type 8-17.'],
  ['20-18', '“20-18” ends before it begins. Turn it round, or type it like 17:30-20 or 5:30-8 pm.'],
  ['8pm-5pm', '“8pm-5pm” ends before it begins. Turn it round, or type it like 17:30-20 or 5:30-8 pm.'],
  ['2-3 h', '“2-3 h” may be times or a number of hours. Type times like 14-15, or hours like 2.5.'],
])('“%s” says what would mend it', (typed, sentence) => expect(read(typed, true)).toBe(sentence));

test('what is typed by a clock of 24 hours is read as it stands, and by halves of the day the same', () => {
  const minute = fc.integer({ min: 0, max: 1439 });
  const by24 = (at: number) => `${Math.floor(at / 60)}:${String(at % 60).padStart(2, '0')}`;
  const by12 = (at: number) => `${Math.floor(at / 60) % 12 || 12}:${String(at % 60).padStart(2, '0')} ${at < 720 ? 'am' : 'pm'}`;
  fc.assert(fc.property(minute, minute, (from, until) => {
    fc.pre(from < until);
    expect(read(`${by24(from)}-${by24(until)}`)).toEqual([from / 60, until / 60]);
    expect(read(`${by12(from)} to ${by12(until)}`)).toEqual([from / 60, until / 60]);
  }));
  // Whatever is typed, it is a stretch within a day and a night, or a sentence, or no stretch at all.
  fc.assert(fc.property(fc.stringMatching(/^[0-9:.h apm-]{0,12}$/), fc.boolean(), (typed, overnight) => {
    const found = readSpan(typed, { overnight });
    if (found?.ok === false) expect(found.sentence).toMatch(/^“.*\.$/u);
    if (found?.ok === true) expect([found.from >= 0, found.from < found.until, found.until <= (overnight ? 2880 : 1440)]).toEqual([true, true, true]);
  }));
});
