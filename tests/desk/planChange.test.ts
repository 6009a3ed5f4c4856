import { beforeEach, describe, expect, test } from 'vitest';
import type { YardId } from '#shared/brands.ts';
import type { WorkPlan, WorkSlot } from '#shared/contract/work.ts';
import { addDays, type Day } from '#shared/days.ts';
import { phaseOn, roundOf } from '#core/work/roundPhases.ts';
import { isRound } from '#core/work/roundTasks.ts';
import { weekdayOf } from '#core/work/workHours.ts';
import { evening, hours, larch, own, placesOf, quarry, saturday, sentence, today, visits, workDesk } from './workDesk.ts';

const { ask, answer, planned, choose, lift } = workDesk();

test('a kept plan is old once what it was made from is another, and not for what is written beside it', async () => {
  await ask('work.setHours', hours());
  const stale = async () => (await ask('work.plan', {})).stale;
  await planned();
  await ask('work.keepPlan', {});
  await ask('calendar.export', {});
  expect(await stale()).toBeNull();
  const row = { date: '2026-05-01', entry: 'note', yard: 'QY', colony: 'QY-1', note: 'Calm.' };
  const { gesture } = await ask('journal.enter', { rows: [row] });
  expect(await stale()).toEqual(sentence);
  await planned();
  await ask('work.keepPlan', {});
  expect(await stale()).toBeNull();
  if (gesture !== null) await ask('journal.undo', { gesture });
  expect(await stale()).toEqual(sentence);
  await planned();
  await ask('work.keepPlan', {});
  await ask('work.setHours', hours([evening, null, null, null, null, saturday, null]));
  expect(await stale()).toEqual(sentence);
  await ask('work.setHours', hours());
  expect(await stale()).toBeNull();
  const choice = await choose({ kind: 'forbid', day: addDays(today, 8), yard: quarry, task: null });
  expect(await stale()).toBe('What you have fixed has changed since this plan was made.');
  await lift(choice);
  expect(await stale()).toBeNull();
  await ask('work.setDistance', { a: quarry, b: larch, minutes: 20 });
  expect(await stale()).toBe('The ways between the yards have changed since this plan was made.');
});

test('a plan that is not kept is old once what it was made from is another, and says what that is', async () => {
  await ask('work.setHours', hours());
  const stale = async () => (await ask('work.plan', {})).foundStale;
  expect(await stale()).toBeNull();
  await planned();
  expect(await stale()).toBeNull();
  await ask('work.setHours', hours([evening, null, null, null, null, saturday, null]));
  expect(await stale()).toBe('The hours have changed since this plan was made.');
  await ask('work.setTask', { key: null, task: own('Mend the fence') });
  await ask('rules.set', { key: 'work.frost', value: 0 });
  expect(await stale()).toBe('The house rules, the hours and your own tasks have changed since this plan was made.');
  // Kept as it is, it is as old.
  await ask('work.keepPlan', {});
  expect((await ask('work.plan', {})).stale).toBe(await stale());
  await planned();
  expect(await stale()).toBeNull();
  await ask('journal.enter', { rows: [{ date: today, entry: 'note', yard: 'QY', colony: 'QY-1', note: 'Calm.' }] });
  expect(await stale()).toBe('The record has changed since this plan was made.');
  // What is put off is no work of the plan any more.
  await planned();
  const { lines } = await ask('needs.list', {});
  const [line] = lines;
  if (line === undefined) throw new Error('nothing is needed in this book');
  const { keys } = await ask('needs.putOff', { line: line.key, yard: null, colony: null, until: addDays(today, 5), reason: 'waiting for a mild day' });
  expect(await stale()).toBe('What is put off has changed since this plan was made.');
  await ask('needs.askAgain', { keys });
  expect(await stale()).toBeNull();
});

