import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';
import type { Book } from '#core/desk/openBook.ts';
import { highsSolver } from '#core/desk/highsSolver.ts';
import { planFactsOf } from '#core/desk/workPlanHandlers.ts';
import { daylightOn } from '#core/work/daylight.ts';
import { makeProblem, type PlanFacts } from '#core/work/plan/makeProblem.ts';
import { naiveDriving } from '#core/work/plan/naivePlan.ts';
import { planAnswer } from '#core/work/plan/planAnswer.ts';
import { planModel } from '#core/work/plan/planModel.ts';
import { searchPlan } from '#core/work/plan/searchPlan.ts';
import type { Job, OutingChoice, PlanProblem } from '#core/work/plan/planProblem.ts';
import { phaseOn } from '#core/work/roundPhases.ts';
import { seenAgainBy } from '#core/work/roundPhases.ts';
import { slotOn } from '#core/work/workHours.ts';
import type { PlanChoice, WorkPlan, WorkSlot, WorkTask } from '#shared/contract/work.ts';
import { daysBetween, addDays, day, dayInWords, type Day } from '#shared/days.ts';

const folder = mkdtempSync(join(tmpdir(), 'outyard-plans-'));
const may = day('2026-05-01');
let book: Book;
let asked: PlanFacts;

beforeAll(async () => {
  book = await openDemo(demoBook('ossar', folder));
  asked = await askedOn(may);
});

function askedOn(today: Day): Promise<PlanFacts> {
  const past = book.asOf(today);
  return planFactsOf({ options: { folder, program: 'Outyard (tests)', now: () => ({ day: today, stamp: `${today} 20:00` }), log: () => undefined }, book: () => past, open: () => past, setBook: () => Promise.resolve() });
}

afterAll(async () => {
  await book.store.close();
  rmSync(folder, { recursive: true, force: true });
});

function planned(facts: PlanFacts, rounds = 0): WorkPlan {
  const made = makeProblem(facts);
  return planAnswer(made, searchPlan(made.problem, rounds), facts, { gap: null, naive: naiveDriving(made.problem) });
}

const slot: fc.Arbitrary<WorkSlot | null> = fc.option(fc.tuple(fc.integer({ min: 6, max: 18 }), fc.integer({ min: 1, max: 9 })).map(([from, hours]) => ({ from: 60 * from, until: 60 * Math.min(23, from + hours) })), { freq: 3 });
const week = fc.array(slot, { minLength: 7, maxLength: 7 });

test('whatever the hours: every visit lies within hours and daylight, no day asks for more than it has, and each unit of work is done once, late or named', () => {
  fc.assert(fc.property(week, week, (one, other) => {
    const hours = { ...asked.hours, people: [{ name: 'Keeper', alone: true, week: one, exceptions: [] }, { name: 'Helper', alone: false, week: other, exceptions: [] }] };
    const plan = planned({ ...asked, hours, kept: null, before: null });
    expect(new Set(plan.outings.map(({ day: on }) => on)).size).toBe(plan.outings.length);
    for (const { day: on, people, leave, back, visits, working, room } of plan.outings) {
      const light = daylightOn(on, hours.place);
      expect(working).toBeLessThanOrEqual(room + 1);
      for (const name of people) {
        const worker = hours.people.find((person) => person.name === name);
        const own = worker === undefined ? null : slotOn(worker, on);
        expect(leave).toBeGreaterThanOrEqual(own?.from ?? 1441);
        expect(back).toBeLessThanOrEqual((own?.until ?? -1) + 1);
      }
      for (const [at, { arrive, leave: gone }] of visits.entries()) {
        expect(arrive).toBeGreaterThanOrEqual(Math.floor(light?.sunrise ?? 1440));
        expect(gone).toBeLessThanOrEqual(Math.ceil(light?.sunset ?? 0) + 1);
        expect(arrive).toBeGreaterThanOrEqual(at === 0 ? leave : (visits[at - 1]?.leave ?? 0));
      }
    }
    const named = new Set(plan.troubles.map(({ key }) => key));
    for (const task of asked.tasks.filter(({ source, yard, after, latest }) => source !== 'round' && yard !== null && after === null && latest <= plan.until)) {
      const rows = plan.outings.flatMap(({ visits }) => visits.flatMap(({ tasks }) => tasks.filter(({ key }) => key === task.key)));
      const done = rows.reduce((sum, { colonies }) => sum + colonies, 0);
      expect(done).toBeLessThanOrEqual(task.colonies.length);
      if (rows.length === 0 || done < task.colonies.length) expect(named).toContain(task.key);
      if (rows.some(({ late }) => late > 0) && !task.overdue) expect(named).toContain(task.key);
    }
  }), { numRuns: 12 });
});

