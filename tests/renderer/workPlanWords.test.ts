import { expect, test } from 'vitest';
import { chiefTask, freeOn, homeOn, hoursRefusal, visitsGone, visitsOn, weekLoadOf, type WeekLoadHere } from '#renderer/screens/work/planWeeks.ts';
import { moveDayText, usualMove } from '#renderer/screens/work/moveDayText.ts';
import { patternText } from '#renderer/screens/work/patternText.ts';
import { tellTroubles } from '#renderer/screens/work/troubleGroups.ts';
import { words } from '#renderer/screens/work/words.ts';
import { ownTaskKey } from '#shared/taskKeys.ts';
import { coloniesByTurn, turnKey } from '#shared/visitColonies.ts';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { MoveDay } from '#shared/contract/moveDays.ts';
import type { Outing, PlannedTask, PlannedTrouble, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import { addDays, day, type Day } from '#shared/days.ts';

const yard = 3 as YardId;
const colonies = ['A', 'B', 'C', 'D', 'E'].map((label, at) => ({ id: (at + 1) as ColonyId, label }));
const task = (key: string, more: Partial<WorkTask> = {}): WorkTask => ({
  key, source: 'due', what: key, reason: '', yard, colonies, earliest: day('2026-05-01'), latest: day('2026-05-20'), overdue: false, minutes: 10,
  minutesReason: { setUp: 0, each: 2, recorded: 0, factor: 1, says: '' }, people: 1, weather: 'any', bring: [], after: null, grave: 3, sources: [], ...more,
});
const row = (key: string, many: number, of = colonies.length): PlannedTask => ({ key, what: key, colonies: many, of, minutes: 2 * many, people: 1, late: 0, by: null });
const outing = (on: string, tasks: PlannedTask[], more: Partial<Outing> = {}): Outing => ({
  day: day(on), people: ['You'], leave: 1000, back: 1100, driving: 30, working: 60, room: 70, bring: [], weather: 'any', ...more,
  visits: [{ yard, arrive: 1015, leave: 1085, tasks, held: null, change: null }],
});
const plan = (outings: Outing[], troubles: PlannedTrouble[] = []): WorkPlan => ({
  from: day('2026-05-06'), until: day('2026-05-19'), outings, home: [], troubles, weeks: [], driving: 0, naive: 0, gap: null, changes: null, remarks: [],
});
const today = day('2026-05-06');
const told = (key: string, own: readonly Outing[], tasks: WorkTask[], from: Day = today) => {
  const turns = coloniesByTurn(plan([...own]), new Map(tasks.map((one) => [one.key, one])), from);
  return own.map(({ day: on }) => turns.get(turnKey(on, key))?.map(({ label }) => label).join('') ?? null);
};

test('work on a part of the colonies goes on with the next ones; a round begins again with those seen longest ago', () => {
  const days = ['2026-05-07', '2026-05-08', '2026-05-11'];
  expect(told('feed', days.map((on, at) => outing(on, [row('feed', at === 0 ? 2 : 1)])), [task('feed')])).toEqual(['AB', 'C', 'D']);
  expect(told('round', days.map((on) => outing(on, [row('round', 3)])), [task('round', { source: 'round' })])).toEqual(['ABC', 'DEA', 'BCD']);
  // In the order of days, however the plan lists them.
  expect(told('feed', [outing('2026-05-08', [row('feed', 1)]), outing('2026-05-07', [row('feed', 2)])], [task('feed')])).toEqual(['C', 'AB']);
});

test('what is over, and a task whose colonies are no longer those of the plan, names none', () => {
  expect(told('feed', [outing('2026-05-05', [row('feed', 2)]), outing('2026-05-07', [row('feed', 2)])], [task('feed')])).toEqual([null, 'AB']);
  expect(told('feed', [outing('2026-05-07', [row('feed', 2, 7)])], [task('feed')])).toEqual([null]);
  expect(told('feed', [outing('2026-05-07', [row('feed', 0, 0)])], [task('feed', { colonies: [] })])).toEqual([null]);
  expect(told('feed', [outing('2026-05-07', [row('feed', 2)])], [])).toEqual([null]);
});

test('troubles of one reason are told together, what finds no place first; what was overdue before is told by itself', () => {
  const trouble = (key: string, kind: PlannedTrouble['kind'], reason: string): PlannedTrouble => ({ key, what: key, yard, kind, late: kind === 'late' ? 2 : 0, minutes: 10, reason, mend: 'Add a Sunday.' });
  const own = plan([outing('2026-05-08', [row('old', 1)])], [trouble('a', 'late', 'short'), trouble('old', 'late', 'short'), trouble('b', 'left', 'far'), trouble('c', 'late', 'short'), trouble('gone', 'left', 'far'), trouble('d', 'left', 'short')]);
  const { groups, overdue } = tellTroubles(own, new Map([task('a'), task('old', { overdue: true }), task('gone', { overdue: true })].map((one) => [one.key, one])));
  expect(groups.map(({ kind, reason, named }) => [kind, reason, named.map(({ key }) => key)])).toEqual([['left', 'far', ['b', 'gone']], ['left', 'short', ['d']], ['late', 'short', ['a', 'c']]]);
  expect(overdue.map(({ task: { key }, day: on }) => [key, on])).toEqual([['old', '2026-05-08']]);
});

test('a week has the hours of its days from the first day of the plan on, and what is out on them for all people', () => {
  const monday = day('2026-05-04');
  const hours = new Map(Array.from({ length: 28 }, (_, at) => addDays(monday, at)).map((on) => [on, { day: on, have: on === '2026-05-10' ? 0 : 200, all: 200, dark: false, unled: false }]));
  const own = plan([outing('2026-05-07', []), outing('2026-05-09', [], { people: ['You', 'Helper'] }), outing('2026-05-12', [])]);
  expect(weekLoadOf(own, monday, hours)).toEqual({ out: 300, home: 0, have: 800, all: 1000, over: 0, lack: null });
  expect(weekLoadOf(own, day('2026-05-18'), hours)).toEqual({ out: 0, home: 0, have: 400, all: 400, over: 0, lack: null });
  expect(weekLoadOf(own, monday, new Map())).toBeNull();
  expect(hoursRefusal(hours, day('2026-05-10'))).toBe('nobody');
  expect(hoursRefusal(new Map([[monday, { day: monday, have: 0, all: 200, dark: true, unled: false }]]), monday)).toBe('dark');
  expect(hoursRefusal(new Map([[monday, { day: monday, have: 0, all: 200, dark: false, unled: true }]]), monday)).toBe('unled');
  expect([hoursRefusal(hours, monday), hoursRefusal(new Map(), monday)]).toEqual([null, null]);
});

test('work at home takes of the hours of its day and week, of those first that are of no use at the hives', () => {
  const [monday, tuesday] = [day('2026-05-11'), day('2026-05-12')];
  const hours = new Map([0, 1, 2, 3, 4, 5, 6].map((at) => addDays(monday, at)).map((on) => [on, { day: on, have: on === tuesday ? 0 : 120, all: 180, dark: on === tuesday, unled: false }]));
  const wax = (on: Day, minutes: number, people = 1) => ({ day: on, task: { ...row('wax', 0, 0), minutes, people } });
  const own = { ...plan([outing('2026-05-13', [row('feed', 5)])]), home: [wax(monday, 100), wax(tuesday, 45, 2)] };
  expect([monday, tuesday, day('2026-05-13')].map((on) => homeOn(own, on))).toEqual([100, 90, 0]);
  expect([0, 60, 100, 200].map((home) => freeOn({ have: 120, all: 180 }, home))).toEqual([120, 120, 80, 0]);
  const { out, home, have, all, over } = weekLoadOf(own, monday, hours)!;
  expect([out > 0, home, have, all, over]).toEqual([true, 190, 720, 1260, 0]);
  const said = (more: Partial<WeekLoadHere>) => [words.weekLoad, words.weekShort].map((says) => says({ out: 0, home: 0, have: 0, all: 0, over: 0, lack: null, ...more }).replaceAll('\u00a0', ' '));
  expect(said({ lack: 'nobody' })).toEqual(['Nobody has hours in these days.', 'no hours']);
  expect(said({ lack: 'dark', all: 120, home: 40 })).toEqual(['All hours of these days are in the dark. 40 min at home.', 'dark, 40 min at home']);
  expect(said({ out: 60, have: 120, all: 180 })).toEqual(['1 h out of the 2 h that there are.', '1 h of 2 h']);
  expect(said({ out: 60, home: 30, have: 120, all: 180 })).toEqual(['1 h out of the 2 h that there are, and 30 min at home.', '1 h of 2 h, 30 min at home']);
  expect(said({ out: 60, home: 30, have: 120, all: 120 })).toEqual(['1 h out and 30 min at home, of the 2 h that there are.', '1 h 30 of 2 h']);
  expect(said({ have: 120, all: 120 })).toEqual(['0 min out of the 2 h that there are.', '2 h free']);
  expect(weekLoadOf({ ...own, home: [wax(monday, 1300)] }, monday, hours)?.over).toBe(out + 1300 - 1260);
});

test('visits of the kept plan that are planned no more are counted, and no carried one among them', () => {
  const kept = plan([outing('2026-05-07', [row('feed', 5)]), outing('2026-05-12', [row('feed', 5)]), outing('2026-05-04', [row('feed', 5)])]);
  expect([visitsGone(plan([outing('2026-05-08', [row('feed', 5)])]), kept), visitsGone(plan([]), kept), visitsGone(kept, plan([]))]).toEqual([1, 2, 0]);
  expect([words.changes(1, 0, 1), words.changes(3, 2, 0)].map((text) => text.replaceAll('\u00a0', ' '))).toEqual(['Against the plan kept before: 1 visit as it was, 0 otherwise, 1 no longer planned.', 'Against the plan kept before: 3 visits as they were, 2 otherwise.']);
});

test('the times of a repeating task that find no place are one line with their days', () => {
  const time = (on: string, late = 0): PlannedTrouble => ({ key: ownTaskKey('t1', day(on)), what: 'Mow', yard, kind: late > 0 ? 'late' : 'left', late, minutes: 10, reason: 'short', mend: null });
  const named = (...troubles: PlannedTrouble[]) => tellTroubles(plan([], troubles), new Map()).groups.flatMap((group) => group.named.map((one) => words.trouble(one).replaceAll('\u00a0', ' ')));
  expect(named(time('2026-05-18'), time('2026-05-04'), time('2026-05-11'))).toEqual(['Mow, 3 times, 4 May, 11 May and 18 May']);
  expect(named(time('2026-05-04', 2), time('2026-05-11', 5))).toEqual(['Mow, 2 times, 4 May and 11 May, up to 5 days late']);
  expect(named(time('2026-05-04'), { ...time('2026-05-04'), key: ownTaskKey('t2', day('2026-05-04')), what: 'Paint' })).toEqual(['Mow', 'Paint']);
  expect(named(...Array.from({ length: 20 }, (_, at) => time(addDays(day('2026-05-04'), at))))).toEqual(['Mow, 20 times from 4 May to 23 May']);
});

test('a weekly pattern is said in a few words, and tasks that wait are counted', () => {
  const [evening, saturday] = [{ from: 1080, until: 1200 }, { from: 480, until: 960 }];
  expect(patternText([evening, evening, evening, evening, evening, saturday, null])).toBe('Mon to Fri 18-20, Sat 8-16');
  expect([patternText([null, null, null, null, null, null, evening]), patternText([])]).toEqual(['Sun 18-20', '']);
  expect([words.waiting(12, 9), words.waiting(2, 2), words.waiting(1, 1), words.waiting(3, 0)].map((text) => text.replaceAll('\u00a0', ' '))).toEqual(['12 tasks wait for a day, 9 of them overdue', '2 tasks wait for a day, all of them overdue', '1 task waits for a day and is overdue', '3 tasks wait for a day']);
});

test('a day to which a visit can go says how full it is, what would give way, and what its work lacks there', () => {
  const names = (of: YardId) => (of === 4 ? 'Larch Bend' : 'Millrace');
  const one = { day: day('2026-05-09'), room: 300, taken: 0, kept: 0, work: 90, beside: [], together: true, elsewhere: [], forbidden: false };
  const said = (more: Partial<MoveDay>) => moveDayText({ ...one, ...more }, names).replaceAll('\u00a0', ' ');
  expect(said({})).toBe('Sat 9 May 2026: free, room for 5 h of work');
  expect(said({ taken: 200, beside: [4 as YardId, 5 as YardId] })).toBe('Sat 9 May 2026: with Larch Bend, Millrace, 3 h 20 of 5 h taken');
  expect(said({ taken: 250, beside: [4 as YardId] })).toBe('Sat 9 May 2026: with Larch Bend, 4 h 10 of 5 h taken; 40 min too little for this work');
  expect(said({ taken: 250, beside: [4 as YardId], together: false, elsewhere: [4 as YardId], forbidden: true })).toBe('Sat 9 May 2026: Larch Bend would go elsewhere, room for 5 h; ruled out so far');
  // With the way there too the day has less room than its visits take.
  expect(said({ taken: 310, beside: [4 as YardId] })).toBe('Sat 9 May 2026: with Larch Bend, all of 5 h taken; 1 h 40 too little for this work');
  // What is held there stays, and has its time.
  expect(said({ taken: 290, kept: 240, beside: [4 as YardId, 5 as YardId], together: false, elsewhere: [5 as YardId] })).toBe('Sat 9 May 2026: with Larch Bend, 4 h of 5 h taken; Millrace would go elsewhere; 30 min too little for this work');
  const days = [{ ...one, day: day('2026-05-04') }, { ...one, day: day('2026-05-07'), room: 60 }, one];
  expect([usualMove(days, day('2026-05-05')), usualMove(days, day('2026-05-10')), usualMove([], today)]).toEqual(['2026-05-09', '2026-05-04', null]);
  expect(usualMove(days.slice(0, 2), day('2026-05-05'))).toBe('2026-05-07');
});

test('a visit is named by what is asked for by itself, before the round', () => {
  const own = plan([outing('2026-05-07', [row('round', 5), row('feed', 2)]), outing('2026-05-08', [row('round', 5)])]);
  const tasks = new Map([task('round', { source: 'round' }), task('feed')].map((one) => [one.key, one]));
  expect(chiefTask(visitsOn(own, day('2026-05-07'), yard), tasks)?.key).toBe('feed');
  expect(chiefTask(visitsOn(own, day('2026-05-08'), yard), tasks)?.key).toBe('round');
  expect(chiefTask([], tasks)).toBeUndefined();
});
