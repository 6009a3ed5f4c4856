import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import { ownTaskTrouble, ownTimes } from '#core/work/ownTimes.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import type { YardId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';

const folder = mkdtempSync(join(tmpdir(), 'outyard-work-'));
let desk: Desk;

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  return answer.value as OutputOf<Name>;
}

beforeAll(async () => {
  desk = createDesk({ folder, program: 'Outyard (tests)', now: () => ({ day: day('2026-05-01'), stamp: '2026-05-01 20:00' }), log: () => undefined });
  await ask('book.demo', { which: 'tiny' });
});

afterAll(async () => {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
});

const task = { what: 'Mow the yard', yard: 1 as YardId, colonies: [], earliest: day('2026-05-04'), latest: day('2026-05-05'), minutes: 30, people: 1, weather: 'dry' as const, bring: [], repeat: null, note: null };

test('times of a repeating task follow RFC 5545, and a change of the clock moves none', () => {
  const weekly = { earliest: day('2026-03-01'), latest: day('2026-03-02'), repeat: 'FREQ=WEEKLY;INTERVAL=2' };
  expect(ownTimes(weekly, day('2026-03-01'), day('2026-04-10')).map(({ earliest }) => earliest)).toEqual(['2026-03-01', '2026-03-15', '2026-03-29']);
  expect(ownTaskTrouble({ ...task, repeat: 'every week' })?.field).toBe('repeat');
  expect(ownTaskTrouble({ ...task, latest: day('2026-05-01') })?.sentence).toContain('before its first');
});

test('hours without anybody who goes alone, and an unknown time zone, are refused with what mends it', async () => {
  const { hours } = await ask('work.hours', {});
  const refused = await desk.call('work.setHours', { ...hours, people: hours.people.map((one) => ({ ...one, alone: false })) });
  expect(refused).toMatchObject({ ok: false, field: 'people' });
  expect(await desk.call('work.setHours', { ...hours, place: { ...hours.place, zone: 'Nowhere/Valley' } })).toMatchObject({ ok: false, field: 'place.zone' });
});

test('own tasks are planned, those for two people named where there is one, and a plan that is kept is known', async () => {
  const { today } = await ask('work.tasks', {});
  const window = { earliest: today, latest: today };
  await ask('work.setTask', { key: null, task: { ...task, ...window } });
  await ask('work.setTask', { key: null, task: { ...task, ...window, what: 'Move the stand', people: 2 } });
  const started = await ask('work.replan', {});
  expect(started.plan?.troubles.find(({ what }) => what === 'Move the stand')?.reason).toContain('2 people');
  const stopped = await ask('work.stop', {});
  expect(['stopped', 'done']).toContain(stopped.state);
  await ask('work.keepPlan', {});
  const { kept, stale } = await ask('work.plan', {});
  expect(kept?.plan.outings).toEqual(stopped.plan?.outings);
  expect(stale).toBeNull();
});

test('a week without any hours leaves everything undone in words', async () => {
  const { hours } = await ask('work.hours', {});
  await ask('work.setHours', { ...hours, people: hours.people.map((one) => ({ ...one, week: one.week.map(() => null), exceptions: [] })) });
  const { plan } = await ask('work.replan', {});
  expect(plan?.outings).toEqual([]);
  expect(plan?.remarks.join(' ')).toContain('Nobody has hours');
  await ask('work.stop', {});
  await ask('work.setHours', hours);
});
