import { describe, expect, test } from 'vitest';
import type { YardId } from '#shared/brands.ts';
import type { WorkPlan, WorkSlot } from '#shared/contract/work.ts';
import { addDays, day } from '#shared/days.ts';
import { withIcalJs, withNodeIcal } from '#tests/calendar/readers.ts';
import { evening, hours, larch, own, placesOf, quarry, saturday, sentence, today, visits, workDesk } from './workDesk.ts';

const { ask, answer, openOn, openEmpty, planned, choose, lift } = workDesk();
const told = (plan: WorkPlan, what: string) => plan.troubles.find((trouble) => trouble.what === what);

describe('a plan with something wrong', () => {
  test('no hours at all: no trip, and each task says why', async () => {
    await ask('work.setHours', hours([null, null, null, null, null, null, null]));
    await ask('work.setTask', { key: null, task: own('Mend the fence') });
    const plan = await planned();
    expect(plan.outings).toEqual([]);
    expect([plan.driving, plan.naive]).toEqual([0, 0]);
    expect(plan.remarks.join(' ')).toMatch(/hours/);
    expect(told(plan, 'Mend the fence')).toMatchObject({ kind: 'left', late: 0, reason: sentence, mend: sentence });
    // It is one thing that hinders all of them, and is said so.
    expect(new Set(plan.troubles.map(({ reason, mend }) => `${reason} ${mend}`))).toEqual(new Set(['Nobody has hours for the bees in the weeks of this plan. Write down when somebody can go (Hours there are).']));
    expect(plan.troubles.length).toBeGreaterThan(2);
    // What is not done at all is no number of days late, a round neither.
    expect(plan.troubles.filter(({ kind }) => kind === 'left').map(({ late }) => late)).toEqual(plan.troubles.map(() => 0));
    const { days } = await ask('work.days', { from: plan.from, until: plan.until });
    expect([...new Set(days.map(({ have, dark }) => `${have} ${dark}`))]).toEqual(['0 false']);
    expect(plan.weeks.every(({ have, out, working }) => have === 0 && out === 0 && working === 0)).toBe(true);
    // It can be kept, and tells a calendar of no visit.
    await ask('work.keepPlan', {});
    expect((await ask('calendar.status', {})).events.visit).toBe(0);
  });

  test.each([
    ['in the dark', [{ name: 'You', week: Array.from({ length: 7 }, () => ({ from: 1320, until: 1400 })), alone: true, exceptions: [] }], 'All hours in the weeks of this plan are in the dark.'],
    ['of a helper alone', [{ name: 'You', week: Array.from({ length: 7 }, () => null), alone: true, exceptions: [] }, { name: 'Helper', week: Array.from({ length: 7 }, () => saturday), alone: false, exceptions: [] }], 'In the weeks of this plan only people who do not go alone have hours.'],
  ])('hours only %s: that is said of each visit, and work at home is planned', async (_, people, reason) => {
    await ask('work.setHours', { ...hours(), people });
    await ask('work.setTask', { key: null, task: own('Mend the fence') });
    await ask('work.setTask', { key: null, task: own('Boil wax', { yard: null }) });
    const plan = await planned();
    expect(plan.remarks).toEqual([reason]);
    expect(new Set(plan.troubles.map((one) => one.reason))).toEqual(new Set([reason]));
    expect(plan.home.map(({ task }) => task.what)).toEqual(['Boil wax']);
  });

  test('a repeating task without room says the same of each of its times, and another says its own', async () => {
    // Evenings of an hour: too short for Larch Bend.
    await ask('work.setHours', hours(Array.from({ length: 7 }, () => ({ from: 1080, until: 1140 }))));
    await ask('work.setTask', { key: null, task: own('Mow', { yard: larch, latest: day('2026-05-05'), repeat: 'FREQ=WEEKLY' }) });
    await ask('work.setTask', { key: null, task: own('Cut the brush', { yard: larch }) });
    const { troubles } = await planned();
    const mow = troubles.filter(({ what }) => what === 'Mow');
    expect(mow.length).toBeGreaterThan(6);
    expect(new Set(mow.map(({ reason, mend }) => `${reason} ${mend}`))).toEqual(new Set(['On none of its days are there enough hours in daylight for the way to Larch Bend and back. Add hours then, or lengthen a day.']));
    expect(troubles.find(({ what }) => what === 'Cut the brush')?.reason).toBe('No day up to 16 May has enough hours in daylight for the way to Larch Bend and back.');
  });

  test('a visit held on a day on which it cannot be says what is really in the way', async () => {
    await ask('yard.keep', { code: 'NS', name: 'North Slope', room: 12, minutes: null });
    const short: (WorkSlot | null)[] = [null, { from: 1080, until: 1140 }, evening, evening, { from: 1320, until: 1400 }, saturday, null];
    await ask('work.setHours', hours(short));
    const hold = (on: string, yard: YardId) => choose({ kind: 'pin', day: day(on), yard, task: null });
    await hold('2026-05-06', larch);
    await choose({ kind: 'forbid', day: day('2026-05-06'), yard: larch, task: null });
    for (const on of ['2026-05-04', '2026-05-05', '2026-05-08']) await hold(on, larch);
    await hold('2026-05-07', 3 as YardId);
    const { remarks } = await planned();
    expect(remarks.slice(0, 5)).toEqual([
      'Larch Bend cannot be visited on 6 May 2026, where it is held: it is forbidden on that day too. Let go of one of the two below the plan.',
      'Larch Bend cannot be visited on 4 May 2026, where it is held: nobody has hours then. Add hours on that day, or let go of it below the plan.',
      'Larch Bend cannot be visited on 5 May 2026, where it is held: the hours then are too few in daylight for the way there and back (70 min) and some work. Add hours on that day, or let go of it below the plan.',
      'Larch Bend cannot be visited on 8 May 2026, where it is held: all hours then are in the dark. Add hours on that day, or let go of it below the plan.',
      'North Slope cannot be visited on 7 May 2026, where it is held: the minutes from home are not written down. Write them down on the yard’s line in Book.',
    ]);
  });

  test('a task held on a day on which its yard is forbidden says that, not that the hours are too few', async () => {
    await ask('work.setHours', hours());
    await ask('work.setTask', { key: null, task: own('Mend the fence', { yard: larch }) });
    const { key } = (await ask('work.tasks', {})).tasks.find(({ what }) => what === 'Mend the fence')!;
    await choose({ kind: 'pin', day: day('2026-05-06'), yard: null, task: key });
    await choose({ kind: 'forbid', day: day('2026-05-06'), yard: larch, task: null });
    expect(told(await planned(), 'Mend the fence')).toMatchObject({ kind: 'left', reason: 'It is held on 6 May, and Larch Bend is forbidden then.', mend: 'Let go of one of the two below the plan.' });
  });

  test('days that are over: asked for as overdue and planned as soon as may be, not before today', async () => {
    await ask('work.setHours', hours());
    await ask('work.setTask', { key: null, task: own('Set up the fence', { earliest: day('2026-04-10'), latest: day('2026-04-20') }) });
    const task = (await ask('work.tasks', {})).tasks.find(({ what }) => what === 'Set up the fence');
    expect(task).toMatchObject({ overdue: true, latest: '2026-04-20' });
    const plan = await planned();
    const done = visits(plan).filter(({ tasks }) => tasks.some(({ key }) => key === task?.key));
    expect(done.map(({ day: on }) => on >= today)).toEqual([true]);
    expect(done[0]?.tasks.find(({ key }) => key === task?.key)?.late).toBeGreaterThanOrEqual(0);
    expect(told(plan, 'Set up the fence')?.kind).not.toBe('left');
    // What can never be done is refused where it is written down.
    expect(await answer('work.setTask', { key: null, task: own('Turned', { earliest: day('2026-05-20'), latest: day('2026-05-10') }) })).toMatchObject({ ok: false, field: 'latest', sentence });
    // One that is long over is no longer asked for.
    await ask('work.setTask', { key: null, task: own('Long ago', { earliest: day('2025-04-10'), latest: day('2025-04-20') }) });
    expect((await ask('work.tasks', {})).tasks.some(({ what }) => what === 'Long ago')).toBe(false);
  });

  test('a yard that nobody said how far it is: nothing is guessed, and the others are planned', async () => {
    await ask('yard.keep', { code: 'NS', name: 'North Slope', room: 12, minutes: null });
    const slope = 3 as YardId;
    await ask('work.setHours', hours());
    await ask('work.setTask', { key: null, task: own('Cut the brush', { yard: slope }) });
    expect((await ask('work.distances', {})).without).toEqual([slope]);
    expect((await ask('work.tasks', {})).remarks).toEqual([expect.stringContaining('North Slope')]);
    const plan = await planned();
    expect(new Set(visits(plan).map(({ yard }) => yard))).toEqual(new Set([quarry, larch]));
    expect(told(plan, 'Cut the brush')).toMatchObject({ kind: 'left', yard: slope, minutes: 40, reason: sentence, mend: sentence });
    expect(plan.remarks.join(' ')).toContain('North Slope');
    // Nor can a visit there be pinned into being.
    await choose({ kind: 'pin', day: day('2026-05-09'), yard: slope, task: null });
    expect(placesOf(await planned())).not.toContain('2026-05-09/3');
    // Once it is written down, it is planned.
    await ask('yard.keep', { id: slope, code: 'NS', name: 'North Slope', room: 12, minutes: 48 });
    const after = await planned();
    expect(told(after, 'Cut the brush')).toBeUndefined();
    expect(placesOf(after)).toContain('2026-05-09/3');
  });

  test('a task for two where there is one: left out and said, until somebody comes along', async () => {
    await ask('work.setHours', hours());
    await ask('work.setTask', { key: null, task: own('Lift the stand', { people: 2 }) });
    const alone = await planned();
    expect(told(alone, 'Lift the stand')).toMatchObject({ kind: 'left', minutes: 40, reason: sentence, mend: sentence });
    expect(visits(alone).flatMap(({ tasks }) => tasks).every(({ people }) => people === 1)).toBe(true);
    const helped = hours();
    await ask('work.setHours', { ...helped, people: [...helped.people, { name: 'Helper', week: [null, null, null, null, null, saturday, null], alone: false, exceptions: [] }] });
    const both = await planned();
    expect(told(both, 'Lift the stand')).toBeUndefined();
    const visit = visits(both).filter(({ tasks }) => tasks.some(({ what }) => what === 'Lift the stand'));
    expect(visit.map(({ people }) => people.toSorted())).toEqual([['Helper', 'You']]);
    // Somebody who goes only along is never sent alone.
    expect(both.outings.every(({ people }) => people.includes('You'))).toBe(true);
  });

  test('a year without frost has no mouse guards, and rounds go on', async () => {
    await openOn(day('2026-09-15'));
    await ask('work.setHours', hours());
    const guards = async () => (await ask('work.tasks', {})).tasks.filter(({ what }) => what === 'Put on mouse guards').length;
    expect(await guards()).toBe(2);
    const rules = (await ask('rules.list', {})).rules.filter(({ key }) => key === 'work.frost');
    expect(rules).toHaveLength(1);
    await ask('rules.set', { key: 'work.frost', value: 0 });
    expect(await guards()).toBe(0);
    const plan = await planned();
    expect(visits(plan).flatMap(({ tasks }) => tasks).some(({ what }) => what.startsWith('Round'))).toBe(true);
  });

  test.each([['autumn', '2026-10-15', 'Europe/Berlin'], ['the far side of the world', '2026-03-20', 'Australia/Lord_Howe']])('the change of the clocks in %s moves no day and no hour', async (_, on, zone) => {
    await openOn(day(on));
    const noon = { from: 600, until: 960 };
    await ask('work.setHours', hours(Array.from({ length: 7 }, () => noon), { place: { latitude: 10, longitude: zone === 'Australia/Lord_Howe' ? 159 : zone === 'Europe/Berlin' ? 13 : -92, zone } }));
    await ask('work.setTask', { key: null, task: own('Weigh a hive', { earliest: day(on), latest: day(on), repeat: 'FREQ=DAILY', minutes: 5 }) });
    const plan = await planned();
    const { days } = await ask('work.days', { from: plan.from, until: plan.until });
    expect(days.map((one) => one.day)).toEqual(Array.from({ length: 56 }, (__, ahead) => addDays(day(on), ahead)));
    expect(new Set(days.map(({ have }) => have))).toEqual(new Set([360]));
    const times = (await ask('work.tasks', {})).tasks.filter(({ what }) => what === 'Weigh a hive').map(({ earliest }) => earliest);
    expect(times).toEqual(days.map((one) => one.day));
    for (const { leave, back, day: out } of plan.outings) expect([leave >= 600, back <= 960, out >= plan.from]).toEqual([true, true, true]);
  });
});

