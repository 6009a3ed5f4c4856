import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ColonyId, EntryId, Grams, YardId } from '#shared/brands.ts';
import type { LotAct } from '#shared/contract/lots.ts';
import { addDays, day } from '#shared/days.ts';
import { gramsFrom, gramsPerPound } from '#shared/units.ts';
import { jarGrams, readSaleItem, saleItem } from '#core/honey/lots/jars.ts';
import { firstNewTrouble, troublesOf } from '#core/honey/lots/judgeStep.ts';
import { lotBook, type Lot } from '#core/honey/lots/lotBook.ts';
import type { HarvestFact, KeptStep, LotFacts, SaleFact } from '#core/honey/lots/lotFacts.ts';
import { harvestsBehind, lotsAhead } from '#core/honey/lots/traceLots.ts';

const first = day('2026-08-01');
const codes = ['A', 'B', 'C'];
const lb = (pounds: number) => gramsFrom(pounds, 'lb');

function harvestOf(at: number, pounds: number, lot: string | null, moisture: number | null = null, on = 0): HarvestFact {
  return { entry: at as EntryId, day: addDays(first, on), place: at, yard: 1 as YardId, colony: at as ColonyId, gross: lb(pounds + 20), tare: lb(20), net: lb(pounds), moisture, lot };
}
function step(key: number, lot: string, act: LotAct, on = 1): KeptStep {
  return { key: `l${String(key).padStart(5, '0')}`, lot, day: addDays(first, on), at: '', act, back: null };
}
function saleOf(at: number, lot: string | null, item: string, quantity: number | null, on = 5): SaleFact {
  return { entry: at as EntryId, day: addDays(first, on), place: at, item, quantity, price: null, lot };
}
const facts = (some: Partial<LotFacts>): LotFacts => ({ harvests: [], sales: [], steps: [], standsFor: new Map(), ...some });
const jar = { amount: 1, unit: 'lb' } as const;

const code = fc.constantFrom(...codes);
const grams = fc.double({ min: 1, max: 50_000, noNaN: true });
const water = fc.double({ min: 14, max: 24, noNaN: true });
const size = fc.constantFrom(jar, { amount: 500, unit: 'g' as const });
const anyAct: fc.Arbitrary<LotAct> = fc.oneof(
  fc.record({ what: fc.constant('made' as const), harvests: fc.array(fc.integer({ min: 1, max: 12 }).map((id) => id as EntryId), { minLength: 1, maxLength: 4 }) }),
  fc.record({ what: fc.constant('water' as const), water, reading: fc.constant(null), celsius: fc.constant(null) }),
  fc.tuple(grams, fc.double({ min: 0, max: 1, noNaN: true })).map(([gross, share]) => ({ what: 'weighed' as const, gross, tare: gross * share })),
  water.map((to) => ({ what: 'dried' as const, to })),
  fc.tuple(code, grams).map(([from, mass]) => ({ what: 'poured' as const, from, mass })),
  fc.tuple(size, fc.integer({ min: 1, max: 60 })).map(([of, count]) => ({ what: 'filled' as const, size: of, count, bestBefore: null })),
  grams.map((mass) => ({ what: 'lost' as const, mass, why: 'spilt' })),
);
const anyFacts: fc.Arbitrary<LotFacts> = fc.record({
  harvests: fc.array(fc.tuple(fc.double({ min: 0, max: 80, noNaN: true }), fc.option(code), fc.option(water), fc.integer({ min: 0, max: 9 })), { maxLength: 12 }).map((all) => all.map(([pounds, lot, moisture, on], at) => harvestOf(at + 1, pounds, lot, moisture, on))),
  steps: fc.array(fc.tuple(code, anyAct, fc.integer({ min: 0, max: 9 }), fc.boolean()), { maxLength: 25 }).map((all) => all.map(([lot, act, on, back], at) => ({ ...step(at + 1, lot, act, on), back: back && at % 5 === 0 ? { at: '', reason: 'mistyped' } : null }))),
  sales: fc.array(fc.tuple(fc.option(code), fc.constantFrom('honey, 1 lb jar', 'honey, 500 g jar', 'honey in bulk, kg', 'candles'), fc.option(fc.integer({ min: 1, max: 40 })), fc.integer({ min: 0, max: 9 })), { maxLength: 10 }).map((all) => all.map(([lot, item, quantity, on], at) => saleOf(100 + at, lot, item, quantity, on))),
  standsFor: fc.constant(new Map<EntryId, EntryId>()),
});
const left = ({ account: a }: Lot) => a.harvested + a.pouredIn + a.difference - a.dried - a.pouredOut - a.filled - a.lost - a.soldBulk;
const sum = (values: Iterable<number>) => [...values].reduce((total, one) => total + one, 0);

