import { expect, test } from 'vitest';
import type { HouseRule } from '#shared/contract/order.ts';
import type { ListedOffer } from '#shared/contract/offers.ts';
import { day } from '#shared/days.ts';
import { costGeometry } from '../../renderer/charts/costGeometry.ts';
import { csvText } from '../../renderer/parts/csv.ts';
import { bySeller } from '../../renderer/screens/orders/bySeller.ts';
import { blankOffer, partOf, readOffer, type TypedOffer } from '../../renderer/screens/orders/readOffer.ts';
import { readPlaced, typedLines, withPrice } from '../../renderer/screens/orders/readPlaced.ts';
import { readConfidence, readCount, readQuestion, type Typing } from '../../renderer/screens/orders/readQuestion.ts';
import { readHigh } from '../../renderer/screens/mites/mitesText.ts';
import { readCents, readPrice } from '../../renderer/screens/orders/readCents.ts';
import { words as orderWords } from '../../renderer/screens/orders/words.ts';
import { readRule, ruleText, ruleTyped } from '../../renderer/screens/stock/readRule.ts';

test('a target is a whole number of colonies; nothing typed means as many as were wintered', () => {
  expect(readCount('104')).toBe(104);
  expect(readCount(' 1,200 ')).toBe(1200);
  expect(readCount('0')).toBe(0);
  expect(readCount('')).toBeNull();
  for (const wrong of ['-1', '10.5', 'many', '20001', '1e3']) expect(readCount(wrong), wrong).toBeUndefined();
});

test('a confidence lies between 50 and 99 per cent', () => {
  expect(readConfidence('90')).toBe(0.9);
  expect(readConfidence('92.5 %')).toBe(0.925);
  expect(readConfidence('92,5')).toBe(0.925);
  for (const wrong of ['', '49', '100', '9', '99.5', 'sure']) expect(readConfidence(wrong), wrong).toBeNull();
});

const rule: HouseRule = {
  key: 'frames', label: 'Frames', room: 'order', unit: 'frames', type: 'number', value: 10, default: 10, range: [8, 12], source: '', confidence: 'arithmetic',
};

test('a house rule keeps to its range and its form', () => {
  expect(readRule(rule, '9')).toEqual({ ok: true, value: 9 });
  expect(readRule(rule, '9,5')).toEqual({ ok: true, value: 9.5 });
  expect(readRule(rule, '13').ok).toBe(false);
  expect(readRule(rule, '').ok).toBe(false);
  expect(readRule(rule, 'ten').ok).toBe(false);
  expect(readRule({ ...rule, range: null }, '1,200')).toEqual({ ok: true, value: 1200 });
  expect(readRule({ ...rule, type: 'month-day' }, '01-31')).toEqual({ ok: true, value: '01-31' });
  expect(readRule({ ...rule, type: 'month-day' }, '02-29').ok).toBe(false);
  expect(readRule({ ...rule, type: 'text' }, ' Sandel Road Bees ')).toEqual({ ok: true, value: 'Sandel Road Bees' });
});

test('a share is shown and typed in per cent', () => {
  const share: HouseRule = { ...rule, unit: 'share', value: 0.288, default: 0.288, range: [0.05, 0.8] };
  expect(ruleText(share, 0.288)).toBe('28.8\u00a0%');
  expect(ruleTyped(share)).toBe('28.8');
  expect(readRule(share, '28.8')).toEqual({ ok: true, value: 0.288 });
  expect(readRule(share, '35 %')).toEqual({ ok: true, value: 0.35 });
  expect(readRule(share, '0.35').ok).toBe(false);
});

test('a day of the year is shown in words', () => {
  expect(ruleText({ ...rule, type: 'month-day' }, '01-31')).toBe('31\u00a0Jan');
  expect(ruleText(rule, 9)).toBe('9\u00a0frames');
});

const typing: Typing = { target: '', confidence: '80', frames: '10', splits: 'yes', queens: 'raised', requeen: '', budget: '', hours: '', price: 100, loss: null };

test('the question holds what was chosen, and no question is asked while a field cannot be read', () => {
  expect(readQuestion(typing, 'lost')).toEqual({ confidence: 0.8, hiveFrames: 10, united: 'lost', splits: true, splitQueens: 'raised', requeen: 0, budget: null });
  expect(readQuestion({ ...typing, target: '0', budget: '1,500', hours: '12', price: 120, loss: 45, splits: 'no' }, 'takenOut')).toEqual({
    target: 0, confidence: 0.8, hiveFrames: 10, united: 'takenOut', splits: false, splitQueens: 'raised', requeen: 0, budget: 150_000, hours: 12, priceFactor: 1.2, lossRate: 0.45,
  });
  for (const wrong of [{ target: 'some' }, { confidence: '120' }, { requeen: '-1' }, { budget: 'much' }, { hours: '1.5' }]) expect(readQuestion({ ...typing, ...wrong }, 'lost')).toBeNull();
});