test('what is pinned, forbidden and left out is kept to, and lifted again leaves nothing behind', async () => {
  await ask('work.setHours', hours());
  await ask('work.setTask', { key: null, task: own('Mend the fence', { yard: larch }) });
  const first = await planned();
  const [visit] = visits(first).filter(({ yard }) => yard === larch);
  const free = day('2026-05-06');
  const to = visit!.day === free ? day('2026-05-07') : free;
  const pin = await choose({ kind: 'pin', day: to, yard: larch, task: null });
  const forbid = await choose({ kind: 'forbid', day: visit!.day, yard: larch, task: null });
  const moved = await planned();
  expect(placesOf(moved)).toContain(`${to}/${larch}`);
  expect(placesOf(moved)).not.toContain(`${visit!.day}/${larch}`);
  expect(visits(moved).find(({ day: on, yard }) => on === to && yard === larch)?.held).toBe('pin');
  const fence = (await ask('work.tasks', {})).tasks.find(({ what }) => what === 'Mend the fence')!;
  const drop = await choose({ kind: 'drop', day: null, yard: null, task: fence.key });
  expect(visits(await planned()).flatMap(({ tasks }) => tasks).some(({ key }) => key === fence.key)).toBe(false);
  for (const choice of [pin, forbid, drop]) await lift(choice);
  expect((await ask('work.plan', {})).choices).toEqual([]);
  const back = await planned();
  expect(visits(back).every(({ held }) => held === null)).toBe(true);
  expect(visits(back).flatMap(({ tasks }) => tasks).some(({ key }) => key === fence.key)).toBe(true);
  // A day without hours holds nobody: it is said, and nothing breaks.
  await choose({ kind: 'pin', day: day('2026-05-10'), yard: quarry, task: null });
  const sunday = await planned();
  expect(placesOf(sunday)).not.toContain('2026-05-10/1');
  expect(sunday.remarks.join(' ')).toContain('Quarry');
});

