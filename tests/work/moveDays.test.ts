import { expect, test } from 'vitest';
import { moveDays } from '#core/work/moveDays.ts';
import { phaseOn, roundOf } from '#core/work/roundPhases.ts';
import { roundKey } from '#core/work/roundTasks.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { hoursForPeople } from '#tests/renderer/workSample.ts';
import type { YardId } from '#shared/brands.ts';
import type { Outing, PlanChoice, PlannedTask, PlannedVisit, WorkPlan } from '#shared/contract/work.ts';
import { addDays, day, type Day } from '#shared/days.ts';

// Three yards half an hour from home, each by way of it to the next, and Saturdays of eight hours.
const [a, b, c] = [1 as YardId, 2 as YardId, 3 as YardId];
const yards: Yard[] = [a, b, c].map((id) => ({ id, code: `Y${id}`, name: `Yard ${id}`, room: 20, minutes: 30 }));
const saturday = { from: 480, until: 960 };
const hours = { ...hoursForPeople, people: [{ name: 'You', week: [null, null, null, null, null, saturday, null], alone: true, exceptions: [] }] };
const rules = new Map();
const today = day('2026-05-01');
const [first, second] = [day('2026-05-02'), day('2026-05-09')];

const row = (key: string, minutes: number): PlannedTask => ({ key, what: key, colonies: 0, of: 0, minutes, people: 1, late: 0, by: null });
const visit = (yard: YardId, tasks: PlannedTask[], held: PlannedVisit['held'] = null): PlannedVisit => ({ yard, arrive: 600, leave: 700, tasks, held, change: null });
const outing = (on: Day, ...visits: PlannedVisit[]): Outing => ({ day: on, people: ['You'], leave: 500, back: 800, driving: 60, working: 0, room: 400, visits, bring: [], weather: 'any' });
const plan = (...outings: Outing[]): WorkPlan => ({ from: today, until: addDays(today, 55), outings, home: [], troubles: [], weeks: [], driving: 0, naive: 0, gap: null, changes: null, remarks: [] });
const choice = (kind: PlanChoice['kind'], on: Day, more: Partial<PlanChoice>): PlanChoice => ({ key: 'c', kind, day: on, yard: null, task: null, ...more });
const daysOf = (own: WorkPlan, choices: PlanChoice[] = [], week = hours) => moveDays({ plan: own, choices, yards, hours: week, distances: [], rules, today }, a, first);
const on = (found: ReturnType<typeof daysOf>, at: Day) => found.find((one) => one.day === at);

test('what is held on a day keeps its time there, and only the others go elsewhere', () => {
  // Four hours: room for two yards, not for three.
  const short = { ...hours, people: hours.people.map((one) => ({ ...one, week: one.week.map((slot) => (slot === null ? null : { from: 600, until: 840 })) })) };
  const own = plan(outing(first, visit(a, [row('mend', 60)])), outing(second, visit(b, [row('feed', 50)], 'lock'), visit(c, [row('look', 20)])));
  expect(on(daysOf(own, [], short), second)).toMatchObject({ together: false, beside: [b, c], elsewhere: [c], taken: 70, kept: 50, work: 60 });
  expect(on(daysOf(own), second)).toMatchObject({ together: true, elsewhere: [], taken: 70, kept: 50 });
});

test('a round that somebody asked for on a day holds its yard there, though the plan that is shown does not know it yet', () => {
  // Two and a half hours: room for one yard.
  const short = { ...hours, people: hours.people.map((one) => ({ ...one, week: one.week.map((slot) => (slot === null ? null : { from: 600, until: 750 })) })) };
  const own = plan(outing(first, visit(a, [row('mend', 30)])));
  expect(on(daysOf(own, [], short), second)).toMatchObject({ beside: [], work: 30 });
  for (const kind of ['pin', 'lock'] as const) {
    expect(on(daysOf(own, [choice(kind, second, { task: roundKey(b) })], short), second)).toBeUndefined();
    expect(on(daysOf(own, [choice(kind, second, { task: roundKey(a) })], short), second)).toBeDefined();
  }
  const [one] = daysOf(plan(outing(first, visit(a, [row('mend', 30)])), outing(second, visit(b, [row('feed', 400)]))), [choice('pin', second, { task: 'feed' })]);
  expect(one).toMatchObject({ day: second, together: true, kept: 400 });
});

test('a round takes as long as rounds do on the day that it goes to, and is not made twice on it', () => {
  const each = (at: Day) => roundOf(rules, phaseOn(rules, at)).each;
  const own = plan(outing(first, visit(a, [row(roundKey(a), 60), row('mend', 30)])), outing(second, visit(a, [row(roundKey(a), 60)])));
  const found = daysOf(own);
  expect(on(found, second)).toMatchObject({ work: 30, kept: 60, beside: [a], elsewhere: [] });
  const others = found.filter((one) => one.day !== second);
  expect(new Set(others.map((one) => each(one.day))).size).toBeGreaterThan(1);
  for (const one of others) expect(one.work).toBe(Math.round(30 + (60 * each(one.day)) / each(first)));
});

test('a day on which the round of the visit may not be made is said to be ruled out', () => {
  const own = plan(outing(first, visit(a, [row(roundKey(a), 60)])));
  const found = daysOf(own, [choice('forbid', second, { task: roundKey(a) }), choice('forbid', addDays(second, 7), { task: roundKey(b) }), choice('forbid', addDays(second, 14), { yard: a })]);
  expect(found.filter(({ forbidden }) => forbidden).map((one) => one.day)).toEqual([second, addDays(second, 14)]);
});
