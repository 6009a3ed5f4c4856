import { expect, test } from 'vitest';
import { lotAct } from '#shared/contract/lots.ts';
import { day } from '#shared/days.ts';
import { jarText, lotOfJar } from '#shared/jarText.ts';
import { gramsPerPound } from '#shared/units.ts';
import { lotAddress, lotIn } from '../../renderer/parts/lotAddress.ts';
import { bestBeforeShown, blankAct, deeds, partOfRefusal, partsOf, readAct, type TypedAct } from '../../renderer/screens/honey/actForm.ts';
import { typedCelsius, typedMass, typedSize } from '../../renderer/screens/honey/honeyText.ts';

const setting = { unit: 'lb', order: 'month-first', today: day('2026-11-25'), months: 24 } as const;
const read = (typed: Partial<TypedAct>) => readAct({ ...blankAct, ...typed }, setting);
const faultsOf = (typed: Partial<TypedAct>) => Object.keys(read(typed).faults ?? {});

test('what is typed of a lot becomes the act it says, in grams, today unless another day is named', () => {
  const acts = [
    read({ deed: 'weighed', gross: '125', tare: '10', day: '11/23/2026' }), read({ deed: 'weighed', gross: '50 kg', tare: '0' }), read({ deed: 'water', index: '1,4915', warmth: '68' }), read({ deed: 'water', how: 'water', water: '18,2' }),
    read({ deed: 'dried', to: '17' }), read({ deed: 'poured', from: 'B', mass: '12.5' }), read({ deed: 'filled', size: '12 OZ', count: '40', bestBefore: '2028-11-25' }), read({ deed: 'lost', mass: '2', why: ' spilt ' }),
  ].map((one) => {
    if (one.faults !== null || !('act' in one)) throw new Error('not read');
    expect(lotAct.parse(one.act)).toEqual(one.act);
    return [one.day, one.act] as const;
  });
  const on = '2026-11-25';
  expect(acts).toEqual([
    ['2026-11-23', { what: 'weighed', gross: 125 * gramsPerPound, tare: 10 * gramsPerPound }], [on, { what: 'weighed', gross: 50_000, tare: 0 }],
    [on, { what: 'water', water: expect.any(Number), reading: 1.4915, celsius: 20 }], [on, { what: 'water', water: 18.2, reading: null, celsius: null }],
    [on, { what: 'dried', to: 17 }], [on, { what: 'poured', from: 'B', mass: 12.5 * gramsPerPound }], [on, { what: 'filled', size: { amount: 12, unit: 'oz' }, count: 40, bestBefore: '2028-11-25' }], [on, { what: 'lost', mass: 2 * gramsPerPound, why: 'spilt' }],
  ]);
  expect(read({ deed: 'sold', soldSize: '1 lb', quantity: '12', price: '$96' })).toEqual({ faults: null, day: on, sale: { size: { amount: 1, unit: 'lb' }, quantity: 12, price: 9600, note: '' } });
  expect(read({ deed: 'sold', quantity: '2.5' })).toMatchObject({ faults: null, sale: { size: null, quantity: 2.5, price: null } });
});

test('what cannot be is named beside its field, and only what the deed asks for', () => {
  expect(faultsOf({ deed: 'water', how: 'water', water: '60' })).toEqual(['water']);
  expect(faultsOf({ deed: 'water', index: '', warmth: 'warm' })).toEqual(['index', 'warmth']);
  expect(faultsOf({ deed: 'weighed', gross: '-5', tare: '' })).toEqual(['gross', 'tare']);
  expect(faultsOf({ deed: 'filled', size: 'big', count: '2.5', bestBefore: 'soon' })).toEqual(['size', 'count', 'bestBefore']);
  expect(faultsOf({ deed: 'sold', soldSize: '1 lb', quantity: '1.5', price: 'much' })).toEqual(['quantity', 'price']);
  expect(faultsOf({ deed: 'poured', mass: '0' })).toEqual(['from', 'mass']);
  expect(faultsOf({ deed: 'lost', mass: '1e5', why: '' })).toEqual(['mass', 'why']);
  expect(faultsOf({ deed: 'dried', to: '9', day: '13/45/2026' })).toEqual(['day', 'to']);
  for (const deed of deeds) for (const fault of faultsOf({ deed })) expect(partsOf({ ...blankAct, deed }), `${deed} ${fault}`).toContain(fault);
  expect(partOfRefusal('reading', { ...blankAct, deed: 'water' })).toBe('index');
  expect(partOfRefusal('gross', { ...blankAct, deed: 'water' })).toBeNull();
  expect(partOfRefusal('constructor', blankAct)).toBeNull();
  expect(partOfRefusal(undefined, blankAct)).toBeNull();
});

