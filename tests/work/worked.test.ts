import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';
import { allVisits, visitEntryKinds } from '#core/work/allVisits.ts';
import { aliveByYard, done, doneTogether, meanAlive } from '#core/work/workedHours.ts';
import { visitKinds, visitsOf, type WorkedVisit } from '#core/work/workedVisits.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { day } from '#shared/days.ts';
import type { Cells, Kind } from '#shared/entryForms.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

const visit = (hours: number | null): WorkedVisit => ({ day: day('2026-05-01'), yard: null, hours, people: null, miles: null });

describe('hours of a season', () => {
  test('visits without hours are reckoned like the others, with their range', () => {
    // 2, 3, 4, 5 and 6 h: mean 4, s = sqrt(2.5). Two without: 20 + 8 = 28; t(0.975, 4) = 2.776; half = 2.776 * sqrt(4 * 2.5 / 5 + 2 * 2.5) = 7.345.
    const found = done([2, 3, 4, 5, 6, null, null].map(visit));
    expect(found).toMatchObject({ visits: 7, written: 5, hours: 20 });
    expect(found.estimate?.hours).toBeCloseTo(28, 10);
    expect(found.estimate?.range[1]).toBeCloseTo(28 + 7.345, 2);
    expect(found.estimate?.range[0]).toBeCloseTo(28 - 7.345, 2);
  });
  test('with all written down there is nothing to reckon; with few nothing is reckoned', () => {
    expect(done([visit(2), visit(3)]).estimate).toEqual({ hours: 5, range: [5, 5] });
    expect(done([visit(2), visit(3), visit(null)]).estimate).toBeNull();
    expect(done([]).estimate).toBeNull();
  });
  test('work at home tells nothing of visits to yards: each part is reckoned by itself, and the parts are added', () => {
    const there = (yard: number | null, hours: number | null): WorkedVisit => ({ ...visit(hours), yard: yard as WorkedVisit['yard'] });
    // At home 20 + 20 h. In the yard 1, 2, 3, 2, 2 and one without: 10 + 2. Together 52, where one mean over all would say 50 + 50 / 7 = 57.1.
    const found = doneTogether([...[20, 20].map((hours) => there(null, hours)), ...[1, 2, 3, 2, 2, null].map((hours) => there(1, hours))]);
    expect(found).toMatchObject({ visits: 8, written: 7, hours: 50 });
    expect(found.estimate?.hours).toBeCloseTo(52, 10);
    // s² = 0.5; half = 2.776 * sqrt(0.5 / 5 + 0.5) = 2.150.
    expect(found.estimate?.range[1]).toBeCloseTo(54.15, 2);
    expect(doneTogether([there(1, 2), there(1, null)]).estimate).toBeNull();
    expect(doneTogether([]).estimate).toBeNull();
  });
  test('no range goes below what is written down', () => {
    expect(done([1, 1, 1, 1, 30, null].map(visit)).estimate?.range[0]).toBe(34);
  });
  test('colonies count by the days that they lived there', () => {
    const state = { start: day('2026-04-01'), end: day('2026-04-11'), stays: [{ yard: 1, from: day('2026-04-01'), until: day('2026-04-06') }, { yard: 2, from: day('2026-04-06'), until: null }] } as unknown as ColonyState;
    const there = aliveByYard([state], day('2026-04-01'), day('2026-04-21'));
    expect([null, 1, 2, 3].map((yard) => there(yard as never))).toEqual([0.5, 0.25, 0.25, 0]);
    expect(meanAlive([state], day('2026-04-01'), day('2026-04-21'))).toBe(0.5);
    // A season before the colony began, and one after it ended.
    expect(aliveByYard([state], day('2025-04-01'), day('2026-04-01'))(1 as never)).toBe(0);
    expect(aliveByYard([state], day('2026-04-11'), day('2027-04-01'))(2 as never)).toBe(0);
    expect(aliveByYard([state], day('2026-04-01'), day('2026-04-01'))(null)).toBeNull();
    expect(meanAlive([state], day('2026-04-01'), day('2026-04-01'))).toBeNull();
  });
});

test('visits taken from the states are those of every entry that is made beside the bees', async () => {
  const scratch = scratchFolder();
  const book = await openDemo(demoBook('ossar', scratch.folder));
  const { states, byId } = await book.picture();
  const standing = async (kinds: readonly Kind[]) => (await book.store.entries({ kinds })).flatMap(({ entry, struck }) => (struck === null ? [entry] : []));
  const found = allVisits(states, byId, await standing(visitEntryKinds));
  expect(visitEntryKinds.length).toBeLessThan(visitKinds.length);
  expect(found).toEqual(visitsOf(await standing(visitKinds), byId));
  await book.store.close();
  scratch.remove();
});