test('the same question gives the same plan', () => {
  expect(planned(asked, 5)).toEqual(planned(asked, 5));
});

test('a visit that is held is made, a forbidden one is not, and little else changes', () => {
  const before = planned(asked, 5);
  const [first, second] = before.outings;
  const yard = first?.visits[0]?.yard;
  if (first === undefined || second === undefined || yard === undefined) throw new Error('the demo’s May has no outings');
  const after = planned({ ...asked, kept: before, before, choices: [{ key: 'c1', kind: 'forbid', day: first.day, yard, task: null }, { key: 'c2', kind: 'pin', day: second.day, yard, task: null }] }, 5);
  expect(after.outings.find(({ day: on }) => on === first.day)?.visits.map((visit) => visit.yard) ?? []).not.toContain(yard);
  expect(after.outings.find(({ day: on }) => on === second.day)?.visits.find((visit) => visit.yard === yard)?.held).toBe('pin');
  const { same = 0, visits = 0 } = after.changes ?? {};
  expect(visits - same).toBeLessThanOrEqual(0.2 * visits + 1);
});

test.each([['later', [1, 2, 3, 4, 7]], ['earlier', [-1, -2, -3, -4]]])('a visit that is carried to a %s day takes its work along', (_, reach) => {
  const before = planned(asked, 5);
  const { problem, days, yards } = makeProblem(asked);
  let [carried, rounds] = [0, 0];
  for (const { day: from, visits } of before.outings) {
    for (const visit of visits) {
      const place = yards.findIndex(({ id }) => id === visit.yard);
      const to = reach.map((by) => addDays(from, by)).find((on) => on <= before.until && problem.outings.some((outing) => days[outing.day] === on && outing.yards.includes(place) && outing.room >= visit.tasks.reduce((sum, { minutes, people }) => sum + minutes * people, 0)));
      if (to === undefined || before.outings.some((outing) => outing.day === to)) continue;
      const after = planned({ ...asked, kept: before, before, choices: [{ key: 'c1', kind: 'forbid', day: from, yard: visit.yard, task: null }, { key: 'c2', kind: 'pin', day: to, yard: visit.yard, task: null }] }, 5);
      const own = visit.tasks.map(({ key }) => key).filter((key) => !key.startsWith('round|'));
      const there = after.outings.find((outing) => outing.day === to)?.visits.find(({ yard }) => yard === visit.yard);
      expect(there?.tasks.map(({ key }) => key)).toEqual(expect.arrayContaining(own));
      carried += own.length;
      if (!visit.tasks.some(({ key }) => key.startsWith('round|'))) continue;
      // Its round goes along: it is made there, and not anew on a day between the round before and there, nor where the visit was.
      const roundsOf = (plan: WorkPlan) => plan.outings.flatMap(({ day: on, visits: then }) => (then.some(({ yard, tasks }) => yard === visit.yard && tasks.some(({ key }) => key.startsWith('round|'))) ? [on] : []));
      const [first, last] = [from < to ? from : to, from < to ? to : from];
      if (roundsOf(before).some((on) => on >= first && on <= last && on !== from)) continue;
      const since = roundsOf(before).findLast((on) => on < first) ?? '';
      expect(roundsOf(after).filter((on) => on > since && on <= last)).toEqual([to]);
      rounds += 1;
    }
  }
  expect([carried, rounds].every((many) => many > 0)).toBe(true);
});