test('every gram is found again, in each lot and over all of them, whatever happens', () => {
  fc.assert(
    fc.property(anyFacts, (given) => {
      const { lots, loose } = lotBook(given);
      const all = [...lots.values()];
      for (const lot of all) {
        // Against what went in, not against the room's own sums: its harvests on the scale, and each step that stands.
        const own = given.harvests.filter(({ entry }) => lot.harvests.some((one) => one.entry === entry));
        expect(lot.account.gross - lot.account.tare).toBeCloseTo(sum(own.map(({ gross, tare }) => gross - tare)), 3);
        expect(lot.account.harvested).toBeCloseTo(sum(own.map(({ net }) => net)), 3);
        const acts = given.steps.filter(({ back }) => back === null).map(({ lot: of, act }) => ({ of, act }));
        const total = (mass: (one: (typeof acts)[number]) => number) => sum(acts.map(mass));
        expect(lot.account.pouredIn).toBeCloseTo(total(({ of, act }) => (act.what === 'poured' && of === lot.code && act.from !== of ? act.mass : 0)), 3);
        expect(lot.account.pouredOut).toBeCloseTo(total(({ of, act }) => (act.what === 'poured' && act.from === lot.code && act.from !== of ? act.mass : 0)), 3);
        expect(lot.account.filled).toBeCloseTo(total(({ of, act }) => (act.what === 'filled' && of === lot.code ? act.count * (act.size.unit === 'lb' ? gramsPerPound : 500) : 0)), 3);
        expect(lot.account.lost).toBeCloseTo(total(({ of, act }) => (act.what === 'lost' && of === lot.code ? act.mass : 0)), 3);
        expect(lot.account.soldBulk).toBeCloseTo(sum(given.sales.map(({ lot: of, item, quantity }) => (of === lot.code && item === 'honey in bulk, kg' ? (quantity ?? 0) * 1000 : 0))), 3);
        expect(lot.account.bulk).toBeCloseTo(left(lot), 3);
        expect(lot.account.bulk).toBeCloseTo(sum(lot.events.map(({ change }) => change)), 3);
        // What is below nought was named.
        if (lot.account.bulk < -1) expect(lot.events.some(({ trouble }) => trouble?.why === 'over')).toBe(true);
        for (const jars of lot.jars.values()) if (jars.sold > jars.filled) expect(lot.events.some(({ trouble }) => trouble?.why === 'jars')).toBe(true);
        expect(sum([...lot.jars.values()].map(({ size: of, filled }) => jarGrams(of) * filled))).toBeCloseTo(lot.account.filled, 3);
      }
      // Honey that is poured leaves one lot and reaches another; no harvest is in two lots or in none.
      expect(sum(all.map(({ account }) => account.pouredIn))).toBeCloseTo(sum(all.map(({ account }) => account.pouredOut)), 3);
      expect([...all.flatMap(({ harvests }) => harvests), ...loose].map(({ entry }) => entry).toSorted((a, b) => a - b)).toEqual(given.harvests.map(({ entry }) => entry).toSorted((a, b) => a - b));
    }),
  );
});

/** What happens to lots that were all read at harvest, as the desk would keep it: whatever overdraws is refused. */
const keptFacts = anyFacts.map((given): LotFacts => {
  const full = codes.map((lot, at) => harvestOf(200 + at, 90, lot, 17 + 2 * at));
  let kept = facts({ harvests: [...full, ...given.harvests.map((one) => ({ ...one, lot: one.lot ?? 'A', moisture: one.moisture ?? 17 }))] });
  for (const asked of given.steps) {
    const one = asked.act.what === 'poured' ? { ...asked, act: { ...asked.act, mass: asked.act.mass / 4 } } : asked;
    if (one.act.what === 'water' || one.act.what === 'weighed' || one.act.what === 'made') continue;
    const more = { ...kept, steps: [...kept.steps, one] };
    if (firstNewTrouble(kept, more) === null) kept = more;
  }
  for (const one of given.sales) {
    const more = { ...kept, sales: [...kept.sales, one] };
    if (firstNewTrouble(kept, more) === null) kept = more;
  }
  return kept;
});

