import { describe, expect, test } from 'vitest';
import type { OfferBody } from '#shared/contract/offers.ts';
import { day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { compareSources } from '#core/order/compareSources.ts';
import { firstYearHoney } from '#core/order/firstYearHoney.ts';
import { listOffer, offerTrouble } from '#core/order/offerCheck.ts';
import { paidPrices } from '#core/order/paidPrices.ts';
import { waresOf } from '#core/order/wares.ts';
import { hived, lost, recorded } from '../losses/recorded.ts';

const offer = (more: Partial<OfferBody> = {}): OfferBody => ({
  seller: 'Sandel Road Bees', what: { kind: 'package', pounds: 3 }, steps: [{ from: 1, each: 16_950 }, { from: 10, each: 16_500 }], orderBy: day('2027-01-31'),
  deliveryFrom: day('2027-04-20'), deliveryUntil: day('2027-04-30'), least: 1, most: null, deposit: null, note: null, ...more,
});

describe('an offer', () => {
  test('is kept when it holds together', () => expect(offerTrouble(offer(), false)).toBeNull());

  test.each([
    ['an empty pack', { what: { kind: 'equipment', item: 'deep box', packSize: 0 } }, 'what.packSize', 'nothing in it'],
    ['a package without bees', { what: { kind: 'package', pounds: 0 } }, 'what.pounds', 'holds no bees'],
    ['a nuc without frames', { what: { kind: 'nuc', frames: 0 } }, 'what.frames', 'holds no bees'],
    ['a price of nothing', { steps: [{ from: 1, each: 0 }] }, 'steps', 'the price is 0'],
    ['prices out of order', { steps: [{ from: 10, each: 1 }, { from: 5, each: 2 }], least: 10 }, 'steps', 'stands after'],
    ['no price for the least number', { steps: [{ from: 5, each: 1 }], least: 2 }, 'steps', 'holds from 5'],
    ['fewer to be had than must be ordered', { least: 5, most: 3 }, 'most', 'At most 3'],
    ['a delivery that ends before it begins', { deliveryUntil: day('2027-04-01') }, 'deliveryUntil', 'before it begins'],
    ['orders taken after the last delivery', { orderBy: day('2027-05-05') }, 'orderBy', 'after the last delivery'],
  ] satisfies [string, Partial<OfferBody>, string, string][])('with %s is refused in a sentence', (_, more, field, words) => {
    const trouble = offerTrouble(offer(more), false);
    expect(trouble?.field).toBe(field);
    expect(trouble?.sentence).toContain(words);
    expect(trouble?.mend).toMatch(/\.$/);
  });

  test('for nothing is kept once it is said to be meant, and says so', () => {
    const free = offer({ steps: [{ from: 1, each: 0 }] });
    expect(offerTrouble(free, true)).toBeNull();
    expect(listOffer({ ...free, key: 'o1' }, day('2027-01-12')).remarks).toEqual(['It is free.']);
  });

  test('whose order day is past is listed as late, and its last day is not', () => {
    const on = (today: string) => listOffer({ ...offer(), key: 'o1' }, day(today));
    expect(on('2027-01-31')).toMatchObject({ late: false, remarks: [] });
    expect(on('2027-02-01').remarks.join(' ')).toContain('31 January 2027');
  });

  test('that comes after the target day is left out with the reason; without any offer the last price paid stands in, and is said to', () => {
    const when = { today: day('2027-01-12'), spring: day('2027-04-01'), targetDay: day('2027-06-20') };
    const late = waresOf([{ ...offer({ deliveryFrom: day('2027-07-01'), deliveryUntil: null }), key: 'o1' }], [], when, 1, new Map(), defaultBorders);
    expect(late.leftOut[0]?.sentence).toContain('1 July 2027');
    const paid = paidPrices(recorded([hived('2026-04-24', 'A', 'QY', { price: '164', supplier: 'Sandel Road Bees' })]).entries);
    const none = waresOf([], paid, when, 1.5, new Map(), defaultBorders);
    expect(none.bees.map(({ kind, steps }) => [kind, steps[0]?.each])).toEqual([['package', 24_600], ['nuc', 18_750], ['queen', 3000]]);
    expect(none.assumed.join(' ')).toMatch(/paid on 24 April 2026.*USDA NASS/);
  });
});

test('prices paid are gathered by day, seller and price, newest first', () => {
  const { entries } = recorded([
    hived('2025-04-24', 'A', 'QY', { price: '150', supplier: 'Sandel Road Bees' }), hived('2025-04-24', 'B', 'QY', { price: '150', supplier: 'Sandel Road Bees' }), hived('2025-05-24', 'N', 'QY', { origin: 'nuc', price: '200' }),
    { date: '2025-06-01', entry: 'purchase', item: 'Deep boxes', quantity: '10', price: '235' }, { date: '2025-06-02', entry: 'requeen', colony: 'A', price: '40' }, hived('2025-06-03', 'S', 'QY', { origin: 'swarm' }),
  ]);
  expect(paidPrices(entries).map(({ day: on, kind, item, quantity, each }) => [on, kind, item, quantity, each])).toEqual([
    ['2025-06-02', 'queen', 'queen', 1, 4000], ['2025-06-01', 'equipment', 'deep box', 10, 2350], ['2025-05-24', 'nuc', 'nuc', 1, 20_000], ['2025-04-24', 'package', 'package', 2, 15_000],
  ]);
});

describe('package or nuc', () => {
  const harvest = (date: string, colony: string, weight: number) => ({ date, entry: 'harvest', yard: 'QY', colony, gross: String(weight), tare: '0', unit: 'lb' });
  const rows = [2023, 2024].flatMap((year) => [
    ...Array.from({ length: 8 }, (_, n) => hived(`${year}-04-24`, `P${year}-${n}`, 'QY', { price: '150' })),
    ...Array.from({ length: 8 }, (_, n) => hived(`${year}-05-15`, `N${year}-${n}`, 'QY', { origin: 'nuc', price: '200' })),
    ...Array.from({ length: 6 }, (_, n) => hived(`${year - 1}-05-01`, `E${year}-${n}`, 'QY', { origin: 'swarm' })),
    ...Array.from({ length: 8 }, (_, n) => [harvest(`${year}-08-10`, `P${year}-${n}`, 20 + n), harvest(`${year}-08-10`, `N${year}-${n}`, 45 + n)]).flat(),
    ...Array.from({ length: 6 }, (_, n) => harvest(`${year}-08-10`, `E${year}-${n}`, 60 + n)),
    lost(`${year}-09-01`, `P${year}-0`),
    // All are gone before the next season, so that only the wintered ones of that season stand beside its bought ones.
    ...Array.from({ length: 8 }, (_, n) => [...(n === 0 ? [] : [{ date: `${year}-10-15`, entry: 'sale', colony: `P${year}-${n}` }]), { date: `${year}-10-15`, entry: 'sale', colony: `N${year}-${n}` }]).flat(),
    ...Array.from({ length: 6 }, (_, n) => ({ date: `${year}-09-15`, entry: 'sale', colony: `E${year}-${n}` })),
  ]).toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1));

  test('with enough harvests the own record is used, with its range; the sums are those of the record', () => {
    const { states, entries } = recorded(rows);
    const facts = { states, borders: defaultBorders, rules: new Map(), asOf: day('2025-01-10'), offers: [], paid: paidPrices(entries) };
    const { rows: found, sentences } = compareSources(facts);
    expect(found.map(({ honey }) => honey.own)).toEqual([true, true]);
    expect((found[0]?.honey.grams ?? 0) / 453.59237).toBeCloseTo(23.5, 0);
    expect((found[1]?.honey.grams ?? 0) / 453.59237).toBeCloseTo(48.5, 0);
    expect(found[0]?.lived).toMatchObject({ alive: 14, of: 16 });
    expect(found[1]?.lived).toMatchObject({ alive: 16, of: 16 });
    expect(sentences.join(' ')).toMatch(/33 % more/);
    expect(sentences.join(' ')).not.toContain('overlap');
  });

  test('with few, the published figure is given with its word, and no range is made up', () => {
    const { states, entries } = recorded(rows.filter(({ date }) => (date ?? '') < '2024-01-01'));
    const found = compareSources({ states, borders: defaultBorders, rules: new Map(), asOf: day('2024-01-10'), offers: [], paid: paidPrices(entries) });
    for (const { honey } of found.rows) expect(honey).toMatchObject({ own: false, low: null, high: null, confidence: 'common practice, no source' });
    expect(found.sentences.join(' ')).toContain('too few harvests');
    expect(firstYearHoney([], defaultBorders, day('2024-01-10'), new Map()).find(({ source }) => source === 'established')).toMatchObject({ confidence: 'read', colonies: 0 });
  });
});