test('nobody drives to a yard where nothing is to be done, whatever was planned before', () => {
  const before = planned(asked, 5);
  const people = asked.hours.people.map((person, at) => (at === 0 ? person : { ...person, week: person.week.map(() => null) }));
  for (const choices of [[], [{ key: 'c1', kind: 'forbid' as const, day: before.outings[1]?.day ?? may, yard: before.outings[1]?.visits[0]?.yard ?? null, task: null }]]) {
    const { outings } = planned({ ...asked, hours: { ...asked.hours, people }, kept: before, before, choices }, 5);
    expect(outings.flatMap(({ visits }) => visits.filter(({ tasks }) => tasks.length === 0))).toEqual([]);
  }
});

test('a round is not made again long before it is due', () => {
  const { outings } = planned({ ...asked, kept: null, before: null }, 20);
  const soon = asked.tasks.filter(({ source }) => source === 'round').flatMap(({ key }) => {
    const seen = outings.filter(({ visits }) => visits.some(({ tasks }) => tasks.some((task) => task.key === key && task.colonies === task.of))).map(({ day: on }) => on);
    return seen.filter((on, at) => at > 0 && on < addDays(seen[at - 1] ?? on, 5)).map((on) => `${key} on ${on}`);
  });
  expect(soon).toEqual([]);
});

test('a round is called by what it is for on the day it is planned for, not on the day the plan is made', async () => {
  const rounds = (plan: WorkPlan) => plan.outings.flatMap(({ day: on, visits }) => visits.flatMap(({ tasks }) => tasks.filter(({ key }) => key.startsWith('round|')).map(({ what }) => ({ on, what }))));
  const { rules } = asked.facts;
  const spring = rounds(planned(asked, 5));
  expect(spring.filter(({ on, what }) => what !== (phaseOn(rules, on) === 'swarm' ? 'Round: look for swarm cells' : 'Round'))).toEqual([]);
  expect(new Set(spring.map(({ what }) => what)).size).toBe(2);
  const winter = await askedOn(day('2026-11-25'));
  expect(new Set(rounds(planned(winter, 5)).map(({ what }) => what))).toEqual(new Set(['Winter round: heft and look']));
});

test('a held day that the hours do not reach is said, not dropped in silence', () => {
  const sunday = addDays(may, 2);
  const yard = asked.facts.yards[0];
  if (yard === undefined) throw new Error('the demo has no yards');
  const { remarks } = planned({ ...asked, choices: [{ key: 'c1', kind: 'pin', day: sunday, yard: yard.id, task: null }] });
  expect(remarks.join(' ')).toContain(`${yard.name} cannot be visited on`);
});

test('without a plan each task goes to its earliest day with room, and what falls together is driven together', () => {
  const outing = (on: number, yards: readonly number[], driving: number, room: number): OutingChoice => ({ day: on, yards, crew: [0], driving, room });
  const outings = [0, 1, 2].flatMap((on) => [outing(on, [0], 20, 60), outing(on, [1], 30, 50), outing(on, [1, 0], 40, 40)]);
  const job = (yard: number, earliest: number, each: number) => ({ yard, units: 1, each, people: 1, earliest, latest: 2, last: 2, weight: 1, waits: 0, left: 450, after: null, only: null, was: null, never: new Set<number>() });
  const problem: PlanProblem = { days: 3, yards: 2, jobs: [job(0, 0, 25), job(1, 0, 15), job(0, 0, 30), job(1, 2, 50)], rounds: [], outings, held: [], before: null };
  // Day 0: the first two, 25 + 15 of 40, one way of 40. Day 1: the third alone, 20. Day 2: the last alone, 30.
  expect(naiveDriving(problem)).toBe(90);
});

