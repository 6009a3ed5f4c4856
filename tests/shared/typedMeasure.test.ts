import fc from 'fast-check';
import { expect, test } from 'vitest';
import { converted, isMeasureUnit, readMeasure, typedFigure, unitNamed, type MeasureUnit } from '#shared/typedMeasure.ts';

test.each([
  ['17', 17, ''], ['17 %', 17, '%'], ['17,5%', 17.5, '%'], ['-4 °C', -4, '°c'], ['−4°', -4, '°'], ['1,4915', 1.4915, ''], ['1,200 lb', 1200, 'lb'], ['12,345,678', 12_345_678, ''], ['1,234.50', 1234.5, ''], ['1.234,5', 1234.5, ''],
  ['0,500', 0.5, ''], ['$1,200', 1200, ''], ['.5 gal', 0.5, 'gal'], ['3 Hrs.', 3, 'hrs'], ['45\u00a0lb', 45, 'lb'], ['90 per cent', 90, 'per cent'],
])('“%s” is a figure', (typed, amount, unit) => expect(typedFigure(typed)).toEqual({ amount, unit }));

test.each(['', 'warm', '1.2.3', '1,2,3', '4-5', '1e5', '2:1', '12 of 30', '--4', ','])('“%s” is none', (typed) => expect(typedFigure(typed)).toBeNull());

test('a comma before three figures is a decimal comma where thousands would be beyond all sense', () => {
  expect([typedFigure('1,491')?.amount, typedFigure('1,491', 2)?.amount, typedFigure('1,491', 1)?.amount]).toEqual([1491, 1.491, 1491]);
});

test('what a figure is in another unit: exact, and back again; not from weight to volume', () => {
  // 32 °F is 0 °C, 212 °F is 100 °C, −40 is both; the pound is 453.59237 g, the mile 1.609344 km: exact.
  expect([converted(32, '°F', '°C'), converted(100, '°C', '°F'), converted(-40, '°C', '°F'), converted(1, 'lb', 'kg'), converted(16, 'oz', 'lb'), converted(1.5, 'h', 'min'), converted(1, 'miles', 'km'), converted(1, 'gal', 'l'), converted(1, 'gal', 'lb')]).toEqual([0, 212, -40, 0.45359237, 1, 90, 1.609344, 3.785411784, null]);
  const all = ['kg', 'lb', 'oz', 'g', 'l', 'gal', 'min', 'h', 'km', 'miles', '°C', '°F', '%'].filter(isMeasureUnit);
  fc.assert(fc.property(fc.constantFrom(...all), fc.constantFrom(...all), fc.integer({ min: -500, max: 5000 }), (from: MeasureUnit, to: MeasureUnit, amount) => {
    const there = converted(amount, from, to);
    if (there !== null) expect(converted(there, to, from)).toBeCloseTo(amount, 4);
  }));
  expect([unitNamed('lbs'), unitNamed('stone'), isMeasureUnit('stone')]).toEqual(['lb', null, false]);
});

test('no number, another unit and an absurd amount are refused each for its own reason', () => {
  const water = (typed: string) => readMeasure(typed, { unit: '%', least: 10, most: 40, suchAs: '17.2' });
  expect([water('17 %'), water('17,5'), water('17.5 percent')]).toEqual([{ ok: true, value: 17 }, { ok: true, value: 17.5 }, { ok: true, value: 17.5 }]);
  const says = (read: ReturnType<typeof water>) => (read.ok ? read.value : read.sentence);
  expect([water(''), water('dry'), water('17 lb'), water('170'), water('3 %')].map(says)).toEqual([
    'Type it in %, such as 17.2.', '“dry” is no number. Type it in %, such as 17.2.', '“17 lb” is not in %, nor in a unit that becomes %. Type it in %, such as 17.2.', '“170” is above 40 %, the most that makes sense here.', '“3 %” is below 10 %, the least that makes sense here.',
  ]);
  const high = (typed: string) => readMeasure(typed, { unit: '°F', least: -60, most: 130, suchAs: '75' });
  expect([high('24 C'), high('75°'), high('75 F'), high('500 °F'), high('500'), high('-70'), high('500 kg')].map(says)).toEqual([
    75.2, 75, 75, '“500 °F” is above 130 °F, the most that makes sense here.', '“500” is above 130 °F, the most that makes sense here.', '“-70” is below −60 °F, the least that makes sense here.', '“500 kg” is not in °F, nor in a unit that becomes °F. Type it in °F, such as 75.',
  ]);
  const mass = (typed: string) => readMeasure(typed, { unit: 'lb', least: 1e-6, most: 1e6, suchAs: '120' });
  expect([mass('-5'), mass('0'), mass('99999999')].map(says)).toEqual(['“-5” is not above 0. Type it in lb, such as 120.', '“0” is not above 0. Type it in lb, such as 120.', '“99999999” is above 1,000,000 lb, the most that makes sense here.']);
  const jars = (typed: string) => readMeasure(typed, { unit: null, own: ['jar', 'jars'], least: 1, whole: true, suchAs: '12' });
  expect([jars('12 jars'), jars('1,200'), jars('12 lb'), jars('1.5')].map(says)).toEqual([12, 1200, '“12 lb” has a unit that means nothing here. Type it, such as 12.', '“1.5” is not a whole number. Type it, such as 12.']);
});