test('what is not water stays: drying takes none of it, and blends keep what each lot brought', () => {
  let [moved, dried] = [0, 0];
  fc.assert(
    fc.property(keptFacts, (given) => {
      const all = [...lotBook(given).lots.values()];
      const dry = (mass: number, of: number | null) => (Math.abs(mass) < 1 ? 0 : mass * (1 - (of ?? NaN) / 100));
      const came = sum(given.harvests.map(({ net, moisture }) => dry(net, moisture)));
      const went = sum(all.flatMap(({ events }) => events.flatMap(({ of, change, water: then }) => (change < 0 && !('pouredTo' in of) && !('step' in of && of.step.act.what === 'dried') ? [dry(-change, then)] : []))));
      const there = sum(all.map(({ account, water: now }) => dry(account.bulk, now)));
      // Half a gram that is left in a tank takes the water of what is poured on it.
      expect(Math.abs(came - went - there)).toBeLessThan(1 + given.steps.length + given.harvests.length);
      moved += all.filter(({ account }) => account.pouredIn > 0).length;
      dried += all.filter(({ account }) => account.dried > 0).length;
    }),
  );
  expect(Math.min(moved, dried)).toBeGreaterThan(10);
});

test('honey that comes in after jars were filled is mixed with what is still there', () => {
  const given = facts({ harvests: [harvestOf(1, 60, 'A', 19), harvestOf(2, 60, 'A', 21, 3)], steps: [step(1, 'A', { what: 'filled', size: jar, count: 30, bestBefore: null }, 1)] });
  expect(lotBook(given).lots.get('A')).toMatchObject({ water: expect.closeTo((30 * 19 + 60 * 21) / 90, 9), waterFrom: 'harvests' });
});

test('back and forward say the same: a harvest is behind a lot exactly when the lot is ahead of it', () => {
  fc.assert(
    fc.property(anyFacts, (given) => {
      const book = lotBook(given);
      for (const lot of book.lots.keys()) {
        const behind = new Set(harvestsBehind(book, lot).map(({ harvest }) => harvest.entry));
        for (const { entry } of given.harvests) expect(behind.has(entry), `${entry} in ${lot}`).toBe(lotsAhead(book, new Set([entry])).some((one) => one.lot.code === lot));
      }
    }),
  );
});

test('what is kept and taken back again leaves the account as it was', () => {
  fc.assert(
    fc.property(anyFacts, anyAct, code, (given, act, lot) => {
      const more: LotFacts = { ...given, steps: [...given.steps, { ...step(900, lot, act), back: { at: '', reason: 'mistyped' } }] };
      expect(lotBook(more)).toEqual(lotBook(given));
      expect(firstNewTrouble(given, more)).toBeNull();
    }),
  );
});

