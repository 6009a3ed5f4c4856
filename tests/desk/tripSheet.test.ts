import { afterEach, beforeEach, expect, test } from 'vitest';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import type { OwnTaskBody, WorkPlan } from '#shared/contract/work.ts';
import { day, type Day } from '#shared/days.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

// A small book in November: five hives at Quarry whose stands go another way than their labels, one of them dead, and a yard without hives.
const today = day('2026-11-25');
const [quarry, kiln] = [1 as YardId, 2 as YardId];
const noon = { from: 600, until: 960 };

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;

beforeEach(() => {
  scratch = scratchFolder();
});
afterEach(async () => {
  await at.desk.close();
  scratch.remove();
});

const ask = <Name extends OperationName>(name: Name, input: InputOf<Name>) => at.askHeld(name, input);

const labels = ['QY-01', 'QY-02', 'QY-03', 'QY-04', 'QY-05'];
const idOf = (label: string) => (labels.indexOf(label) + 1) as ColonyId;

async function openOn(on: Day): Promise<void> {
  at = trialDesk(scratch.folder, on);
  await ask('book.create', { name: 'Ossar Valley' });
  await ask('yard.keep', { code: 'QY', name: 'Quarry', room: 20, minutes: 18 });
  await ask('yard.keep', { code: 'KF', name: 'Kiln Field', room: 10, minutes: 12 });
  await ask('work.setHours', { people: [{ name: 'You', week: Array.from({ length: 7 }, () => noon), alone: true, exceptions: [] }], place: { latitude: 44, longitude: -92, zone: 'America/Chicago' } });
  await ask('journal.enter', { rows: labels.map((colony) => ({ date: `${on.slice(0, 4)}-04-10`, entry: 'install', yard: 'QY', colony, origin: 'nuc' })) });
  await ask('yard.stand', { yard: quarry, colonies: ['QY-04', 'QY-02', 'QY-05', 'QY-01', 'QY-03'].map(idOf) });
}

const own = (what: string, more: Partial<OwnTaskBody> = {}): OwnTaskBody => ({ what, yard: quarry, colonies: [], earliest: today, latest: day('2026-11-30'), minutes: 10, people: 1, weather: 'any', bring: [], repeat: null, note: null, ...more });

async function planned(): Promise<WorkPlan> {
  await ask('work.replan', {});
  await expect.poll(async () => (await ask('work.progress', {})).plan !== null, { timeout: 20_000 }).toBe(true);
  await ask('work.stop', {});
  return (await ask('work.keepPlan', {})).plan;
}

/** The stop at a yard on the first day on which a task is planned there. */
async function stopFor(what: string, yard: YardId = quarry) {
  const plan = await planned();
  const on = plan.outings.find(({ visits }) => visits.some((visit) => visit.yard === yard && visit.tasks.some((task) => task.what === what)))?.day;
  if (on === undefined) throw new Error(`${what} is not planned: ${plan.outings.flatMap(({ visits }) => visits.flatMap(({ tasks }) => tasks.map((task) => task.what))).join(', ')}`);
  const { outings, kept } = await ask('trip.sheet', { day: on });
  expect(kept).toBe(true);
  const outing = outings.find(({ stops }) => stops.some((stop) => stop.yard.id === yard))!;
  const stop = outing.stops.find((one) => one.yard.id === yard)!;
  return { on, outing, stop, task: stop.tasks.find((one) => one.what === what)! };
}

test('a winter round has the sheet of stores, its colonies stand as on the round sheet of that day, and that sheet opens as it was printed', async () => {
  await openOn(today);
  const { on, outing, stop, task } = await stopFor('Winter round: heft and look');
  expect(stop.sheet).toEqual({ kind: 'stores', works: [{ kind: 'stores', what: ['Winter round: heft and look'], columns: [] }] });
  expect(outing).toMatchObject({ weather: 'dry', inCase: ['fondant, for hives that are light'] });
  const sheet = (await ask('round.sheet', { yard: quarry, day: on })).rows;
  expect(sheet.map(({ label }) => label)).toEqual(['QY-04', 'QY-02', 'QY-05', 'QY-01', 'QY-03']);
  expect(task).toMatchObject({ whole: true, known: true, count: 5, of: 5 });
  expect(task.colonies.map(({ id }) => id)).toEqual(sheet.map(({ colony }) => colony));
  expect((await ask('rounds.paper', { yard: quarry, day: on })).rows.map(({ colony }) => colony)).toEqual(sheet.map(({ colony }) => colony));
  // What was open there last does not matter, until another sheet is chosen for that very day.
  await ask('rounds.layout', { yard: quarry, day: today, kind: 'feed' });
  const setting = (of: Day) => ask('rounds.setting', { yard: quarry, day: of });
  if (on !== today) expect((await setting(on)).kind).toBe('stores');
  expect((await setting(day('2026-11-01'))).kind).toBe('feed');
  await ask('rounds.layout', { yard: quarry, day: on, kind: 'mix' });
  expect((await setting(on)).kind).toBe('mix');
  expect((await ask('trip.sheet', { day: on })).outings[0]?.stops[0]?.sheet?.kind).toBe('mix');
});

