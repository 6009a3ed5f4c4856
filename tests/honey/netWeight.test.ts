import { expect, test } from 'vitest';
import { netWeight } from '#shared/netWeight.ts';

test('a jar’s net weight in both systems, what is converted never more than it holds', () => {
  const said = (amount: number, unit: 'lb' | 'oz' | 'g' | 'kg') => netWeight({ amount, unit }).replaceAll('\u00a0', ' ');
  expect(said(1, 'lb')).toBe('1 lb (16 oz), 453 g');
  expect(said(12, 'oz')).toBe('12 oz, 340 g');
  expect(said(500, 'g')).toBe('500 g, 17.6 oz');
  expect(said(1, 'kg')).toBe('1 kg, 35.2 oz');
});