test('an offer is read with its price steps and days, or says at each field what is wrong', () => {
  const typed = { ...blankOffer, seller: ' Sandel Road Bees ', each: '169.50', from2: '10', each2: '$165', orderBy: '1/31/2027', most: '60', deposit: '40' };
  expect(readOffer(typed, 'month-first')).toEqual({
    faults: {},
    offer: {
      seller: 'Sandel Road Bees', what: { kind: 'package', pounds: 3 }, steps: [{ from: 1, each: 16_950 }, { from: 10, each: 16_500 }], orderBy: '2027-01-31', deliveryFrom: null, deliveryUntil: null,
      least: 1, most: 60, deposit: 4000, note: null,
    },
  });
  const bad = readOffer({ ...blankOffer, kind: 'equipment', packSize: 'five', orderBy: 'soon', least: 'x' }, 'month-first');
  expect(bad.offer).toBeNull();
  expect(Object.keys(bad.faults).toSorted()).toEqual(['each', 'item', 'least', 'orderBy', 'packSize', 'seller']);
  expect([partOf('what.packSize'), partOf('steps'), partOf('most'), partOf('nothing'), partOf(undefined)]).toEqual(['packSize', 'each', 'most', null, null]);
});

test('lines stand under their sellers, the soonest day first, and add up', () => {
  const bees = [{ offer: 'o1', seller: 'Upper Ferry Apiary', kind: 'nuc' as const, words: 'nucs', quantity: 2, each: 22_000, total: 44_000, deposit: 10_000, orderBy: day('2027-02-15'), delivery: [null, null] as [null, null], reason: '' }];
  const part = { item: 'deep box', need: 9, onHives: 0, fromDeadOuts: 0, shed: 0, yards: 0, onOrder: 0, have: 0, toMend: 0, order: 9, notOffered: 0, reason: '' };
  const packs = [{ offer: 'o2', seller: 'farm store', packSize: 5, packs: 2, each: 14_500, total: 29_000, orderBy: day('2027-01-10') }];
  const orders = bySeller({ bees, equipment: [{ ...part, packs }, { ...part, item: 'stand', packs: [] }] });
  expect(orders.map(({ seller, total, deposit, lines }) => [seller, total, deposit, lines.length])).toEqual([['farm store', 29_000, 0, 1], ['Upper Ferry Apiary', 44_000, 10_000, 1]]);
});

test('what was ordered is read as it was agreed: the price follows the offer until one is typed, and 0 leaves a line out', () => {
  const line = { offer: 'o1', words: '3 lb packages', quantity: 7, packSize: 1, each: 16_950, total: 118_650, deposit: null, orderBy: day('2027-01-31'), delivery: [null, null] as const, reason: '' };
  const offer = { steps: [{ from: 1, each: 16_950 }, { from: 10, each: 16_550 }] } as unknown as ListedOffer;
  const [first] = typedLines([line]);
  expect(first).toMatchObject({ quantity: '7', each: '169.50', own: false });
  const ten = withPrice({ ...first!, quantity: '10' }, offer);
  expect(ten.each).toBe('165.50');
  expect(withPrice({ ...first!, quantity: '10', each: '150', own: true }, offer).each).toBe('150');
  expect(readPlaced([ten, { ...first!, offer: 'o2', quantity: '' }])).toMatchObject({ lines: [{ offer: 'o1', quantity: 10, each: 16_550 }], total: 165_500 });
  expect(readPlaced([{ ...first!, quantity: '0', each: '' }])).toMatchObject({ lines: null, nothing: true });
  expect(readPlaced([{ ...first!, quantity: 'ten' }, { ...first!, each: 'dear' }])).toMatchObject({ lines: null, nothing: false, faults: [{ quantity: expect.any(String) }, { each: expect.any(String) }] });
});

test('a cost curve stands on 0, leaves out what cannot be reached, and marks what was asked for', () => {
  const picture = costGeometry({ points: [{ at: 50, cash: 0, total: 10_000 }, { at: 90, cash: null, total: null }, { at: 80, cash: 20_000, total: 40_000 }], chosen: 80, names: { cash: 'paid', total: 'all', chosen: '80 %' }, width: 400 });
  const [total, cash] = picture.lines;
  expect([total?.dots.length, cash?.dots.length]).toEqual([2, 2]);
  expect(cash?.dots[0]?.y).toBe(picture.bottom);
  expect(total?.dots.at(-1)?.y).toBe(picture.top);
  expect(picture.chosen.x).toBe(total?.dots.at(-1)?.x);
  expect(JSON.stringify(costGeometry({ points: [], chosen: 5, names: { cash: '', total: '', chosen: '' }, width: 300 }))).not.toMatch(/NaN|null,null/);
});

test('thousands of colonies are parted where the order speaks of them', () => {
  expect(orderWords.onlyReached(1070, 1200)).toBe('What follows is for 1,070, not for 1,200.');
});

test('a CSV cell is quoted where it must be, and never runs as a formula', () => {
  expect(csvText(['a', 'b'], [['=1+1', 'x, "y"'], [null, 2.5]])).toBe('a,b\r\n\'=1+1,"x, ""y"""\r\n,2.5\r\n');
});