test('work on some colonies stands on the round’s sheet with the columns it needs, each colony with its own record, in stand order', async () => {
  await openOn(today);
  await ask('journal.enter', { rows: ['QY-01', 'QY-04'].map((colony) => ({ date: '2026-11-12', entry: 'mites', yard: 'QY', colony, mites: '24', bees: '300' })) });
  const needs = (await ask('work.tasks', {})).tasks.map(({ what }) => what);
  const what = needs.find((one) => one.startsWith('Treat'))!;
  const { on, outing, stop, task } = await stopFor(what);
  expect(stop.sheet).toMatchObject({ kind: 'stores', works: [{ kind: 'stores' }, { kind: 'mites', what: [what], columns: ['treat'] }] });
  expect(await ask('rounds.setting', { yard: quarry, day: on })).toMatchObject({ kind: 'stores', planned: stop.sheet });
  const order = (await ask('round.sheet', { yard: quarry, day: on })).rows.map(({ colony }) => colony);
  expect(task.colonies.map(({ id }) => id)).toEqual(order.filter((id) => task.colonies.some((one) => one.id === id)));
  expect(outing.load.filter((line) => line.startsWith('mite treatment for'))).toEqual([expect.stringMatching(/^mite treatment for \d\u00a0colonies: by the record fits [a-z ]+$|chosen on the page of mites$/)]);
  expect(outing.cautions.filter((one) => one.includes('The label is the law'))).toHaveLength(1);
});

test('a dead-out is named with its day, by the list of needs and by a task of one’s own, though it is on no round sheet', async () => {
  await openOn(today);
  await ask('journal.enter', { rows: [{ date: '2026-11-22', entry: 'loss', yard: 'QY', colony: 'QY-02' }] });
  await ask('work.setTask', { key: null, task: own('Carry the dead hive home', { colonies: [idOf('QY-02')], bring: [{ item: 'straps', count: 1 }] }) });
  const { on, outing, stop, task } = await stopFor('Look at the dead-out and close it up');
  expect(task.colonies).toEqual([{ id: idOf('QY-02'), label: 'QY-02', detail: null, ended: { day: '2026-11-22', how: 'died' } }]);
  expect(outing.load).toContain('1 screen or board for closing an entrance');
  expect((await ask('round.sheet', { yard: quarry, day: on })).rows.map(({ label }) => label)).not.toContain('QY-02');
  expect(stop.standing).toBe(4);
  const carry = await stopFor('Carry the dead hive home');
  expect(carry.task.colonies).toMatchObject([{ label: 'QY-02', ended: { how: 'died' } }]);
  expect(carry.outing.load).toContain('1 strap');
});

test('where nothing is written down colony by colony there is no round sheet, and the sheet opens as it was', async () => {
  await openOn(today);
  await ask('work.setTask', { key: null, task: own('Mend the fence', { yard: kiln }) });
  await ask('rounds.layout', { yard: kiln, day: day('2026-11-02'), kind: 'supers' });
  const { on, stop } = await stopFor('Mend the fence', kiln);
  expect(stop).toMatchObject({ sheet: null, standing: 0, tasks: [{ what: 'Mend the fence', of: 0, whole: false }] });
  expect(await ask('rounds.setting', { yard: kiln, day: on })).toMatchObject({ kind: 'supers', planned: null });
});

test('what is done of the whole yard is offered with the round’s work, and once entered so is no longer asked for', async () => {
  await openOn(day('2026-11-02'));
  const { on, stop, task, outing } = await stopFor('Reduce the entrances against mice');
  expect(task).toMatchObject({ whole: true, of: 5, known: true });
  expect(task.colonies.map(({ label }) => label)).toEqual(['QY-04', 'QY-02', 'QY-05', 'QY-01', 'QY-03']);
  expect(outing.load).toContain('5 entrance reducers or mouse guards');
  const { yardWork } = await ask('rounds.setting', { yard: quarry, day: on });
  expect(yardWork).toContainEqual({ what: 'Reduce the entrances against mice', task: 'entrances reduced' });
  await ask('journal.enter', { rows: [{ date: '2026-11-02', entry: 'work', yard: 'QY', hours: '1', task: `stores weighed; ${yardWork.map((one) => one.task).join('; ')}` }] });
  const asked = (await ask('work.tasks', {})).tasks.map(({ what }) => what);
  for (const { what } of yardWork) expect(asked).not.toContain(what);
  expect(stop.tasks.map(({ what }) => what)).toEqual(expect.arrayContaining(yardWork.map(({ what }) => what)));
});

test('a day without a trip has none, and a day that is over still shows what was planned then', async () => {
  await openOn(today);
  const { on } = await stopFor('Winter round: heft and look');
  expect(await ask('trip.sheet', { day: day('2027-12-24') })).toEqual({ kept: true, outings: [] });
  const { path } = (await ask('book.status', {})).book!;
  await at.desk.close();
  at = trialDesk(scratch.folder, '2027-02-20');
  await ask('book.open', { path });
  await planned();
  expect((await ask('trip.sheet', { day: on })).outings.map(({ stops }) => stops.map(({ sheet }) => sheet?.kind))).toEqual([['stores']]);
  expect((await ask('rounds.setting', { yard: quarry, day: on })).kind).toBe('stores');
});