test('a lot from comb to jar: weighed, dried, poured together, filled, sold; each overdraw is named', () => {
  const harvests = [harvestOf(1, 60, 'A', 19), harvestOf(2, 60, 'A', 21), harvestOf(3, 300, 'B', 17), harvestOf(4, 10, null)];
  const given = facts({
    harvests,
    steps: [
      step(1, 'A', { what: 'weighed', gross: lb(130), tare: lb(10) }),
      step(2, 'A', { what: 'poured', from: 'B', mass: lb(240) }, 2),
      step(3, 'A', { what: 'filled', size: jar, count: 200, bestBefore: null }, 3),
    ],
    sales: [saleOf(50, 'A', 'honey, 1 lb jar', 150), saleOf(51, null, 'honey, 1 lb jar', 5)],
  });
  const { lots, loose } = lotBook(given);
  const a = lots.get('A');
  // The worked example of the Pearson square: 120 lb at 20 % and 240 lb at 17 % give 360 lb at 18 %.
  expect(a?.water).toBeCloseTo(18, 9);
  expect((a?.account.bulk ?? 0) / gramsPerPound).toBeCloseTo(160, 6);
  expect(a?.jars.get('1 lb')).toEqual({ size: jar, filled: 200, sold: 150, bestBefore: null });
  expect(loose.map(({ entry }) => entry)).toEqual([4]);
  const more = (last: LotAct, on = 4) => firstNewTrouble(given, { ...given, steps: [...given.steps, step(9, 'A', last, on)] })?.event.trouble ?? null;
  expect(more({ what: 'filled', size: jar, count: 160, bestBefore: null })).toBeNull();
  expect(more({ what: 'filled', size: jar, count: 161, bestBefore: null })).toMatchObject({ why: 'over', by: expect.closeTo(gramsPerPound, 3) });
  expect(more({ what: 'lost', mass: lb(161), why: 'spilt' })?.why).toBe('over');
  expect(more({ what: 'poured', from: 'B', mass: lb(61) })?.why).toBe('over');
  expect(more({ what: 'poured', from: 'A', mass: 5 })?.why).toBe('itself');
  expect(more({ what: 'dried', to: 18.5 })?.why).toBe('not dry');
  // A day before the jars were filled: then the jars would be too many.
  expect(more({ what: 'lost', mass: lb(200), why: 'spilt' }, 2)?.why).toBe('over');
  const sold = firstNewTrouble(given, { ...given, sales: [...given.sales, saleOf(52, 'A', 'honey, 1 lb jar', 51)] });
  expect(sold?.event.trouble).toEqual({ why: 'jars', by: 1, size: jar });
  // A harvest struck after its honey was in jars is a difference, not a lost record.
  const struck = lotBook({ ...given, harvests: harvests.slice(0, 2) });
  expect([...troublesOf(struck).values()].map(({ lot, event }) => [lot.code, event.trouble?.why])).toEqual([['B', 'over']]);
  // Only what was in B before it was poured is behind A.
  const later = lotBook({ ...given, harvests: [...harvests, harvestOf(5, 50, 'B', 17, 8)] });
  expect(harvestsBehind(later, 'A').map(({ harvest, via }) => [harvest.entry, via])).toEqual([[1, null], [2, null], [3, 'B']]);
});

test('jars of one size with two days of best before are told apart, and the oldest are sold first', () => {
  const fill = (key: number, count: number, bestBefore: string | null, on: number) => step(key, 'A', { what: 'filled', size: jar, count, bestBefore: bestBefore === null ? null : day(bestBefore) }, on);
  const jarsOf = (steps: readonly KeptStep[], sales: readonly SaleFact[]) => [...(lotBook(facts({ harvests: [harvestOf(1, 300, 'A')], steps, sales })).lots.get('A')?.jars.values() ?? [])].map(({ bestBefore, filled, sold }) => [bestBefore, filled, sold]);
  const steps = [fill(1, 50, '2028-10-10', 1), fill(2, 40, '2028-08-05', 2), fill(3, 10, null, 2), fill(4, 20, '2028-08-05', 3)];
  const sold = (quantity: number, on = 5) => saleOf(50 + quantity, 'A', 'honey, 1 lb jar', quantity, on);
  expect(jarsOf(steps, [])).toEqual([['2028-10-10', 50, 0], ['2028-08-05', 60, 0], [null, 10, 0]]);
  expect(jarsOf(steps, [sold(70)])).toEqual([['2028-10-10', 50, 10], ['2028-08-05', 60, 60], [null, 10, 0]]);
  // Only jars that are there on the day of the sale can have been sold.
  expect(jarsOf(steps, [sold(30, 1), sold(70)])).toEqual([['2028-10-10', 50, 40], ['2028-08-05', 60, 60], [null, 10, 0]]);
  // Jars sold before they were filled are those of the next filling, and are named as trouble.
  expect(jarsOf(steps, [sold(30, 0)])).toEqual([['2028-10-10', 50, 30], ['2028-08-05', 60, 0], [null, 10, 0]]);
  expect(jarsOf(steps, [sold(121)])).toEqual([['2028-10-10', 50, 50], ['2028-08-05', 60, 60], [null, 10, 11]]);
});

test('items of sales are read as they are written', () => {
  for (const of of [jar, { amount: 12, unit: 'oz' }, { amount: 500, unit: 'g' }, { amount: 2.5, unit: 'kg' }] as const) expect(readSaleItem(saleItem(of, 'lb'))).toEqual({ kind: 'jar', size: of });
  expect(readSaleItem(saleItem(null, 'kg'))).toEqual({ kind: 'bulk', unit: 'kg' });
  expect([readSaleItem('candles'), readSaleItem('honey'), readSaleItem('honey, 0 g')]).toEqual([null, null, null]);
  expect(jarGrams({ amount: 16, unit: 'oz' })).toBeCloseTo(gramsPerPound as number as Grams, 9);
});