describe('what is said of a plan and taken back', () => {
  const shown = async () => {
    const { plan } = await ask('work.progress', {});
    return plan ?? (await ask('work.plan', {})).kept?.plan ?? null;
  };
  const move = (yard: YardId, from: Day, to: Day) => ask('work.change', { lift: [], choose: [{ kind: 'pin', day: to, yard, task: null }, { kind: 'forbid', day: from, yard, task: null }] });
  const settled = () => expect.poll(async () => (await ask('work.progress', {})).plan !== null, { timeout: 20_000 }).toBe(true);
  const free = (plan: WorkPlan) => Array.from({ length: 20 }, (_, at) => addDays(today, at)).filter((on) => !plan.outings.some(({ day: out }) => out === on) && weekdayOf(on) !== 6);

  beforeEach(async () => {
    await ask('work.setHours', hours());
    for (const [at, what] of ['Mend the fence', 'Cut the brush', 'Paint lids'].entries()) await ask('work.setTask', { key: null, task: own(what, { yard: at === 1 ? larch : quarry, minutes: 25 + 10 * at }) });
  });

  test('a moved visit is undone to the very plan that was there, one move after the other', async () => {
    const first = await planned();
    const [visit] = visits(first);
    const one = await move(visit!.yard, visit!.day, free(first)[2]!);
    await settled();
    await ask('work.stop', {});
    const second = await shown();
    expect(placesOf(second!)).toContain(`${free(first)[2]}/${visit!.yard}`);
    const [other] = visits(second!).filter(({ held }) => held === null);
    const two = await move(other!.yard, other!.day, free(second!)[4]!);
    await settled();
    // Worked out once more in between: what was there before is there again all the same.
    await planned();
    expect(await ask('work.changeBack', { back: two.back })).toMatchObject({ same: true });
    expect(await shown()).toEqual(second);
    expect(await ask('work.changeBack', { back: one.back })).toMatchObject({ same: true });
    expect(await shown()).toEqual(first);
    expect((await ask('work.plan', {})).choices).toEqual([]);
    // Taken back once, it cannot be taken back again.
    expect(await answer('work.changeBack', { back: one.back })).toMatchObject({ ok: false, sentence });
  });

  test('a kept plan that was shown is there again, with what held it, under its own keys', async () => {
    const first = await planned();
    const [visit] = visits(first);
    const choice = await choose({ kind: 'lock', day: visit!.day, yard: visit!.yard, task: null });
    await planned();
    const { plan } = await ask('work.keepPlan', {});
    const { book } = await ask('book.status', {});
    await ask('book.close', {});
    await ask('book.open', { path: book!.path });
    expect((await ask('work.progress', {})).state).toBe('none');
    const { back } = await ask('work.change', { lift: [choice.key], choose: [{ kind: 'forbid', day: visit!.day, yard: visit!.yard, task: null }] });
    await settled();
    expect(placesOf((await shown())!)).not.toContain(`${visit!.day}/${visit!.yard}`);
    expect(await ask('work.changeBack', { back })).toMatchObject({ same: true });
    expect((await ask('work.progress', {})).state).toBe('none');
    expect(await shown()).toEqual(plan);
    expect((await ask('work.plan', {})).choices).toEqual([choice]);
  });

  test('where something else was said meanwhile the plan is worked out anew; where the same was changed it is refused, and a refused change leaves nothing', async () => {
    const first = await planned();
    const [visit] = visits(first);
    const one = await move(visit!.yard, visit!.day, free(first)[2]!);
    await choose({ kind: 'forbid', day: free(first)[5]!, yard: quarry, task: null });
    expect(await ask('work.changeBack', { back: one.back })).toMatchObject({ same: false });
    await settled();
    expect((await ask('work.plan', {})).choices.map(({ kind }) => kind)).toEqual(['forbid']);
    const two = await move(visit!.yard, visit!.day, free(first)[2]!);
    const pin = (await ask('work.plan', {})).choices.find(({ kind }) => kind === 'pin')!;
    await lift(pin);
    expect(await answer('work.changeBack', { back: two.back })).toMatchObject({ ok: false, code: 'moved-on', sentence });
    const { choices } = await ask('work.plan', {});
    expect(await answer('work.change', { lift: ['c99999'], choose: [] })).toMatchObject({ ok: false, sentence });
    expect(await answer('work.change', { lift: [], choose: [{ kind: 'pin', day: today, yard: quarry, task: null }, { kind: 'pin', day: null, yard: quarry, task: null }] })).toMatchObject({ ok: false, sentence });
    expect((await ask('work.plan', {})).choices).toEqual(choices);
  });
});