test('without a plan a round is made when it is due, at once where it is overdue, and again when its days are over', () => {
  const outings = [0, 1, 2, 3, 4, 5].map((on): OutingChoice => ({ day: on, yards: [0], crew: [0], driving: 20, room: 60 }));
  const round = (next: number) => ({ yard: 0, units: 1, each: [40, 40, 40, 40, 40, 40], again: [3, 4, 5, 6, 7, 8], due: [Math.max(4, next)], next, overdue: next < 0 ? 1 : 0, asked: new Set<number>(), was: null, never: new Set<number>() });
  const problem = (next: number): PlanProblem => ({ days: 6, yards: 1, jobs: [], rounds: [round(next)], outings, held: [], before: null });
  // Overdue: on days 0 and 3, whatever days a plan would give it to catch up. Due on day 4: once.
  expect([naiveDriving(problem(-9)), naiveDriving(problem(1)), naiveDriving(problem(4))]).toEqual([40, 40, 20]);
});

test('a round has its own last day; only one that is overdue has days to catch up', async () => {
  const facts = await askedOn(day('2026-09-01'));
  const { problem, yards } = makeProblem(facts);
  const [late, soon] = [problem.rounds.filter(({ next }) => next < 0), problem.rounds.filter(({ next }) => next >= 0)];
  expect([late.length, soon.length].every((many) => many > 0)).toBe(true);
  for (const { due, next } of soon) expect(due[0]).toBe(next);
  for (const { due } of late) expect(due[0]).toBeGreaterThanOrEqual(7);
  // Nobody has hours before the second Saturday: what was due until then comes late and is said to.
  const saturday = { ...facts.hours, people: facts.hours.people.map((person) => ({ ...person, exceptions: Array.from({ length: 11 }, (_, at) => ({ day: addDays(day('2026-09-01'), at), slot: null })) })) };
  const { troubles } = planned({ ...facts, hours: saturday, kept: null, before: null });
  const named = new Map(troubles.filter(({ what }) => what.includes('Round')).map(({ yard, late: days }) => [yard, days]));
  for (const { yard, next } of soon.filter((one) => one.next < 11)) expect(named.get(yards[yard]?.id ?? null)).toBeGreaterThanOrEqual(11 - next);
});

const said = fc.record({ kind: fc.constantFrom('lock', 'carry', 'pin', 'forbid', 'drop', 'shut'), visit: fc.nat(200), to: fc.nat(55) });

/** What is said of a plan’s own visits, as on the board. */
function choicesOf(plan: WorkPlan, drawn: readonly { kind: string; visit: number; to: number }[]): PlanChoice[] {
  const visits = plan.outings.flatMap(({ day: on, visits: own }) => own.map(({ yard, tasks }) => ({ on, yard, task: tasks[0]?.key ?? null })));
  return drawn.flatMap(({ kind, visit, to }): Omit<PlanChoice, 'key'>[] => {
    const one = visits[visit % Math.max(1, visits.length)];
    if (one === undefined) return [];
    const { on, yard, task } = one;
    const other = addDays(plan.from, to);
    switch (kind) {
      case 'lock': return [{ kind: 'lock', day: on, yard, task: null }];
      case 'carry': return [{ kind: 'forbid', day: on, yard, task: null }, { kind: 'pin', day: other, yard, task: null }];
      case 'shut': return [{ kind: 'forbid', day: other, yard, task: null }];
      case 'drop': return [{ kind: 'drop', day: null, yard: null, task }];
      default: return [{ kind: kind === 'pin' ? 'pin' : 'forbid', day: kind === 'pin' ? other : on, yard: null, task }];
    }
  }).map((choice, at) => ({ ...choice, key: `c${at}` }));
}

