import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { boxesInWords, deepFramesIn, type HiveBoxes } from '#core/space/hiveBoxes.ts';
import { spaceNeed } from '#core/space/spaceNeed.ts';
import { splitCandidate, splitDaysOfSeason } from '#core/space/splits.ts';
import { swarmRisk } from '#core/space/swarmRisk.ts';
import { colonyWith, look, reign } from './anyColony.ts';

const none = new Map<string, number | string>();
const one: HiveBoxes = { frames: 10, deep: 1, medium: 0, shallow: 0 };
const two: HiveBoxes = { ...one, deep: 2 };
const facts = (on: string, boxes: HiveBoxes | null = two, splits: string[] = [], rules: ReadonlyMap<string, number | string> = none) => ({ day: day(on), rules, boxes, splitDays: splits.map(day) });

describe('room', () => {
  const seen = (framesBees: number | null) => colonyWith({ looks: [look('2026-05-10', { framesBees })], reigns: [reign(2025)] });
  const need = (bees: number | null, boxes: HiveBoxes | null, on = '2026-05-15', splits: string[] = []) => spaceNeed(seen(bees), facts(on, boxes, splits));

  test('brood boxes up to the house’s number first, honey supers then, two at most', () => {
    expect(need(7, one)).toMatchObject({ say: 'add', add: { box: 'deep', count: 1 }, rests: { kind: 'inspection', day: '2026-05-10' } });
    expect(need(14, two)).toMatchObject({ say: 'add', add: { box: 'medium', count: 1 } });
    expect(need(20, two)).toMatchObject({ say: 'add', add: { box: 'medium', count: 2 } });
    expect(need(13.5, two)).toMatchObject({ say: 'watch', add: null });
    expect(need(11, two).say).toBe('enough');
    // A medium comb counts by its height, 6 1/4 of 9 1/8 inches.
    expect(deepFramesIn({ ...two, medium: 1 })).toBeCloseTo(26.849, 3);
    expect(need(14, { ...two, medium: 1 }).say).toBe('enough');
  });

  test('what tells nothing of today asks for a look, and never for a box', () => {
    expect(need(null, two)).toMatchObject({ say: 'not told', bees: null, rests: null });
    expect(need(7, null)).toMatchObject({ say: 'not told', bees: 7 });
    expect(need(18, two, '2026-06-01')).toMatchObject({ say: 'look first' });
    expect(need(18, two, '2026-05-31').say).toBe('add');
    expect(need(18, two, '2026-05-15', ['2026-05-12']).reason).toContain('split since');
    expect(need(18, two, '2026-05-15', ['2026-05-09']).say).toBe('add');
    const swarmed = colonyWith({ looks: [look('2026-05-10', { framesBees: 18 })], reigns: [reign(2025, '2025-05-01', { until: day('2026-05-14'), ending: 'swarmed' })] });
    expect(spaceNeed(swarmed, facts('2026-05-15')).reason).toContain('swarmed since');
    expect(spaceNeed(swarmed, facts('2026-05-13')).say).toBe('add');
    expect(need(14, { ...one, frames: 8 })).toMatchObject({ say: 'look first', add: null });
  });

  test('not in winter', () => expect(need(18, two, '2026-01-10').say).toBe('out of season'));
  test('boxes in words', () => expect([one, { ...two, medium: 1 }, { ...two, medium: 2, shallow: 1 }].map(boxesInWords)).toEqual(['1 deep of 10 frames', '2 deeps and 1 medium of 10 frames', '2 deeps, 2 mediums and 1 shallow of 10 frames']));
});