test('visits of the kept plan stand in the calendar; a moved one is the same event with a higher number, a dropped one is cancelled', async () => {
  await ask('work.setHours', hours());
  // A yard without bees, so that one visit hangs on one task alone.
  await ask('yard.keep', { code: 'KF', name: 'Kiln Field', room: 10, minutes: 12 });
  const kiln = 3 as YardId;
  await ask('work.setTask', { key: null, task: own('Dig post holes', { yard: kiln, bring: [{ item: 'post', count: 6 }] }) });
  const exported = async () => {
    const { text, events, cancelled } = await ask('calendar.export', {});
    const read = withIcalJs(text);
    expect(withNodeIcal(text)).toEqual(read);
    expect(new Set(read.map(({ uid }) => uid)).size).toBe(read.length);
    expect([read.filter(({ status }) => status === 'CONFIRMED').length, read.filter(({ status }) => status === 'CANCELLED').length]).toEqual([events, cancelled]);
    return read.filter(({ uid }) => uid.startsWith('visit-'));
  };
  const keep = async () => {
    const plan = await planned();
    await ask('work.keepPlan', {});
    return plan;
  };
  const clock = (minutes: number) => `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.round(minutes) % 60).padStart(2, '0')}`;
  const names = new Map([[quarry, 'Quarry'], [larch, 'Larch Bend'], [kiln, 'Kiln Field']]);
  const asEvents = (plan: WorkPlan) => visits(plan).map(({ day: on, yard, arrive, leave }) => [names.get(yard), `${on} ${clock(arrive)}`, `${on} ${clock(leave)}`]).toSorted();
  const confirmed = (events: Awaited<ReturnType<typeof exported>>) => events.filter(({ status }) => status === 'CONFIRMED').map(({ location, start, end }) => [location, start, end]).toSorted();

  const plan = await keep();
  const one = await exported();
  expect(confirmed(one)).toEqual(asEvents(plan));
  const dug = one.find(({ location }) => location === 'Kiln Field');
  expect(dug).toMatchObject({ sequence: 0, allDay: false, summary: 'Kiln Field: Dig post holes' });
  expect(dug?.description).toContain('6 post');
  expect(await exported()).toEqual(one);

  // Moved: the same event on another day.
  const [was] = visits(plan).filter(({ yard }) => yard === kiln);
  const to = was!.day === '2026-05-12' ? day('2026-05-13') : day('2026-05-12');
  await choose({ kind: 'pin', day: to, yard: kiln, task: null });
  await choose({ kind: 'forbid', day: was!.day, yard: kiln, task: null });
  const second = await keep();
  const two = await exported();
  expect(confirmed(two)).toEqual(asEvents(second));
  expect(two.filter(({ location }) => location === 'Kiln Field')).toMatchObject([{ uid: dug!.uid, sequence: 1, status: 'CONFIRMED', start: expect.stringContaining(to) }]);

  // Dropped: cancelled under its name, and never told again as another.
  for (const choice of (await ask('work.plan', {})).choices) await lift(choice);
  const task = (await ask('work.tasks', {})).tasks.find(({ what }) => what === 'Dig post holes')!;
  await choose({ kind: 'drop', day: null, yard: null, task: task.key });
  const third = await keep();
  const three = await exported();
  expect(confirmed(three)).toEqual(asEvents(third));
  expect(three.filter(({ location }) => location === 'Kiln Field')).toMatchObject([{ uid: dug!.uid, sequence: 2, status: 'CANCELLED' }]);
  for (const event of three) expect(event.sequence).toBeGreaterThanOrEqual(two.find(({ uid }) => uid === event.uid)?.sequence ?? 0);
});

