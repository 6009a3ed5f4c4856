import { expect, test } from 'vitest';
import { hoursForPeople } from './workSample.ts';
import { readHours, readSlot, readTypedHours, typedHours } from '#renderer/screens/work/hoursForm.ts';
import { mondayOf, moveChoices, spell, weekDays, weeksOf } from '#renderer/screens/work/planWeeks.ts';
import { freshTask, overBy, pastDay, readTask } from '#renderer/screens/work/taskForm.ts';
import type { YardId } from '#shared/brands.ts';
import type { OwnTask, PlanChoice } from '#shared/contract/work.ts';
import { day, type Day } from '#shared/days.ts';

const yard = 3 as YardId;
const choice = (key: string, kind: PlanChoice['kind'], on: string, of = yard): PlanChoice => ({ key, kind, day: day(on), yard: of, task: null });

test('a visit that is carried is pinned to its new day and kept off the old one, and what held it there is let go', () => {
  const [from, to] = [day('2026-12-02'), day('2026-12-04')];
  expect(moveChoices([], yard, from, to)).toEqual({ lift: [], choose: [{ kind: 'pin', day: to, yard, task: null }, { kind: 'forbid', day: from, yard, task: null }] });
  const held = [choice('c1', 'lock', from), choice('c2', 'forbid', to), choice('c3', 'pin', from, 4 as YardId), choice('c4', 'pin', '2026-12-20')];
  expect(moveChoices(held, yard, from, to).lift).toEqual(['c1', 'c2']);
  // There and back again leaves the visit pinned where it began, and nothing against that day.
  const there = moveChoices([], yard, from, to).choose.map((one, at) => ({ ...one, key: `k${at}` }));
  expect(moveChoices(there, yard, to, from)).toEqual({ lift: ['k0', 'k1'], choose: [{ kind: 'pin', day: from, yard, task: null }, { kind: 'forbid', day: to, yard, task: null }] });
});

test('work of a visit that was asked for on its day by itself is asked for on the new one', () => {
  const [from, to] = [day('2026-12-02'), day('2026-12-04')];
  const of = (key: string, kind: PlanChoice['kind'], on: Day, task: string): PlanChoice => ({ key, kind, day: on, yard: null, task });
  const said = [of('c1', 'lock', from, 'round|3'), of('c2', 'forbid', to, 'round|3'), of('c3', 'pin', from, 'round|4'), of('c4', 'pin', from, 'feed'), of('c5', 'pin', to, 'feed')];
  const { lift, choose } = moveChoices(said, yard, from, to, ['round|3', 'feed']);
  expect(lift).toEqual(['c1', 'c2', 'c4']);
  expect(choose).toEqual([{ kind: 'pin', day: to, yard, task: null }, { kind: 'forbid', day: from, yard, task: null }, { kind: 'lock', day: to, yard: null, task: 'round|3' }]);
});

test('weeks begin on Monday and cover the whole plan', () => {
  expect(mondayOf(day('2026-11-29'))).toBe('2026-11-23');
  expect(weekDays(day('2026-11-23')).at(-1)).toBe('2026-11-29');
  expect(weeksOf({ from: day('2026-11-25'), until: day('2026-12-07') })).toEqual(['2026-11-23', '2026-11-30', '2026-12-07']);
});

test.each([[45, '45 min'], [60, '1 h'], [95, '1 h 35'], [125, '2 h 05']])('%s minutes are %s', (minutes, text) => expect(spell(minutes).replaceAll('\u00a0', ' ')).toBe(text));
test('a day may be empty or said to have none, and what cannot be read says what would mend it', () => {
  for (const none of ['', ' ', '-', 'none', 'None']) expect(readSlot(none)).toEqual({ slot: null });
  expect(readSlot('5.30pm-8')).toEqual({ slot: { from: 1050, until: 1200 } });
  expect(readSlot('evening')).toEqual({ sentence: '“evening” is no stretch of the day. Type from when until when, like 17:30-20 or 5:30-8 pm.' });
  expect(readSlot('22-2')).toEqual({ sentence: '“22-2” ends before it begins. Turn it round, or type it like 17:30-20 or 5:30-8 pm.' });
  const typed = typedHours(hoursForPeople);
  const [first] = typed.people;
  const says = (change: Partial<typeof typed.people[number]>) => readHours({ ...typed, people: [{ ...first!, ...change }] }, 'month-first').trouble?.sentence.replaceAll('\u00a0', ' ');
  expect(says({ week: first!.week.with(2, '9-') })).toBe('Wednesday: “9-” has only one time. Type from when until when, like 17:30-20 or 5:30-8 pm. For none, leave it empty or type none.');
  expect(says({ exceptions: '2026-12-24 8-5' })).toBe('24 December 2026: “8-5” ends before it begins. Say which half of the day is meant, like 8 am-5 pm, or type 8-17. For none, leave it empty or type none.');
});