describe('at the desk', () => {
  let scratch: ReturnType<typeof scratchFolder>;
  let at: ReturnType<typeof trialDesk>;
  beforeAll(async () => {
    scratch = scratchFolder();
    at = trialDesk(scratch.folder);
    await at.ask('book.create', { name: 'Hours' });
    await at.ask('yard.keep', { code: 'QY', name: 'Quarry', room: null, minutes: 18 });
  });
  afterAll(async () => {
    await at.desk.close();
    scratch.remove();
  });
  const work = (date: string, more: Partial<Cells>): Cells => ({ date, entry: 'work', ...more });

  test('an evening’s hours count for their yard, with people, and come off again with Undo', async () => {
    expect(await at.ask('worked.seasons', {})).toMatchObject({ seasons: [] });
    expect((await at.ask('worked.ahead', {})).months.every(({ need, fits }) => need === null && fits === 'unknown')).toBe(true);
    await at.ask('journal.enter', {
      rows: [
        { date: '2026-05-01', entry: 'install', yard: 'QY', colony: 'A', origin: 'nuc' },
        { date: '2026-05-01', entry: 'install', yard: 'QY', colony: 'B', origin: 'nuc' },
        work('2026-05-01', { yard: 'QY', hours: '1.5', people: '2', miles: '20' }),
        work('2026-05-10', { yard: 'QY', hours: '1' }),
        work('2026-05-10', { hours: '2', task: 'frames' }),
        { date: '2026-05-20', entry: 'inspection', colony: 'A', frames_bees: '5' },
        { date: '2026-07-20', entry: 'harvest', colony: 'A', gross: '50', tare: '20', unit: 'kg' },
      ],
    });
    const round = await at.ask('journal.enter', { rows: [{ date: '2026-06-02', entry: 'inspection', colony: 'B', frames_bees: '6' }, work('2026-06-02', { yard: 'QY', hours: '0.75', people: '2', miles: '20' })] });
    const season = async () => (await at.ask('worked.seasons', {})).seasons[0]!;
    const one = await season();
    expect(one.season).toBe(2026);
    expect(one.rows).toMatchObject([
      { yard: { code: 'QY' }, visits: 5, written: 3, hours: 5.5, miles: 40, estimate: null, honey: 30_000 },
      { yard: null, visits: 1, written: 1, hours: 2, miles: null, colonies: null },
    ]);
    expect(one.total).toMatchObject({ visits: 6, written: 4, hours: 7.5 });
    // 27 April 2026 is the Monday of 1 May; 4 May that of 10 May.
    expect(one.busiest.slice(0, 2)).toEqual([{ monday: '2026-05-04', hours: 3, visits: 2, without: 0 }, { monday: '2026-04-27', hours: 3, visits: 1, without: 0 }]);
    await at.ask('journal.undo', { gesture: round.gesture });
    expect((await season()).total).toMatchObject({ visits: 5, written: 3, hours: 6 });
  });

  test('the season to come asks for the hours of the past, by colony, and says whether they are there', async () => {
    // Ten evenings of 2 h in May for the two colonies of May: 2 A colony-months less what was before.
    await at.ask('journal.enter', { rows: Array.from({ length: 10 }, (_, index) => work(`2026-05-${String(21 + index).padStart(2, '0')}`, { yard: 'QY', hours: '2' })) });
    const few = await at.ask('worked.ahead', { colonies: 2 });
    const many = await at.ask('worked.ahead', { colonies: 400 });
    expect(few).toMatchObject({ season: 2027, seasons: [2026], living: 2 });
    const may = (months: typeof few.months) => months.find(({ month }) => month === '2027-05')!;
    expect(may(many.months).need!.hours / may(few.months).need!.hours).toBeCloseTo(200, 6);
    expect(may(few.months).need).toMatchObject({ range: null, seasons: 1 });
    expect(may(few.months).fits).toBe('open');
    expect(may(many.months).fits).toBe('short');
    expect(few.months.map(({ month }) => month)).toEqual(['2027-04', '2027-05', '2027-06', '2027-07', '2027-08', '2027-09', '2027-10', '2027-11', '2027-12', '2028-01', '2028-02', '2028-03']);
    // House hours in May at 44 degrees north: 21 weekdays of 2 h and 5 Saturdays of 8 h, all by daylight.
    expect(may(few.months).have).toBeCloseTo(21 * 2 + 5 * 8, 6);
  });
});