describe('the days to which a visit can go', () => {
  const eachOn = (on: Day) => roundOf(new Map(), phaseOn(new Map(), on)).each;
  const daysFor = async (yard: YardId, from: Day) => (await ask('work.moveDays', { yard, day: from })).days;

  test('without a plan none; with one only days with hours and daylight for the way and the work, and how full they are', async () => {
    expect(await daysFor(quarry, today)).toEqual([]);
    await ask('work.setTask', { key: null, task: own('Mend the fence') });
    // Monday evenings are too short for Larch Bend: 35 min there, as many back, 8 to set up and 20 to stay are 98.
    const short: WorkSlot = { from: 1050, until: 1140 };
    await ask('work.setHours', hours([short, null, evening, null, null, saturday, null]));
    const plan = await planned();
    const [visit] = visits(plan).filter(({ yard }) => yard === larch);
    const days = await daysFor(larch, visit!.day);
    const weekdays = new Set(days.map(({ day: on }) => weekdayOf(on)));
    expect([...weekdays].toSorted()).toEqual([2, 5]);
    expect(days.some(({ day: on }) => on === visit!.day)).toBe(false);
    expect(days.every(({ day: on }) => on >= today && on <= plan.until)).toBe(true);
    expect(new Set((await daysFor(quarry, visit!.day)).map(({ day: on }) => weekdayOf(on)))).toEqual(new Set([0, 2, 5]));
    for (const { day: on, room, taken, beside, work } of days) {
      const there = plan.outings.filter((outing) => outing.day === on).flatMap((outing) => outing.visits);
      expect(beside).toEqual(there.map(({ yard }) => yard));
      expect(taken).toBe(Math.round(there.flatMap(({ tasks }) => tasks).reduce((sum, { minutes, people }) => sum + minutes * people, 0)));
      // A round takes as long as rounds do on that day, and is not made twice on it.
      const share = (key: string) => (!isRound(key) ? 1 : there.some((one) => one.yard === larch && one.tasks.some((planned) => planned.key === key)) ? 0 : eachOn(on) / eachOn(visit!.day));
      expect(work).toBe(Math.round(visit!.tasks.reduce((sum, { key, minutes, people }) => sum + minutes * people * share(key), 0)));
      expect(room).toBeGreaterThanOrEqual(20);
    }
    // Saturday, 8:00 to 16:00 in full light: eight hours less 70 min of driving and 8 to set up.
    expect(days.find(({ day: on, beside }) => weekdayOf(on) === 5 && beside.length === 0)?.room).toBe(480 - 70 - 8);
    // Every one of them can be done: pinned there, the visit is there.
    const to = days.find(({ beside }) => beside.length === 0)!.day;
    await ask('work.change', { lift: [], choose: [{ kind: 'pin', day: to, yard: larch, task: null }, { kind: 'forbid', day: visit!.day, yard: larch, task: null }] });
    const moved = await planned();
    expect(placesOf(moved)).toContain(`${to}/${larch}`);
    expect(moved.remarks).toEqual([]);
    // The day it came from is offered again, as one that was ruled out.
    expect((await daysFor(larch, to)).filter(({ forbidden }) => forbidden).map(({ day: on }) => on)).toEqual([visit!.day]);
  });

  test('a day on which another yard is held is offered only if one outing leads to both', async () => {
    // Evenings of 150 min: Quarry and Larch Bend by way of home are 106 of driving, so no evening has both.
    const tight: WorkSlot = { from: 1050, until: 1200 };
    await ask('work.setHours', hours([tight, tight, tight, tight, tight, saturday, null]));
    const first = await planned();
    const [visit] = visits(first).filter(({ yard }) => yard === quarry);
    const evenings = (await daysFor(quarry, visit!.day)).filter(({ day: on }) => weekdayOf(on) < 5).map(({ day: on }) => on);
    const [held] = evenings;
    await choose({ kind: 'lock', day: held!, yard: larch, task: null });
    const saturdayHeld = evenings.length > 0 ? addDays(held!, 5 - weekdayOf(held!)) : today;
    await choose({ kind: 'lock', day: saturdayHeld, yard: larch, task: null });
    const plan = await planned();
    expect(placesOf(plan)).toEqual(expect.arrayContaining([`${held}/${larch}`, `${saturdayHeld}/${larch}`]));
    const [quarryVisit] = visits(plan).filter(({ yard, day: on }) => yard === quarry && on !== saturdayHeld && on !== held);
    const days = await daysFor(quarry, quarryVisit!.day);
    expect(days.map(({ day: on }) => on)).not.toContain(held);
    expect(days.find(({ day: on }) => on === saturdayHeld)).toMatchObject({ beside: [larch], together: true });
  });
});