test('units after the number, decimal commas and dollars are understood where they are the field’s own, and another unit is refused as that', () => {
  expect([readCount('120 colonies'), readCount('40 h', 100_000, ['h']), readCount('12 lb')]).toEqual([120, 40, undefined]);
  expect([readCents('$1,234.50'), readCents('160,50'), readCents('240 $'), readCents('1.005'), readCents('-3'), readCents('12 lb')]).toEqual([123_450, 16_050, 24_000, null, null, null]);
  const days: HouseRule = { ...rule, unit: 'days', range: [7, 120] };
  expect([readRule(days, '30 days'), readRule(days, '30 %'), readRule(days, '500 days')]).toEqual([{ ok: true, value: 30 }, { ok: false, sentence: '“30 %” has another unit. This rule is in days.' }, { ok: false, sentence: 'Type a number from 7 to 120.' }]);
  expect([readRule({ ...rule, unit: '°F', range: [0, 120] }, '20 °C'), readRule({ ...rule, unit: 'lb', range: [0, 100] }, '45.359237 kg'), readRule({ ...rule, unit: 'minutes', range: [0, 480] }, '1.5 h')].map((read) => read.ok && read.value)).toEqual([68, 100, 90]);
  expect([readHigh('24 C', 'lb'), readHigh('20', 'kg'), readHigh('', 'lb'), readHigh('500 °F', 'lb'), readHigh('12 kg', 'lb').says]).toEqual([
    { value: 75.2, says: null }, { value: 68, says: null }, { value: null, says: null }, { value: null, says: '“500 °F” is above 130 °F, the most that makes sense here.' }, '“12 kg” is not in °F, nor in a unit that becomes °F. Type it in °F, such as 75.',
  ]);
  const offer = (typed: Partial<TypedOffer>) => readOffer({ ...blankOffer, seller: 'S', each: '160', orderBy: '2027-01-31', ...typed }, 'month-first');
  expect(offer({ pounds: '3 lb', least: '10 packages' }).offer).toMatchObject({ what: { kind: 'package', pounds: 3 }, least: 10 });
  expect([offer({ pounds: '3 gal' }).faults.pounds, offer({ pounds: '300' }).faults.pounds]).toEqual(['“3 gal” is not in lb, nor in a unit that becomes lb. Type it in lb, such as 3.', '“300” is above 20 lb, the most that makes sense here.']);
});

test.each([
  ['dear', '“dear” is not a number. Type a price, such as 160 or 160.50.'],
  ['1e3', '“1e3” is not a number. Type a price, such as 160 or 160.50.'],
  ['-3', '“-3” is below zero. A price is 0 or more.'],
  ['−3.50', '“−3.50” is below zero. A price is 0 or more.'],
  ['1.005', '“1.005” has parts of a cent. Type at most two decimals, such as 160.50.'],
  ['€160', '“€160” is in other money. Prices in this book are in dollars: change it, and type the number alone.'],
  ['160 £', '“160 £” is in other money. Prices in this book are in dollars: change it, and type the number alone.'],
  ['C$160', '“C$160” is in other money. Prices in this book are in dollars: change it, and type the number alone.'],
  ['160 EUR', '“160 EUR” is in other money. Prices in this book are in dollars: change it, and type the number alone.'],
  ['12 lb', '“12 lb” has a unit that is no money. Type the price alone, such as 160.50.'],
  ['99999999', '“99999999” is above 10,000,000, the most that makes sense here.'],
  ['', 'Type a price, such as 160 or 160.50.'],
])('the price “%s” is refused for what is wrong with it, in an offer and in an order', (each, sentence) => {
  expect(readPrice(each)).toEqual({ ok: false, sentence });
  expect(readOffer({ ...blankOffer, seller: 'S', each, orderBy: '2027-01-31' }, 'month-first').faults).toEqual({ each: sentence });
  expect(readPlaced([{ offer: 'o1', words: '3 lb packages', packSize: 1, quantity: '2', each, own: true }]).faults).toEqual([{ each: sentence }]);
});

test.each([['160', 16_000], ['$160', 16_000], ['US$ 160', 16_000], ['USD 160.50', 16_050], ['160.5 dollars', 16_050], ['1,234.50', 123_450], ['0', 0], ['10000000', 1_000_000_000]])('the price “%s” is understood', (typed, cents) => expect(readPrice(typed)).toEqual({ ok: true, cents }));

test('numbers of an offer beyond what can be are refused at their field, not by the desk', () => {
  const faults = (typed: Partial<TypedOffer>) => readOffer({ ...blankOffer, seller: 'S', each: '160', orderBy: '2027-01-31', ...typed }, 'month-first').faults;
  expect(faults({ least: '100001' })).toEqual({ least: '“100001” is above 100,000, the most that makes sense here.' });
  expect(faults({ kind: 'nuc', frames: '13' })).toEqual({ frames: '“13” is above 12, the most that makes sense here.' });
  expect(faults({ least: '2.5', most: '-1', pounds: '21' })).toEqual({ least: '“2.5” is not a whole number. Type it, such as 10.', most: expect.stringContaining('“-1” is below'), pounds: '“21” is above 20 lb, the most that makes sense here.' });
  expect(faults({ least: '100000', kind: 'nuc', frames: '12' })).toEqual({});
});
