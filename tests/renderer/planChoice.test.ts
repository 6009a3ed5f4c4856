import { expect, test } from 'vitest';
import type { HouseRule } from '#shared/contract/order.ts';
import { orderSum, type Order } from '../../renderer/screens/stock/OrdersSection.tsx';
import { readRule, ruleText, ruleTyped } from '../../renderer/screens/stock/readRule.ts';
import { readConfidence, readTarget } from '../../renderer/screens/stock/readPlan.ts';

test('a target is a whole number of colonies; nothing typed means as many as were wintered', () => {
  expect(readTarget('104')).toBe(104);
  expect(readTarget(' 1,200 ')).toBe(1200);
  expect(readTarget('0')).toBe(0);
  expect(readTarget('')).toBeNull();
  for (const wrong of ['-1', '10.5', 'many', '100001', '1e3']) expect(readTarget(wrong), wrong).toBeUndefined();
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

test('orders without a price are not summed as nothing', () => {
  const order = { what: 'packages', quantity: 4, priceEach: 14_500 } as Order;
  expect(orderSum([order, { ...order, priceEach: null }])).toEqual({ minor: 58_000, known: 1 });
});