test('whatever the day, the hours, the plan before and what is said of it: what the search counts is what the programme counts, and its rows and the choices are kept to', async () => {
  await fc.assert(fc.asyncProperty(fc.constantFrom('2024-05-30', '2024-10-08', '2025-03-20', '2025-06-15', '2026-01-20', '2026-05-01', '2026-07-15', '2026-09-01'), fc.option(week), week, fc.boolean(), fc.array(said, { maxLength: 6 }), async (on, one, other, alone, drawn) => {
    const facts = { ...(await askedOn(day(on))), kept: null, before: null };
    const hours = one === null ? facts.hours : { ...facts.hours, people: [{ name: 'Keeper', alone: true, week: one, exceptions: [] }, { name: 'Helper', alone, week: other, exceptions: [] }] };
    const before = planned({ ...facts, hours });
    const choices = choicesOf(before, drawn);
    const now = { ...facts, hours, kept: before, before, choices };
    const made = makeProblem(now);
    const { problem } = made;
    for (const { due, again, overdue } of problem.rounds) expect([...due.slice(overdue), again[0] ?? 0].reduce((least, by) => (by >= least ? by : Number.NaN), due[0] ?? 0)).not.toBeNaN();
    const draft = searchPlan(problem, 2);
    const { milp, base, fromDraft } = planModel(problem);
    const values = fromDraft(draft);
    expect(base + milp.variables.reduce((sum, { cost }, at) => sum + cost * (values[at] ?? 0), 0)).toBeCloseTo(draft.cost, 4);
    const broken = milp.rows.filter(({ terms, low, high }) => {
      const sum = terms.reduce((all, [variable, factor]) => all + factor * (values[variable] ?? 0), 0);
      return sum < (low ?? sum) - 1e-6 || sum > (high ?? sum) + 1e-6;
    });
    expect(broken.map(({ name }) => name)).toEqual([]);
    expect(milp.variables.filter(({ low, high }, at) => (values[at] ?? 0) < low - 1e-6 || (values[at] ?? 0) > (high ?? Number.POSITIVE_INFINITY) + 1e-6)).toEqual([]);
    for (const [at, { units }] of problem.jobs.entries()) expect([...(draft.jobs[at]?.values() ?? [])].reduce((sum, many) => sum + many, 0)).toBeLessThanOrEqual(units);
    const plan = planAnswer(made, draft, now, { gap: null, naive: 0 });
    const visits = plan.outings.flatMap(({ day: when, visits: own }) => own.map(({ yard, tasks }) => ({ when, yard, keys: tasks.map(({ key }) => key) })));
    for (const { kind, day: when, yard, task } of choices) {
      const there = visits.filter((visit) => (task === null ? visit.yard === yard : visit.keys.includes(task)) && (when === null || visit.when === when));
      if (kind === 'forbid' || kind === 'drop') expect(there).toEqual([]);
      else if (task === null && !plan.remarks.some((words) => words.includes(dayInWords(when ?? may))) && !choices.some((one) => one.kind === 'forbid' && one.yard === yard && one.day === when)) expect(there).toHaveLength(1);
    }
    // Nothing takes longer than all of it: no minutes that stand for something else.
    for (const { key, minutes } of plan.troubles) expect(minutes).toBeLessThanOrEqual(Math.max(...now.tasks.filter((task) => task.key === key).map((task) => task.minutes * task.people)) * 4 + 1);
  }), { numRuns: 10 });
});

test('a task that was held on a day that is over is planned again', () => {
  const task = asked.tasks.find(({ key, source, yard, after, latest }) => source === 'season' && yard !== null && after === null && latest < addDays(may, 50) && planned(asked).outings.some(({ visits }) => visits.some(({ tasks }) => tasks.some((one) => one.key === key))));
  if (task === undefined) throw new Error('the demo’s May has no work of the season');
  const { outings } = planned({ ...asked, choices: [{ key: 'c1', kind: 'pin', day: addDays(may, -3), yard: null, task: task.key }] });
  expect(outings.some(({ visits }) => visits.some(({ tasks }) => tasks.some(({ key }) => key === task.key)))).toBe(true);
});

