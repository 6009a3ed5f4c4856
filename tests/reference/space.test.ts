import { describe, expect, test } from 'vitest';
import { addDays, day, daysBetween } from '#shared/days.ts';
import { queenCalendar } from '#core/lineage/queenCalendar.ts';
import { spaceNeed } from '#core/space/spaceNeed.ts';
import { splitCandidate, splitDaysOfSeason } from '#core/space/splits.ts';
import { swarmRisk } from '#core/space/swarmRisk.ts';
import type { HiveBoxes } from '#core/space/hiveBoxes.ts';
import { colonyWith, look, reign } from '../space/anyColony.ts';

const none = new Map<string, number | string>();
const facts = (on: string, boxes: HiveBoxes | null = { frames: 10, deep: 2, medium: 0, shallow: 0 }) => ({ day: day(on), rules: none, boxes, splitDays: [] });

// Six to seven of ten frames drawn and covered: a teaching page (mhfmbeeapiary.edublogs.org, lesson 18) and a hobby rule, seven of
// ten (thebeejournal.blogspot.com, July 2015), both read-weak. The eight-frame box at the same share is arithmetic: 5.6.
describe('add a second box at seven of ten', () => {
  test.each([
    [10, 7, 'add'], [10, 6, 'watch'], [8, 6, 'add'], [8, 5, 'watch'],
  ] as const)('a box of %i frames with %i covered: %s', (frames, bees, say) => {
    const need = spaceNeed(colonyWith({ looks: [look('2025-05-10', { framesBees: bees })] }), facts('2025-05-10', { frames, deep: 1, medium: 0, shallow: 0 }));
    expect(need.say).toBe(say);
    expect(need.add).toEqual(say === 'add' ? { box: 'deep', count: 1 } : null);
  });
});

// Southport and District Beekeepers, Numbers (southportbeekeepers.co.uk/sd-bee-times/numbers, read): sealed 8 days after the egg, the first
// virgin on day 16, so look every 7 days. Trunch Beekeepers (trunchbeekeeping.co.uk, read): every 5 days at high risk.
describe('looks in swarm season', () => {
  const calm = { looks: [look('2025-05-10', { framesBees: 8, queenCells: 'none' })], reigns: [reign(2025)] };
  const risky = { looks: [look('2025-05-10', { framesBees: 18, queenCells: 'swarm' })], reigns: [reign(2023)] };
  test('looked into on 10 May: due by 17 May, at high risk by 15 May', () => {
    expect(swarmRisk(colonyWith(calm), facts('2025-05-10'))?.nextLook).toBe('2025-05-17');
    expect(swarmRisk(colonyWith(risky), facts('2025-05-10'))).toMatchObject({ level: 'high', nextLook: '2025-05-15' });
  });
  test('an egg laid on the day of the look is sealed a day after the next one, and two days before a look nine days on', () => {
    const sealed = queenCalendar('egg', day('2025-05-10'), none).find(({ step }) => step === 'cell sealed')?.from;
    expect(sealed).toBe('2025-05-18');
    expect(swarmRisk(colonyWith(calm), facts('2025-05-10'))!.nextLook < sealed!).toBe(true);
    expect(addDays(day('2025-05-10'), 9) > sealed!).toBe(true);
  });
  test('a prime swarm when the cell is sealed, the first cast when the first virgin is out: 18 and 26 May', () => {
    const emerges = queenCalendar('egg', day('2025-05-10'), none).find(({ step }) => step === 'emerges')?.from;
    expect(emerges).toBe('2025-05-26');
    const swarmed = { looks: risky.looks, reigns: [reign(2023, '2023-05-01', { until: day('2025-05-18'), ending: 'swarmed' })] };
    expect(swarmRisk(colonyWith(swarmed), facts('2025-05-19'))?.unknown.join(' ')).toContain('26 May');
  });
});

// Older British work (Simpson, 1960s), from memory and of low certainty: second-year queens swarm about twice, third-year about three times as often
// as first-year ones. Hauser and Lensky 1994, Apidologie 25:566-578 (read): fewer swarm cells with queens of 7 to 10 months than of up to 20.
test('swarm risk grows with the queen’s age, one summer a point', () => {
  const points = [2025, 2024, 2023].map((year) => swarmRisk(colonyWith({ looks: [look('2025-05-10', { framesBees: 8, queenCells: 'none' })], reigns: [reign(year)] }), facts('2025-05-12'))?.points);
  expect(points).toEqual([1, 2, 3]);
});

// A club’s novice guide (mountain beekeepers association, read-weak): bees working 8 drawn frames, brood on at least 4.
test('fit to split at 8 frames of bees and 4 of brood', () => {
  const isFit = (framesBees: number, framesBrood: number) => splitCandidate(colonyWith({ looks: [look('2025-05-20', { framesBees, framesBrood })], reigns: [reign(2024)] }), facts('2025-05-20')) !== null;
  expect([isFit(8, 4), isFit(7.5, 4), isFit(8, 3.5)]).toEqual([true, false, false]);
});

// Walk-away split: cells at 4 to 5 days, a laying queen from day 21 (buttsbees.com, beekeeping tip 7, read-weak), verdict by day 28 (from memory).
test('a walk-away split of 20 May: cells on 24 and 25 May, eggs looked for from 10 June, given up after 17 June', () => {
  const calendar = queenCalendar('walk-away', day('2025-05-20'), none);
  expect(calendar.find(({ step }) => step === 'cells looked for')).toMatchObject({ from: '2025-05-24', until: '2025-05-25' });
  expect(calendar.find(({ step }) => step === 'look for eggs')).toMatchObject({ from: '2025-06-10', until: '2025-06-17' });
});

// Michigan and Minnesota practice, from memory: queenright splits by about 1 to 15 July, walk-away by mid June. And, from memory, of low certainty:
// 8 to 10 weeks before the last useful flow ends with a mated queen, about 12 with a cell, 13 to 14 walk-away; the flow of asters ends some two weeks
// before a first frost on 28 September.
describe('the latest split days of a northern place', () => {
  const { latest, frost } = splitDaysOfSeason(day('2025-05-15'), none);
  const of = (way: string) => latest.find((one) => one.way === way)!.day;
  test('by the calendar', () => {
    expect(of('mated') >= '2025-07-01' && of('mated') <= '2025-07-15').toBe(true);
    expect(of('walk-away') >= '2025-06-10' && of('walk-away') <= '2025-06-20').toBe(true);
  });
  test('by weeks before the flow ends', () => {
    const flowEnds = addDays(frost, -13);
    const weeks = (way: string) => daysBetween(of(way), flowEnds) / 7;
    expect([Math.round(weeks('cell')), weeks('walk-away') >= 13 && weeks('walk-away') <= 14]).toEqual([12, true]);
    // From the day the young queen lays, which is what the weeks count for a mated queen that is taken at once.
    expect(weeks('mated') - 10 / 7).toBeGreaterThanOrEqual(8);
    expect(weeks('mated') - 10 / 7).toBeLessThanOrEqual(10);
  });
});