test('a visit of today counts as not gone to only when the day is over, and one of today that was made is there at once', async () => {
  await ask('work.setHours', hours(Array.from({ length: 7 }, () => saturday)));
  for (const yard of [quarry, larch]) await ask('work.setTask', { key: null, task: own('Mend the fence', { yard, earliest: today, latest: today, minutes: 20 }) });
  const plan = await planned();
  expect(visits(plan).filter(({ day: on }) => on === today).map(({ yard }) => yard).toSorted()).toEqual([quarry, larch]);
  await ask('work.keepPlan', {});
  expect((await ask('worked.planned', {})).rows).toEqual([]);
  await ask('journal.enter', { rows: [{ date: today, entry: 'inspection', yard: 'LB', colony: 'LB-1', frames_bees: '6' }] });
  expect((await ask('worked.planned', {})).rows).toMatchObject([{ day: today, yard: { id: larch }, went: true, worked: null }]);
});

test('an overdue round says since when nobody was seen, and of a yard seen in part how many wait', async () => {
  const reasonOf = async (yard: YardId) => (await ask('work.tasks', {})).tasks.find(({ source, yard: at }) => source === 'round' && at === yard);
  expect(await reasonOf(quarry)).toMatchObject({ overdue: true, reason: 'No colony here has been seen since 11 April 2026, as far as the record tells; a round is due every 14 days while colonies build up.' });
  await ask('journal.enter', { rows: [{ date: today, entry: 'inspection', yard: 'QY', colony: 'QY-2', frames_bees: '6' }] });
  expect((await reasonOf(quarry))?.reason).toBe('2 of 3 colonies are overdue, seen last on 11 April 2026, as far as the record tells; a round is due every 14 days while colonies build up.');
  await ask('journal.enter', { rows: ['QY-1', 'QY-3'].map((colony) => ({ date: today, entry: 'inspection', yard: 'QY', colony, frames_bees: '6' })) });
  expect((await reasonOf(quarry))?.reason ?? '').not.toContain('overdue');
  // Where the last was seen after the first had become due, it does not sound as if nobody had been there since.
  await openOn(day('2026-11-25'));
  await ask('yard.keep', { code: 'KF', name: 'Kiln Field', room: 10, minutes: 12 });
  await ask('journal.enter', { rows: [...['KF-1', 'KF-2'].map((colony) => ({ date: '2026-08-20', entry: 'install', yard: 'KF', colony, origin: 'nuc' })), { date: '2026-10-05', entry: 'inspection', yard: 'KF', colony: 'KF-2', frames_bees: '6' }] });
  expect(await reasonOf(3 as YardId)).toMatchObject({ overdue: true, latest: '2026-09-24', reason: expect.stringMatching(/^Both colonies are overdue, seen last between 20 August 2026 and 5 October 2026, as far as the record tells; /) });
});