test('a round that is held on a day is made on it, though it is not due for long', () => {
  const before = planned(asked, 5);
  const rounds = before.outings.flatMap(({ day: on, visits }) => visits.flatMap(({ yard, tasks }) => tasks.flatMap(({ key, colonies, of }) => (key.startsWith('round|') && colonies === of ? [{ on, yard, key }] : []))));
  const { problem, days, yards } = makeProblem(asked);
  const later = rounds.flatMap((round) => {
    const to = [2, 3, 4].map((by) => addDays(round.on, by)).find((on) => problem.outings.some((outing) => days[outing.day] === on && yards[outing.yards[0] ?? -1]?.id === round.yard && outing.yards.length === 1));
    return to === undefined || rounds.some(({ on, key }) => on === to && key === round.key) ? [] : [{ ...round, to }];
  }).slice(0, 4);
  expect(later.length).toBeGreaterThan(1);
  for (const { yard, key, to } of later) {
    const after = planned({ ...asked, kept: before, before, choices: [{ key: 'c1', kind: 'pin', day: to, yard: null, task: key }] }, 2);
    expect(after.outings.find(({ day: on }) => on === to)?.visits.find((visit) => visit.yard === yard)).toMatchObject({ held: 'pin', tasks: expect.arrayContaining([expect.objectContaining({ key })]) });
  }
});

test('the work of a visit that is promised beside another that leaves no room for it stays free to be done elsewhere', () => {
  const before = planned(asked, 5);
  const { problem, days, yards } = makeProblem(asked);
  const goes = (set: readonly number[], on: Day) => problem.outings.some((outing) => days[outing.day] === on && set.every((at) => outing.yards.includes(at)));
  const places = before.outings.flatMap(({ day: on, visits }) => visits.map(({ yard, tasks }) => ({ on, at: yards.findIndex(({ id }) => id === yard), own: tasks.filter(({ key }) => !key.startsWith('round|')) })));
  const found = places.flatMap((visit) => days.flatMap((on) => yards.flatMap((_, first) => (visit.own.length > 0 && first !== visit.at && on !== visit.on && goes([first], on) && goes([visit.at], on) && !goes([first, visit.at], on) ? [{ ...visit, first, to: on }] : [])))).at(0);
  if (found === undefined) throw new Error('any two yards of the demo fit into one outing');
  const { outings, remarks } = planned({ ...asked, before, kept: before, choices: [{ key: 'c1', kind: 'lock', day: found.to, yard: yards[found.first]?.id ?? null, task: null }, { key: 'c2', kind: 'forbid', day: found.on, yard: yards[found.at]?.id ?? null, task: null }, { key: 'c3', kind: 'pin', day: found.to, yard: yards[found.at]?.id ?? null, task: null }] }, 5);
  expect(remarks.join(' ')).toContain('does not fit on');
  const keys = outings.flatMap(({ visits }) => visits.flatMap(({ tasks }) => tasks.map(({ key }) => key)));
  expect(keys).toEqual(expect.arrayContaining(found.own.map(({ key }) => key)));
});

test('a winter round wants a dry day only, as its task says', async () => {
  const winter = await askedOn(day('2026-11-25'));
  const { outings } = planned(winter, 5);
  const weathers = new Map(winter.tasks.map(({ key, weather }) => [key, weather]));
  const only = outings.filter(({ visits }) => visits.every(({ tasks }) => tasks.every(({ key }) => weathers.get(key) !== 'flying')));
  expect(only.length).toBeGreaterThan(0);
  expect(new Set(only.map(({ weather }) => weather))).not.toContain('flying');
});

test('a round that comes late says by how much, as the trouble does', () => {
  const off = { ...asked.hours, people: asked.hours.people.map((person) => ({ ...person, exceptions: Array.from({ length: 21 }, (_, at) => ({ day: addDays(may, at), slot: null })) })) };
  const { outings, troubles } = planned({ ...asked, hours: off, kept: null, before: null });
  const late = troubles.filter(({ key, kind }) => key.startsWith('round|') && kind === 'late');
  expect(late.length).toBeGreaterThan(0);
  for (const { key, what, late: days } of late) {
    const rows = outings.flatMap(({ visits }) => visits.flatMap(({ tasks }) => tasks.filter((task) => task.key === key)));
    expect(Math.max(...rows.map((task) => task.late))).toBe(days);
    // And by the name that it has on the board on that day.
    expect(rows.filter((task) => task.late === days).map((task) => task.what)).toContain(what);
  }
});

