import { expect, test } from 'vitest';
import { atHome } from '#core/work/plan/atHome.ts';
import { alikeTold } from '#core/work/plan/planTroubles.ts';
import { hoursForPeople } from '#tests/renderer/workSample.ts';
import type { Outing, WorkHours, WorkSlot, WorkTask } from '#shared/contract/work.ts';
import { addDays, day } from '#shared/days.ts';
import { ownTaskKey } from '#shared/taskKeys.ts';

const may = day('2026-05-01');
const days = Array.from({ length: 56 }, (_, at) => addDays(may, at));
const task = (key: string, more: Partial<WorkTask> = {}): WorkTask => ({
  key, source: 'own', what: key, reason: '', yard: null, colonies: [], earliest: may, latest: addDays(may, 9), overdue: false, minutes: 90,
  minutesReason: { setUp: 0, each: 2, recorded: 0, factor: 1, says: '' }, people: 1, weather: 'any', bring: [], after: null, grave: 3, sources: [], ...more,
});
const none = [null, null, null, null, null, null, null];
const hours = (keeper: [number, WorkSlot][], helper: [number, WorkSlot][] = []): WorkHours => ({
  ...hoursForPeople,
  people: [{ name: 'Keeper', alone: true, own: keeper }, { name: 'Helper', alone: false, own: helper }].map(({ own, ...who }) => ({ ...who, week: none, exceptions: own.map(([at, slot]) => ({ day: addDays(may, at), slot })) })),
});
const [morning, noon] = [{ from: 600, until: 720 }, { from: 780, until: 900 }];
const told = (found: ReturnType<typeof atHome>) => [found.home.map(({ day: on, task: { key, minutes, late } }) => [on, key, minutes, late]), found.troubles.map(({ key, kind, late, reason }) => [key, kind, late, reason])];

test('a task at home that comes late is named with what does not fit', () => {
  expect(told(atHome({ days, home: [task('Boil wax', { latest: may })] }, hours([[3, noon]]), []))).toEqual([
    [[addDays(may, 3), 'Boil wax', 90, 3]], [['Boil wax', 'late', 3, 'Up to 1 May not that many minutes are left at home.']],
  ]);
});

test('a task at home that is overdue says by how many days it is late, and is trouble only after some days to catch up', () => {
  const overdue = task('Boil wax', { earliest: addDays(may, -10), latest: addDays(may, -2), overdue: true });
  expect(told(atHome({ days, home: [overdue] }, hours([[3, noon]]), []))).toEqual([[[addDays(may, 3), 'Boil wax', 90, 5]], []]);
  expect(told(atHome({ days, home: [overdue] }, hours([[10, noon]]), []))).toEqual([
    [[addDays(may, 10), 'Boil wax', 90, 12]], [['Boil wax', 'late', 2, 'Up to 9 May not that many minutes are left at home.']],
  ]);
});

test('a task for two takes the time of both, on a day on which both have some together', () => {
  // On the first day one comes when the other has gone.
  const both = hours([[1, morning], [3, morning]], [[1, noon], [3, morning]]);
  expect(told(atHome({ days, home: [task('Turn the extractor', { people: 2 }), task('Boil wax')] }, both, []))).toEqual([[[addDays(may, 1), 'Boil wax', 90, 0], [addDays(may, 3), 'Turn the extractor', 90, 0]], []]);
  expect(told(atHome({ days, home: [task('Roll the drum', { people: 3 })] }, both, []))[1]).toEqual([['Roll the drum', 'left', 0, 'It takes 3 people, and on no day of the plan do as many have hours.']]);
});

test('what is out is not at home, and a short task is done in one piece', () => {
  const outing: Outing = { day: addDays(may, 1), people: ['Keeper'], leave: 600, back: 690, driving: 30, working: 40, room: 60, visits: [], bring: [], weather: 'any' };
  const both = hours([[1, morning], [2, morning]]);
  expect(told(atHome({ days, home: [task('Sort frames', { minutes: 50 }), task('Boil wax')] }, both, [outing]))[0]).toEqual([[addDays(may, 1), 'Boil wax', 30, 0], [addDays(may, 2), 'Sort frames', 50, 0], [addDays(may, 2), 'Boil wax', 60, 0]]);
});

test('without any hours each says so, and the times of a repeating task say the same where the same is in the way', () => {
  const times = [0, 7, 14].map((at) => task(ownTaskKey('t1', addDays(may, at)), { earliest: addDays(may, at), latest: addDays(may, at) }));
  expect(atHome({ days, home: times }, hours([]), []).troubles.map(({ reason }) => reason)).toEqual(Array(3).fill('Nobody has hours for the bees in the weeks of this plan.'));
  // Each comes two days late.
  const late = atHome({ days, home: times }, hours([[2, noon], [9, noon], [16, noon]]), []).troubles;
  expect(new Set(late.map(({ reason }) => reason)).size).toBe(3);
  expect(new Set(alikeTold(late).map(({ reason }) => reason))).toEqual(new Set(['Up to its last day not that many minutes are left at home each time.']));
  expect(alikeTold(late.slice(0, 1)).map(({ reason }) => reason)).toEqual(['Up to 1 May not that many minutes are left at home.']);
});
