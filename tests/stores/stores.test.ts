import fc from 'fast-check';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { gramsFrom, massIn, millilitresFrom, volumeIn } from '#shared/units.ts';
import type { Look } from '#core/journal/colonyState.ts';
import { storesInCombs, storesInHive, storesNow } from '#core/stores/storesNow.ts';
import { storesVerdict } from '#core/stores/storesVerdict.ts';
import { heavySyrupUntil, storesAtMost, syrupFor, syrupOfSugar } from '#core/stores/syrup.ts';

const none = new Map<string, number | string>();
const lb = (amount: number) => gramsFrom(amount, 'lb');
const look = (on: string, framesStores: number | null): Look => ({ day: day(on), framesBees: null, framesBrood: null, framesStores, eggs: null, queenSeen: null, queenCells: null, temper: null });
const fed = (on: string) => ({ day: day(on), feed: 'syrup 2:1' as never, grams: null, millilitres: 3785 });

test('the newest word on stores counts, the scale before the eye, and feed given since is told', () => {
  const state = {
    storesWeights: [{ day: day('2026-09-20'), grams: lb(50), fedBefore: 1 }, { day: day('2026-10-20'), grams: lb(71), fedBefore: 0 }],
    looks: [look('2026-08-30', 6), look('2026-09-20', 9), look('2026-10-01', 8), look('2026-10-05', null)],
    feedings: [fed('2026-09-18'), fed('2026-09-20'), fed('2026-10-01'), fed('2026-10-03'), fed('2026-10-20')],
  };
  const at = (on: string) => {
    const now = storesNow(state, day(on), none);
    return now === null ? null : { ...now, fedAfter: now.fedAfter.map((one) => one.day) };
  };
  expect(at('2026-08-29')).toBeNull();
  expect(at('2026-09-01')).toMatchObject({ from: 'frames', day: '2026-08-30', mass: lb(42), fedAfter: [] });
  // Of the day of the weighing only what was written down after it.
  expect(at('2026-09-25')).toMatchObject({ from: 'weight', day: '2026-09-20', mass: lb(50), fedAfter: [] });
  expect(at('2026-10-10')).toMatchObject({ from: 'frames', day: '2026-10-01', mass: lb(56), fedAfter: ['2026-10-01', '2026-10-03'] });
  expect(at('2026-12-01')).toMatchObject({ from: 'weight', day: '2026-10-20', fedAfter: ['2026-10-20'] });
  expect(storesNow({ storesWeights: [], looks: [look('2026-09-01', null)], feedings: [] }, day('2026-10-01'), none)).toBeNull();
});

test('within the slack stores are left; above it they may be taken, below it they are fed', () => {
  const say = (pounds: number) => storesVerdict(lb(pounds), 'middle', none).say;
  expect([54.9, 55, 60, 65, 65.1].map(say)).toEqual(['feed', 'leave', 'leave', 'leave', 'take']);
  expect(storesVerdict(lb(58), 'middle', none).amount).toBe(0);
  expect(massIn(storesVerdict(lb(80), 'middle', none).amount, 'lb')).toBe(20);
  expect(storesVerdict(lb(58), 'middle', new Map([['stores.slack', 0]])).say).toBe('feed');
  expect(() => storesVerdict(Number.NaN as never, 'middle', none)).toThrow(RangeError);
});

test('a hive lighter than its own parts is refused with a sentence', () => {
  expect(storesInHive(lb(70), lb(65), none)).toMatchObject({ ok: false, field: 'gross' });
  expect(storesInHive(lb(75), lb(65), none)).toMatchObject({ ok: true });
  expect(() => storesInCombs({ deep: -1, medium: 0, shallow: 0 }, none)).toThrow(RangeError);
});

test('syrup makes up what is short, by no more than a gallon or litre too much', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 200, noNaN: true }), fc.constantFrom('heavy' as const, 'light' as const), fc.constantFrom('gal' as const, 'l' as const), (pounds, mix, unit) => {
      const feed = syrupFor(lb(pounds), mix, unit, none);
      const over = volumeIn(feed.volume, unit) - volumeIn(feed.exact, unit);
      expect(over).toBeGreaterThan(-1e-5);
      expect(over).toBeLessThan(1);
      expect(feed.sugar + feed.water).toBeCloseTo(feed.mass, 6);
      expect(syrupOfSugar(feed.sugar, mix).volume).toBeCloseTo(feed.volume, 6);
    }),
  );
  expect(syrupFor(lb(0), 'heavy', 'gal', none)).toMatchObject({ volume: 0, sugar: 0 });
  expect(volumeIn(syrupFor(lb(14), 'heavy', 'gal', none).volume, 'gal')).toBe(2);
});

test('the house’s pounds from a gallon are never more than sugar can give', () => {
  const gallon = millilitresFrom(1, 'gal');
  expect(massIn(storesAtMost(gallon, 'heavy'), 'lb')).toBeGreaterThan(7);
  expect(massIn(storesAtMost(gallon, 'light'), 'lb')).toBeGreaterThan(5);
});

test('heavy syrup is fed until the day of the house rule, that day included', () => {
  expect(heavySyrupUntil(day('2026-10-15'), none)).toEqual({ until: '2026-10-15', past: false });
  expect(heavySyrupUntil(day('2026-10-16'), none).past).toBe(true);
  expect(heavySyrupUntil(day('2026-09-30'), new Map([['stores.feedBy', '09-20']]))).toEqual({ until: '2026-09-20', past: true });
});