test('a week has the hours in which somebody can go, not those of a helper with nobody to go with', () => {
  const [keeper] = asked.hours.people;
  if (keeper === undefined) throw new Error('the demo has nobody');
  const hours = { ...asked.hours, people: [keeper, { name: 'Helper', alone: false, week: keeper.week.map((own) => (own === null ? { from: 600, until: 720 } : null)), exceptions: [] }] };
  expect(planned({ ...asked, hours }).weeks.map(({ have }) => have)).toEqual(planned({ ...asked, hours: { ...hours, people: [keeper] } }).weeks.map(({ have }) => have));
});

test('work for two is said to want a second person, where no day has two', () => {
  const [keeper] = asked.hours.people;
  const task = asked.tasks.find(({ source, yard, after, latest }) => source !== 'round' && yard !== null && after === null && latest >= may && latest < addDays(may, 30));
  if (keeper === undefined || task === undefined) throw new Error('the demo’s May has no work of the season');
  // The helper comes on one day only, after its last day and all that it may be late.
  const hours = { ...asked.hours, people: [keeper, { name: 'Helper', alone: false, week: [null, null, null, null, null, null, null], exceptions: [{ day: addDays(may, 50), slot: { from: 480, until: 960 } }] }] };
  const { troubles } = planned({ ...asked, hours, tasks: asked.tasks.map((one) => (one.key === task.key ? { ...one, people: 2 } : one)) });
  expect(troubles.find(({ key }) => key === task.key)?.reason).toContain('2 people');
});

test('an overdue round is made on the first visit there that has the time, whatever brings one there', async () => {
  const outings = Array.from({ length: 10 }, (_, on): OutingChoice => ({ day: on, yards: [0], crew: [0], driving: 36, room: 120 }));
  const job: Job = { yard: 0, units: 1, each: 30, people: 1, earliest: 0, latest: 4, last: 9, weight: 1, waits: 0, left: 450, after: null, only: null, was: null, never: new Set<number>() };
  // Seen on day 1 or later it would not have to be seen again within these days; seen on day 0 only on day 9.
  const again = outings.map((_, on) => (on === 0 ? 9 : 20));
  const problem: PlanProblem = { days: 10, yards: 1, jobs: [job], rounds: [{ yard: 0, units: 2, each: outings.map(() => 20), again, due: [8, 8], next: -3, overdue: 2, asked: new Set(), was: null, never: new Set() }], outings, held: [], before: null };
  const { milp, toDraft } = planModel(problem);
  for (const draft of [searchPlan(problem, 10), toDraft((await highsSolver()).solve(milp).values)]) {
    const [visit] = draft.jobs[0]?.keys() ?? [];
    expect([...(draft.rounds[0] ?? [])]).toEqual([[visit, 2]]);
  }
});

test('where not all fits, what is graver is done and what is less grave is left and named', () => {
  const [yard] = asked.facts.yards;
  const sample = asked.tasks.find(({ source }) => source === 'due');
  if (yard === undefined || sample === undefined) throw new Error('the demo has yards and tasks');
  const task = (key: string, grave: number): WorkTask => ({ ...sample, key, what: key, grave, yard: yard.id, colonies: [], earliest: may, latest: addDays(may, 1), overdue: false, minutes: 150, people: 1, after: null });
  // One Saturday, with room for one of them.
  const hours = { ...asked.hours, people: [{ name: 'Keeper', alone: true, week: [null, null, null, null, null, null, null], exceptions: [{ day: addDays(may, 1), slot: { from: 600, until: 900 } }] }] };
  const facts = { ...asked.facts, states: [] };
  for (const tasks of [[task('less', 2), task('graver', 5)], [task('graver', 5), task('less', 2)]]) {
    const { outings, troubles } = planned({ ...asked, facts, hours, tasks, kept: null, before: null });
    expect(outings.flatMap(({ visits }) => visits.flatMap((visit) => visit.tasks.map(({ key }) => key)))).toEqual(['graver']);
    expect(troubles.map(({ key, kind }) => `${key} ${kind}`)).toEqual(['less left']);
  }
});

