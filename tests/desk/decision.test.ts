import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';
import { ossarOffers } from '#core/demo/ossarOffers.ts';
import { ossarValley } from '#core/demo/ossarValley.ts';
import { enterOperation } from '#core/desk/buildDemo.ts';
import { Book } from '#core/desk/openBook.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
const january = day('2027-01-12');

/** The demo’s book, judged by a day in January, when orders are made. */
beforeAll(async () => {
  scratch = scratchFolder();
  const path = join(scratch.folder, 'january.outyard');
  const book = await Book.create(path, new Map([['name', 'Ossar Valley'], ['demoDay', january]]));
  await enterOperation(book.store, { ...ossarValley(), offers: ossarOffers() });
  await book.store.close();
  at = trialDesk(scratch.folder);
  await at.ask('book.open', { path });
});
afterAll(async () => {
  await at.desk.close();
  scratch.remove();
});

/** The answer, held against the shape that the contract promises, and without a figure that is none. */
async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const value = await at.askHeld(name, input);
  expect(JSON.stringify(value)).not.toMatch(/NaN|undefined|null,null,null,null/);
  return value;
}
const decide = (question: InputOf<'order.decide'> = {}) => ask('order.decide', question);

describe('the order in January', () => {
  test('is proved optimal, adds up, and keeps the confidence that was asked', async () => {
    const { answer, forecast, target, outcome, yards, living } = await decide();
    if (answer === null) throw new Error('an order was expected');
    expect(outcome).toBe('order');
    expect(answer.solver).toMatchObject({ name: 'HiGHS', status: 'optimal', gap: 0 });
    expect(answer.chanceShort).toBeLessThanOrEqual(0.2);
    // The drawn springs against the forecast itself: within one spring, and within the stated error by a wide margin.
    expect(Math.abs(answer.chanceShort - (answer.chanceShortExact ?? Number.NaN))).toBeLessThanOrEqual(1 / answer.solver.springs + 4 * answer.samplingError);
    const bees = answer.bees.filter(({ kind }) => kind !== 'queen');
    expect(bees.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(answer.bought);
    const packs = answer.equipment.flatMap((part) => part.packs);
    expect(answer.cash).toBe(answer.bees.reduce((sum, { total }) => sum + total, 0) + packs.reduce((sum, { total }) => sum + total, 0));
    expect(answer.total).toBeCloseTo(Object.values(answer.costs).reduce((sum, cost) => sum + cost, 0), 6);
    for (const part of answer.equipment) {
      expect(part.order).toBe(Math.max(0, part.need - part.have));
      expect(part.packs.reduce((sum, { packs: number, packSize }) => sum + number * packSize, 0)).toBeGreaterThanOrEqual(part.order);
      expect(part.notOffered).toBe(0);
    }
    expect(forecast.low).toBeLessThan(forecast.mean);
    expect(yards.reduce((sum, yard) => sum + yard.living, 0)).toBe(living);
    expect(yards.reduce((sum, yard) => sum + yard.mean, 0)).toBeCloseTo(forecast.mean, 6);
    // The windy yard of the demo is told apart in the right direction.
    expect(yards.find(({ code }) => code === 'NS')?.ratio).toBeGreaterThan(1);
    expect(target).toBeGreaterThan(forecast.mean);
  });

  test('the same question has the same answer, and more confidence or a higher target never costs less', async () => {
    expect(await decide()).toEqual(await decide());
    const { byConfidence, byTarget } = await ask('order.curves', {});
    for (const curve of [byConfidence, byTarget]) {
      const totals = curve.map(({ total }) => total ?? Infinity);
      expect(totals.filter((total) => total < Infinity).length).toBeGreaterThan(4);
      totals.slice(1).forEach((total, before) => expect(total).toBeGreaterThanOrEqual((totals[before] as number) - 0.01));
    }
    const sure = await Promise.all([0.7, 0.75, 0.8, 0.85, 0.9, 0.95].map((confidence) => decide({ confidence })));
    const costs = sure.map(({ answer }) => answer?.total ?? Number.NaN);
    costs.slice(1).forEach((cost, before) => expect(cost).toBeGreaterThanOrEqual((costs[before] as number) - 0.01));
    expect(costs.at(-1)).toBeGreaterThan(costs[0] as number);
  });

  test('a target that lives already buys nothing and says so; no splits, bought queens and old queens are kept to', async () => {
    const low = await decide({ target: 40 });
    expect(low).toMatchObject({ outcome: 'order', answer: { bought: 0, bees: [] } });
    // A few splits are held ready for the rare spring that wants them, and cost nothing in the others.
    expect(low.answer?.expectedSplits).toBeLessThan(0.2);
    expect(low.sentences.join(' ')).toContain('no bees need be bought');
    const queens = await decide({ splitQueens: 'bought', requeen: 12, priceFactor: 2, confidence: 0.95 });
    const bought = queens.answer?.bees.filter(({ kind }) => kind === 'queen').reduce((sum, { quantity }) => sum + quantity, 0);
    expect(bought).toBeGreaterThanOrEqual(12 + (queens.answer?.queensForSplits ?? 0));
    expect((await decide({ splits: false })).answer?.splits).toBe(0);
  });

  test('an impossible one names the limit and what would lift it, and still gives what can be reached', async () => {
    const poor = await decide({ budget: 600_000 });
    expect(poor).toMatchObject({ outcome: 'impossible' });
    expect(poor.limits.map(({ limit }) => limit)).toEqual(['budget']);
    expect(poor.limits[0]?.sentence).toMatch(/costs \$[\d,]+.*\$6,000 may be spent/);
    expect(poor.reached).toBeGreaterThan(40);
    expect(poor.answer?.cash).toBeLessThanOrEqual(600_000);
    const crowded = await decide({ target: 140, hours: null });
    expect(crowded.limits.map(({ limit }) => limit)).toContain('room');
    expect(crowded.limits.find(({ limit }) => limit === 'room')?.sentence).toMatch(/more places? would do/);
    // The lists are for what can be reached: its chance and its hives, not those of the target out of reach.
    expect(crowded.reached).toBeLessThan(140);
    expect(crowded.answer?.chanceShort).toBeLessThanOrEqual(0.2);
    expect(crowded.answer?.chanceShortExact).toBeLessThanOrEqual(0.21);
    expect(crowded.answer?.equipment.find(({ item }) => item === 'bottom board')).toMatchObject({ need: Math.ceil((crowded.reached ?? 0) * 1.1 - 1e-9), notOffered: 0 });
    const hurried = await decide({ hours: 1 });
    expect(hurried.limits.map(({ limit }) => limit)).toEqual(['hours']);
    const destitute = await decide({ budget: 0 });
    expect(destitute.answer).not.toBeNull();
    expect(destitute.sentences.length).toBeGreaterThan(2);
  });

  test('what the person expects moves the forecast, is kept with its reason, and can be dropped', async () => {
    const before = await decide();
    const worse = await decide({ lossRate: 0.5 });
    expect(worse.forecast.rate).toBeCloseTo(0.5, 2);
    expect(worse.answer?.bought).toBeGreaterThan(before.answer?.bought ?? 0);
    await ask('survival.keep', { yard: 6, rate: 0.7, reason: 'The windbreak blew down in December.' });
    const adjusted = await decide();
    const slope = adjusted.yards.find(({ code }) => code === 'NS');
    expect(slope?.adjusted).toEqual({ rate: 0.7, reason: 'The windbreak blew down in December.' });
    expect(slope?.mean).toBeLessThan(before.yards.find(({ code }) => code === 'NS')?.mean ?? 0);
    expect(adjusted.answer?.chanceShortExact).toBeNull();
    expect((await ask('survival.drop', { yard: 6 })).views).toEqual([]);
    expect(await at.answer('survival.keep', { yard: 99, rate: 0.2, reason: 'no such yard' })).toMatchObject({ ok: false, code: 'unknown' });
    expect(await decide()).toEqual(before);
  });

  test('offers are listed, changed, refused and dropped; without any bee offer the last price stands in', async () => {
    const { offers, paid } = await ask('offers.list', {});
    expect(offers.filter(({ what }) => what.kind !== 'equipment').map(({ seller }) => seller)).toEqual(['Sandel Road Bees', 'Upper Ferry Apiary', 'Sandel Road Bees']);
    expect(paid.some(({ kind }) => kind === 'nuc')).toBe(true);
    const [first] = offers;
    if (first === undefined) throw new Error('an offer was expected');
    const { key, words: _words, late: _late, remarks: _remarks, ...body } = first;
    expect(await at.answer('offers.keep', { key, offer: { ...body, steps: [{ from: 1, each: 0 }] } })).toMatchObject({ ok: false, code: 'refused', field: 'steps' });
    const late = await ask('offers.keep', { key, offer: { ...body, orderBy: day('2026-12-31') } });
    expect(late.offer.remarks.join(' ')).toContain('31 December 2026');
    const without = await decide();
    expect(without.leftOut).toContainEqual({ offer: key, sentence: expect.stringContaining('that day is past') });
    expect(without.answer?.bees.some(({ offer }) => offer === key)).toBe(false);
    await ask('offers.keep', { key, offer: body });
    for (const { key: one, what } of offers) if (what.kind === 'package' || what.kind === 'nuc') await ask('offers.drop', { key: one });
    expect((await decide()).sentences.join(' ')).toContain('No offer of packages is kept');
    for (const { key: _key, words: _w, late: _l, remarks: _r, ...again } of offers) if (again.what.kind === 'package' || again.what.kind === 'nuc') await ask('offers.keep', { key: null, offer: again });
    expect(await at.answer('offers.drop', { key: 'o99999' })).toMatchObject({ ok: false, code: 'unknown' });
  });

  test('package and nuc side by side', async () => {
    const { rows, sentences } = await ask('order.compare', {});
    expect(rows.map(({ kind }) => kind)).toEqual(['package', 'nuc']);
    for (const { price, lived } of rows) {
      expect(price?.from).toContain('Offer of');
      expect(lived?.of).toBeGreaterThan(10);
    }
    expect(sentences.length).toBeGreaterThan(2);
  });

  test('a kept plan holds its inputs and its answer, and is judged when the spring has come', async () => {
    const { key } = await ask('plans.keep', { question: { target: 95 }, note: 'Before the fair.' });
    const kept = await ask('plans.read', { key });
    expect(kept).toMatchObject({ day: january, note: 'Before the fair.', decision: { target: 95, question: { target: 95 } } });
    const early = await ask('plans.list', {});
    expect(early.plans).toMatchObject([{ key, survivors: null, inside: null }]);
    expect(early.tally).toMatchObject({ over: 0, inside: 0 });
    expect(await at.answer('plans.read', { key: 'p999' })).toMatchObject({ ok: false, code: 'unknown' });
  });
});