test('a book with nothing to tell a calendar gives a whole file without events', async () => {
  await openEmpty(addDays(today, 1));
  const { text, events, cancelled } = await ask('calendar.export', {});
  expect([events, cancelled, withIcalJs(text), withNodeIcal(text)]).toEqual([0, 0, [], []]);
  expect(text).toContain('BEGIN:VTIMEZONE');
});

test('what was taken away leaves its key to nothing new, so that a late Undo or a calendar cannot meet another thing', async () => {
  const keys: string[] = [];
  for (const length of [5, 6, 7]) {
    const choice = await choose({ kind: 'forbid', day: addDays(today, length), yard: quarry, task: null });
    await lift(choice);
    const { task } = await ask('work.setTask', { key: null, task: own('Mow') });
    await ask('work.settleTask', { key: task.key, day: null, how: 'struck' });
    keys.push(choice.key, task.key);
  }
  expect(new Set(keys).size).toBe(6);
});

test('each time of a repeating task is done by itself; the next is asked for after it', async () => {
  const { task } = await ask('work.setTask', { key: null, task: own('Mow', { earliest: day('2026-05-04'), latest: day('2026-05-06'), repeat: 'FREQ=WEEKLY' }) });
  const times = async () => (await ask('work.tasks', {})).tasks.filter(({ key }) => key.startsWith(`own|${task.key}|`)).map(({ earliest }) => earliest);
  expect((await times()).slice(0, 3)).toEqual(['2026-05-04', '2026-05-11', '2026-05-18']);
  await ask('work.settleTask', { key: task.key, day: day('2026-05-04'), how: 'done' });
  expect((await times()).slice(0, 2)).toEqual(['2026-05-11', '2026-05-18']);
  expect((await ask('work.ownTasks', {})).tasks).toHaveLength(1);
  // What was settled by mistake is asked for again, and a task that was taken away is there with all that was done of it.
  const [settled] = (await ask('work.ownTasks', {})).tasks;
  await ask('work.taskBack', { task });
  expect((await times()).slice(0, 2)).toEqual(['2026-05-04', '2026-05-11']);
  await ask('work.settleTask', { key: task.key, day: null, how: 'struck' });
  expect((await ask('work.ownTasks', {})).tasks).toEqual([]);
  await ask('work.taskBack', { task: settled! });
  expect((await ask('work.ownTasks', {})).tasks).toEqual([settled]);
});