test('hours come back as they were typed, and what cannot be read is named with its field', () => {
  const typed = typedHours(hoursForPeople);
  expect(typed.people[0]).toMatchObject({ week: ['17:30-20', '17:30-20', '', '17:30-20', '', '8-16', ''], exceptions: '2026-12-24 none\n2026-12-28 9-16' });
  expect(readHours(typed, 'month-first').hours).toEqual(hoursForPeople);
  const wrong = (change: Partial<typeof typed>) => readHours({ ...typed, ...change }, 'month-first').trouble?.field;
  const [first] = typed.people;
  expect(wrong({ latitude: '95' })).toBe('latitude');
  expect(wrong({ people: [{ ...first!, week: first!.week.with(2, '9-') }] })).toBe('week 0 2');
  expect(wrong({ people: [{ ...first!, name: ' ' }] })).toBe('name 0');
  expect(wrong({ people: [{ ...first!, name: 'n'.repeat(41) }] })).toBe('name 0');
  expect(wrong({ zone: ' ' })).toBe('zone');
  expect(wrong({ people: [{ ...first!, exceptions: '2026-12-24' }] })).toBe('exceptions 0');
});

test('an own task is read with its load, and what is missing is said', () => {
  const typed = { ...freshTask('2026-11-28'), what: 'Mend the fence', yard: '3', latest: '12/5/2026', bring: '4 fence posts, 1 hammer' };
  expect(readTask(typed, [], 'month-first').task).toMatchObject({ yard: 3, earliest: '2026-11-28', latest: '2026-12-05', repeat: null, bring: [{ count: 4, item: 'fence posts' }, { count: 1, item: 'hammer' }] });
  const wrong = (change: Partial<typeof typed>) => readTask({ ...typed, ...change }, [], 'month-first').trouble?.part;
  expect([wrong({ what: ' ' }), wrong({ latest: '2026-11-01' }), wrong({ minutes: '0' }), wrong({ people: '9' }), wrong({ bring: 'posts' })]).toEqual(['what', 'latest', 'minutes', 'people', 'bring']);
  const longer = (change: Partial<typeof typed>) => readTask({ ...typed, ...change }, [], 'month-first').trouble;
  expect(longer({ what: 'w'.repeat(121) })).toEqual({ part: 'what', sentence: 'That is 121 letters long, and 120 have room here. Shorten it, or put the rest into the note.' });
  expect([longer({ note: 'n'.repeat(401) })?.part, longer({ bring: `2 ${'i'.repeat(81)}` })?.part, longer({ what: 'w'.repeat(120), note: 'n'.repeat(400) })]).toEqual(['note', 'bring', null]);
});

test('a task whose days are over is said to be, while it is typed and in the list', () => {
  const today = day('2026-05-01');
  const typed = { earliest: '2026-04-10', latest: '2026-04-20', repeat: '' };
  expect(pastDay(typed, today, 'month-first')).toBe('2026-04-20');
  expect(pastDay({ ...typed, latest: '' }, today, 'month-first')).toBe('2026-04-10');
  for (const fine of [{ latest: '2026-05-01' }, { repeat: 'FREQ=WEEKLY' }, { latest: 'soon' }]) expect(pastDay({ ...typed, ...fine }, today, 'month-first')).toBeNull();
  const { task } = readTask({ ...freshTask(today), what: 'Mow', ...typed }, [], 'month-first');
  const own: OwnTask = { ...task!, key: 't1', settled: [] };
  expect(overBy(own, [{ key: 'own|t1|2026-04-10' }], today)).toBe('overdue');
  expect(overBy(own, [{ key: 'own|t12|2026-04-10' }], today)).toBe('past');
  expect(overBy({ ...own, settled: [{ day: day('2026-04-10'), how: 'done' }] }, [], today)).toBeNull();
  expect(overBy({ ...own, latest: today }, [], today)).toBeNull();
  expect(overBy({ ...own, repeat: 'FREQ=WEEKLY' }, [], today)).toBeNull();
});

test('minutes may be typed in hours, and degrees with their side of the globe; another unit is refused as that', () => {
  const typed = { ...freshTask('2026-11-28'), what: 'Mend the fence' };
  const of = (minutes: string) => readTask({ ...typed, minutes }, [], 'month-first');
  expect([of('90 min').task?.minutes, of('1.5 h').task?.minutes]).toEqual([90, 90]);
  expect([of('3 lb').trouble?.sentence, of('9000').trouble?.sentence]).toEqual(['“3 lb” is not in min, nor in a unit that becomes min. Type it in min, such as 90.', '“9000” is above 6,000 min, the most that makes sense here.']);
  const at = (latitude: string, longitude: string) => readHours({ ...typedHours(hoursForPeople), latitude, longitude }, 'month-first');
  expect(at('44,5° N', '92 W').hours?.place).toMatchObject({ latitude: 44.5, longitude: -92 });
  expect([at('44.5 W', '92').trouble?.field, at('44.5', '-92 W').trouble?.field, at('44.5 lb', '92').trouble?.field]).toEqual(['latitude', 'longitude', 'latitude']);
});

test('hours that were typed and not kept are taken up only as they were put away', () => {
  const typed = typedHours(hoursForPeople);
  expect(readTypedHours(JSON.stringify(typed))).toEqual(typed);
  const [first] = typed.people;
  for (const other of [null, 'hours', [], {}, { ...typed, people: [] }, { ...typed, zone: 1 }, { ...typed, people: [{ ...first, week: [] }] }, { ...typed, people: [{ ...first, week: first!.week.with(0, null as never) }] }, { ...typed, people: [null] }]) {
    expect(readTypedHours(JSON.stringify(other))).toBeNull();
  }
  expect(readTypedHours('{"people":')).toBeNull();
});