test('each round of a yard has its own last day, and none where it was overdue before', () => {
  const { outings } = planned({ ...asked, kept: null, before: null }, 20);
  const round = asked.tasks.find(({ source, overdue }) => source === 'round' && overdue);
  const seen = outings.flatMap(({ day: on, visits }) => visits.flatMap(({ tasks }) => tasks.flatMap(({ key, colonies, of, late, by }) => (key === round?.key && colonies === of ? [{ on, late, by }] : []))));
  expect(seen.length).toBeGreaterThan(2);
  expect(seen[0]?.by).toBeNull();
  seen.slice(1).forEach(({ on, late, by }, at) => {
    expect(by).toBe(addDays(may, seenAgainBy(asked.facts.rules, may, 56)[daysBetween(may, seen[at]?.on ?? may)] ?? 0));
    expect(late).toBe(Math.max(0, daysBetween(by ?? on, on)));
  });
});

test('a round that somebody asked for on a day is made on it, by the search and by the programme', async () => {
  const outings = Array.from({ length: 10 }, (_, on): OutingChoice => ({ day: on, yards: [0], crew: [0], driving: 36, room: 60 }));
  const again = outings.map((_, on) => on + 20);
  // Nothing else wants it before day 9, and later it would hold longer.
  const problem: PlanProblem = { days: 10, yards: 1, jobs: [], rounds: [{ yard: 0, units: 2, each: outings.map(() => 20), again, due: [9, 9], next: 9, overdue: 0, asked: new Set([3]), was: null, never: new Set() }], outings, held: [{ day: 3, yard: 0 }, { day: 9, yard: 0 }], before: null };
  const { milp, toDraft } = planModel(problem);
  for (const draft of [searchPlan(problem, 10), toDraft((await highsSolver()).solve(milp).values)]) expect([...(draft.rounds[0]?.keys() ?? [])]).toContain(3);
});

test('a visit that is carried to a day too short for its work takes along what fits, and the rest finds its place elsewhere', () => {
  const before = planned(asked, 20);
  const { problem, days, yards } = makeProblem(asked);
  let short = 0;
  for (const { day: from, visits } of before.outings.slice(0, 4)) {
    for (const visit of visits) {
      const place = yards.findIndex(({ id }) => id === visit.yard);
      const work = visit.tasks.reduce((sum, { minutes, people }) => sum + minutes * people, 0);
      const roomOn = (on: Day) => Math.max(0, ...problem.outings.filter((outing) => days[outing.day] === on && outing.yards.includes(place)).map(({ room }) => room));
      const to = [-3, -2, 2, 3].map((by) => addDays(from, by)).find((on) => on > may && roomOn(on) > 0 && roomOn(on) < work && !before.outings.some((outing) => outing.day === on));
      if (to === undefined) continue;
      const after = planned({ ...asked, kept: before, before, choices: [{ key: 'c1', kind: 'forbid', day: from, yard: visit.yard, task: null }, { key: 'c2', kind: 'pin', day: to, yard: visit.yard, task: null }] }, 20);
      expect(after.outings.some((outing) => outing.day === to && outing.visits.some(({ yard }) => yard === visit.yard))).toBe(true);
      expect(after.troubles.filter(({ kind, yard }) => kind === 'left' && yard === visit.yard)).toEqual([]);
      // A round that does not fit there is not made in a string of evenings because of it.
      const trips = (plan: WorkPlan) => plan.outings.filter((outing) => outing.visits.some(({ yard }) => yard === visit.yard)).length;
      expect(trips(after)).toBeLessThanOrEqual(trips(before) + 2);
      short += 1;
    }
  }
  expect(short).toBeGreaterThan(0);
});