test('a reason or a note that is too long is said beside its field', () => {
  const said = (typed: Partial<TypedAct>) => read(typed).faults;
  expect(said({ deed: 'sold', soldSize: '1 lb', quantity: '1', note: 'n'.repeat(401) })).toEqual({ note: 'At most 400 signs fit here. Shorten it.' });
  expect(said({ deed: 'lost', mass: '1', why: 'w'.repeat(201) })).toEqual({ why: 'At most 200 signs fit here. Shorten it.' });
});

test('best before is proposed from the day of filling, and stays as the person typed it', () => {
  const best = (typed: Partial<TypedAct>, months = 24) => {
    const shown = bestBeforeShown({ ...blankAct, ...typed }, { ...setting, months });
    const found = readAct({ ...blankAct, deed: 'filled', size: '1 lb', count: '4', ...typed }, { ...setting, months });
    return [shown, 'act' in found && found.act.what === 'filled' ? found.act.bestBefore : found.faults];
  };
  expect(best({})).toEqual(['2028-11-25', '2028-11-25']);
  expect(best({ day: '9/10/2026' })).toEqual(['2028-09-10', '2028-09-10']);
  expect(best({ day: '9/10/2026', bestBefore: '3/1/2027' })).toEqual(['3/1/2027', '2027-03-01']);
  expect(best({ day: '9/10/2026', bestBefore: ' ' })).toEqual([' ', null]);
  expect(best({ day: 'soon' })).toEqual(['', { day: 'That is no day.' }]);
  // A month that has no such day gives its last.
  expect([best({ day: '2024-02-29' })[0], best({ day: '2026-08-31' }, 6)[0], best({ day: '2027-08-31' }, 6)[0], best({ day: '2026-12-31' }, 1)[0]]).toEqual(['2026-02-28', '2027-02-28', '2028-02-29', '2027-01-31']);
});

test('a unit of its own is understood, another is refused as that, and what cannot be is refused for its own reason', () => {
  const says = (typed: Partial<TypedAct>) => Object.values(read(typed).faults ?? {});
  const water = (typed: string) => says({ deed: 'water', how: 'water', water: typed });
  expect([water('17 %'), water('17,5'), water('17 lb'), water('170')]).toEqual([[], [], ['“17 lb” is not in %, nor in a unit that becomes %. Type it in %, such as 17.2.'], ['“170” is above 40 %, the most that makes sense here.']]);
  const warmth = (typed: string) => says({ deed: 'water', index: '1,491', warmth: typed });
  expect([warmth('68 °F'), warmth('20 C'), warmth('500 °F'), warmth('12 lb')]).toEqual([[], [], ['“500 °F” is above 113 °F, the most that makes sense here.'], ['“12 lb” is not in °F, nor in a unit that becomes °F. Type it in °F, such as 68.']]);
  expect(read({ deed: 'water', index: '1,491', warmth: '20 C' })).toMatchObject({ act: { reading: 1.491, celsius: 20 } });
  expect(read({ deed: 'filled', size: '1 lb', count: '1,200 jars' })).toMatchObject({ act: { count: 1200 } });
  expect(read({ deed: 'lost', mass: '1,200 lb', why: 'spilt' })).toMatchObject({ act: { mass: 1200 * gramsPerPound } });
  expect(says({ deed: 'lost', mass: '3 gal', why: 'spilt' })).toEqual(['“3 gal” is not in lb, nor in a unit that becomes lb. Type it in lb, such as 120.']);
});

test('units, sizes and codes as people type and scan them', () => {
  expect(typedMass('1,5 LB', 'kg')).toBeCloseTo(1.5 * gramsPerPound, 9);
  expect([typedMass('', 'lb'), typedMass('1.5.2', 'lb'), typedMass('3 gal', 'lb')]).toEqual([null, null, null]);
  expect(typedMass('16 oz', 'kg')).toBeCloseTo(gramsPerPound, 9);
  expect([typedCelsius('68', 'lb'), typedCelsius('20', 'kg'), typedCelsius('20 C', 'lb'), typedCelsius('68°F', 'kg'), typedCelsius('', 'lb')]).toEqual([20, 20, 20, 20, null]);
  expect([typedSize('500g'), typedSize('0 lb'), typedSize('2000 g'), typedSize('1 pint')]).toEqual([{ amount: 500, unit: 'g' }, null, null, null]);
  for (const code of ['2026-QY-2', 'Spring 7/8', '100 %', 'a#b?c']) {
    expect(lotIn(lotAddress(code).slice('/honey/lots/'.length))).toBe(code);
    expect(lotOfJar(jarText(code))).toBe(code);
    expect(lotOfJar(` Lot ${code} `)).toBe(code);
  }
  expect([lotOfJar(' lot '), lotOfJar('Lotus'), lotOfJar('Lot-7')]).toEqual(['', 'Lotus', 'Lot-7']);
  expect(lotIn('100%')).toBe('100%');
});