describe('swarm risk', () => {
  const risk = (told: Parameters<typeof colonyWith>[0], on = '2026-05-15', splits: string[] = []) => swarmRisk(colonyWith(told), facts(on, two, splits));

  test('points add up from reasons, each by its rule, and the level follows', () => {
    const calm = risk({ looks: [look('2026-05-10', { framesBees: 8, queenCells: 'none' })], reigns: [reign(2026)] });
    expect(calm).toMatchObject({ level: 'low', points: 1, unknown: [], nextLook: '2026-05-17' });
    const second = risk({ looks: [look('2026-05-10', { framesBees: 15, queenCells: 'none' })], reigns: [reign(2025)] });
    expect(second).toMatchObject({ level: 'some', points: 3, reasons: expect.arrayContaining([expect.objectContaining({ rule: 'space.risk.lastYear', points: 1 }), expect.objectContaining({ rule: 'space.risk.full', points: 1 })]) });
    const packed = risk({ looks: [look('2026-05-10', { framesBees: 18, queenCells: 'none' })], reigns: [reign(2024)] });
    expect(packed).toMatchObject({ level: 'high', points: 5, nextLook: '2026-05-15' });
    const cells = risk({ looks: [look('2026-05-10', { framesBees: 18, queenCells: 'swarm' })], reigns: [reign(2024)] });
    expect(cells?.points).toBe(9);
    expect(cells?.reasons[0]).toMatchObject({ rule: 'space.risk.cells', rests: { kind: 'inspection', day: '2026-05-10' } });
    expect(cells?.reasons.reduce((sum, { points }) => sum + points, 0)).toBe(cells?.points);
  });

  test('a split takes points off and answers the cells seen before it; the bees of before it no longer count', () => {
    const split = risk({ looks: [look('2026-05-10', { framesBees: 18, queenCells: 'swarm' })], reigns: [reign(2024)] }, '2026-05-15', ['2026-05-10']);
    expect(split).toMatchObject({ level: 'low', points: 1 });
    expect(split?.reasons.map(({ rule }) => rule)).toEqual(['space.risk.older', 'space.risk.season', 'space.risk.split']);
  });

  test('what is not known is said, and gives no points', () => {
    const blank = risk({ looks: [], reigns: [reign(null)] });
    expect(blank).toMatchObject({ level: 'low', points: 1, lastLook: null, nextLook: '2026-05-15' });
    expect(blank?.unknown).toHaveLength(3);
    const old = risk({ looks: [look('2025-09-10', { framesBees: 18, queenCells: 'swarm' })], reigns: [reign(2026)] });
    expect(old).toMatchObject({ points: 1 });
    expect(old?.unknown.join(' ')).toContain('10 September 2025');
  });

  test('after a swarm the first cast is spoken of', () => {
    const gone = risk({ looks: [look('2026-05-10', { framesBees: 18, queenCells: 'swarm' })], reigns: [reign(2024, '2024-05-01', { until: day('2026-05-14'), ending: 'swarmed' })] });
    expect(gone).toMatchObject({ level: 'low', points: 1 });
    expect(gone?.unknown.join(' ')).toContain('22 May');
  });

  test('only in swarm season, its days included', () => {
    expect(['2026-04-24', '2026-04-25', '2026-06-30', '2026-07-01'].map((on) => risk({}, on) !== null)).toEqual([false, true, true, false]);
  });
});

describe('splits', () => {
  const strong = { looks: [look('2026-05-20', { framesBees: 12, framesBrood: 6, eggs: true })], reigns: [reign(2025)] };

  test('a strong colony by a look that holds; the ways that are still open', () => {
    expect(splitCandidate(colonyWith(strong), facts('2026-05-25'))).toMatchObject({ ways: ['mated', 'cell', 'walk-away'], rests: { kind: 'inspection', day: '2026-05-20' } });
    const late = colonyWith({ ...strong, looks: [look('2026-06-20', { framesBees: 12, framesBrood: 6 })] });
    expect(splitCandidate(late, facts('2026-06-21'))?.ways).toEqual(['mated', 'cell']);
    expect(splitCandidate(late, facts('2026-07-03'))?.ways).toEqual(['mated']);
    expect(splitCandidate(late, facts('2026-07-04'))).toBeNull();
  });

  test.each([
    ['too few bees', { ...strong, looks: [look('2026-05-20', { framesBees: 7.5, framesBrood: 6 })] }],
    ['too little brood', { ...strong, looks: [look('2026-05-20', { framesBees: 12, framesBrood: 3.5 })] }],
    ['brood not told', { ...strong, looks: [look('2026-05-20', { framesBees: 12 })] }],
    ['no eggs', { ...strong, looks: [look('2026-05-20', { framesBees: 12, framesBrood: 6, eggs: false })] }],
    ['an old look', { ...strong, looks: [look('2026-04-20', { framesBees: 12, framesBrood: 6 })] }],
    ['no queen', { ...strong, reigns: [] }],
  ])('not with %s', (_, told) => expect(splitCandidate(colonyWith(told), facts('2026-05-25'))).toBeNull());

  test('not twice in a season, and not before its days', () => {
    expect(splitCandidate(colonyWith(strong), facts('2026-05-25', two, ['2026-05-15']))).toBeNull();
    expect(splitCandidate(colonyWith(strong), facts('2026-05-25', two, ['2025-05-15']))).not.toBeNull();
    expect(splitCandidate(colonyWith({ ...strong, looks: [look('2026-04-28', { framesBees: 12, framesBrood: 6 })] }), facts('2026-04-30'))).toBeNull();
  });

  test('the latest days follow the frost and the rules', () => {
    const days = splitDaysOfSeason(day('2026-05-15'), new Map<string, number | string>([['space.frost', '10-20'], ['space.split.weeks', 10]]));
    expect(days.latest.map(({ day: on }) => on)).toEqual(['2026-08-01', '2026-07-21', '2026-07-14']);
    // In winter the answer is for the season that is running.
    expect(splitDaysOfSeason(day('2027-01-10'), none).frost).toBe('2026-09-28');
  });
});
