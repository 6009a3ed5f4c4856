import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import { foldStock } from '#core/stock/foldStock.ts';
import { deadOutsToCheck, equipmentAvailable, latestMovements, stockItems } from '#core/stock/stockTable.ts';
import { hived, recorded, yards } from '../losses/recorded.ts';

const labels = new Map<number, string>();
const names = { colony: (id: number) => labels.get(id) ?? `colony ${id}`, yard: (id: number) => yards.find((yard) => yard.id === id) ?? { code: '', name: '' }, massUnit: 'lb' as const };
const stock = (date: string, quantity: number, item: string, from: string, to: string, note?: string): Cells => ({ date, entry: 'stock', item, quantity: String(quantity), from, to, ...(note === undefined ? {} : { note }) });
const shop = ['deep box', 'deep frame', 'bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'stand', 'feeder', 'medium super', 'medium frame', 'queen excluder'];
const bought = shop.map((item) => stock('2025-03-01', item.endsWith('frame') ? 100 : 10, item, 'supplier', 'shed'));

function folded(rows: readonly Cells[], asOf = '2025-12-31', rules: RuleValues = new Map()) {
  const { entries, states } = recorded(rows);
  for (const state of states) labels.set(state.id, state.label);
  const book = foldStock(entries.filter((entry) => entry.day <= asOf), { rules, borders: defaultBorders });
  const items = stockItems(book, { names, rules, borders: defaultBorders, asOf: day(asOf) });
  const held = (item: string) => {
    const found = items.find((one) => one.item === item);
    return found === undefined ? null : [found.onHives, found.free, found.toCheck, found.toMend, found.wornOut];
  };
  const at = (item: string, place: string) => items.find((one) => one.item === item)?.places.find((one) => one.place === place)?.total ?? 0;
  return { book, items, held, at };
}

describe('what hives get', () => {
  test('a package takes a hive from the shed; a nuc brings its frames', () => {
    const { held, items } = folded([...bought, hived('2025-04-20', 'A'), { ...hived('2025-05-15', 'B'), origin: 'nuc' }]);
    expect(held('deep box')).toEqual([2, 8, 0, 0, 0]);
    expect(held('feeder')).toEqual([2, 8, 0, 0, 0]);
    expect(held('deep frame')).toEqual([20, 84, 0, 0, 0]);
    expect(items.find(({ item }) => item === 'deep frame')).toMatchObject({ cameIn: 104, balances: true });
  });

  test('what was carried out that day is not taken from the shed once more, whichever was written first', () => {
    for (const rows of [[stock('2025-04-20', 1, 'deep box', 'shed', 'QY'), hived('2025-04-20', 'A')], [hived('2025-04-20', 'A'), stock('2025-04-20', 1, 'deep box', 'shed', 'QY')]]) {
      const { held, at } = folded([...bought, ...rows]);
      expect([held('deep box'), at('deep box', 'shed'), at('deep box', 'QY')]).toEqual([[1, 9, 0, 0, 0], 9, 1]);
    }
  });

  test('the note of an install tells of another hive', () => {
    const { held } = folded([...bought, stock('2025-03-01', 2, 'deep box, 8-frame', 'supplier', 'shed'), hived('2025-04-20', 'A', 'QY', { note: 'eight-frame hive, on two deeps' })]);
    expect([held('deep box, 8-frame'), held('deep frame'), held('deep box'), held('stand')]).toEqual([[2, 0, 0, 0, 0], [16, 84, 0, 0, 0], [0, 10, 0, 0, 0], [1, 9, 0, 0, 0]]);
  });

  test('a second box brought to the yard goes on a hive, and one carried home comes off', () => {
    const out = [...bought, hived('2025-04-20', 'A'), stock('2025-06-01', 1, 'deep box', 'shed', 'QY')];
    expect([folded(out).held('deep box'), folded(out).held('deep frame')]).toEqual([[2, 8, 0, 0, 0], [20, 80, 0, 0, 0]]);
    const home = folded([...out, stock('2025-09-20', 1, 'deep box', 'QY', 'shed'), stock('2025-09-20', 10, 'deep frame', 'QY', 'shed')]);
    expect([home.held('deep box'), home.held('deep frame'), home.book.shortages.size]).toEqual([[1, 9, 0, 0, 0], [10, 90, 0, 0, 0], 0]);
  });

  test('a split takes frames from the mother, who gets others', () => {
    const { book, held } = folded([...bought, hived('2025-04-20', 'A'), { date: '2025-06-01', entry: 'split', colony: 'A', new_colony: 'B', frames_brood: '3', frames_stores: '2' }]);
    expect([held('deep box'), held('deep frame')]).toEqual([[2, 8, 0, 0, 0], [20, 80, 0, 0, 0]]);
    expect(book.latest.filter(({ item, to, from }) => item === 'deep frame' && to.startsWith('c') && from.startsWith('c')).map(({ count }) => count)).toEqual([5]);
  });

  test('what no row names is counted on hives and taken from nobody', () => {
    const { book, held, items } = folded([stock('2025-03-01', 5, 'deep box', 'supplier', 'shed'), hived('2025-04-20', 'A')]);
    expect([held('deep box'), held('stand'), book.shortages.size]).toEqual([[1, 4, 0, 0, 0], [1, 0, 0, 0, 0], 0]);
    expect(items.find(({ item }) => item === 'stand')?.keptFrom).toBeNull();
    expect([equipmentAvailable(book, 'stand'), equipmentAvailable(book, 'deep box')]).toEqual([null, { shed: 4, yards: 0, onHives: 1, toCheck: 0, toMend: 0, wornOut: 0, drawn: 0, drawnToCheck: 0 }]);
  });
});

describe('supers and comb', () => {
  const on = [...bought, hived('2025-04-20', 'A'), { date: '2025-06-10', entry: 'supers on', colony: 'A', box: 'medium', count: '2' }] as const;
  const off = { date: '2025-07-01', entry: 'supers off', colony: 'A', box: 'medium', count: '2' };

  test('go on and come off; they are drawn when honey was taken', () => {
    expect(folded(on).held('medium super')).toEqual([2, 8, 0, 0, 0]);
    const dry = folded([...on, off], '2025-07-02').items.find(({ item }) => item === 'medium frame');
    expect(dry?.comb).toEqual({ drawn: 0, foundation: 0, unknown: 100, drawnFree: 0 });
    const wet = folded([...on, off, { date: '2025-07-01', entry: 'harvest', colony: 'A', gross: '60', tare: '16', unit: 'lb' }], '2025-07-02').items.find(({ item }) => item === 'medium frame');
    expect(wet).toMatchObject({ comb: { drawn: 20, unknown: 80, drawnFree: 20 }, years: [{ year: 2025, count: 20 }] });
  });

  test('brood frames are drawn after the summer days of the rule, and due after its years', () => {
    const frames = (asOf: string, rules: RuleValues = new Map()) => folded(on, asOf, rules).items.find(({ item }) => item === 'deep frame');
    expect(frames('2025-06-18')?.comb?.drawn).toBe(0);
    expect(frames('2025-06-19')?.comb?.drawn).toBe(10);
    expect([frames('2029-12-31')?.due, frames('2030-01-01')?.due]).toEqual([0, 10]);
    expect(frames('2028-01-01', new Map([['stock.combYears', 3]]))?.due).toBe(10);
  });

  test('a year in the name is the year of the comb', () => {
    const found = folded([stock('2026-01-01', 7, 'deep frame, drawn, 2020', 'supplier', 'shed'), stock('2026-01-02', 3, 'deep frame', 'shed', 'scrap')], '2026-02-01').items[0];
    expect([found?.due, found?.total, found?.scrapped]).toEqual([4, 4, 3]);
  });
});

describe('hives that come free', () => {
  const start = [...bought, hived('2025-04-20', 'A'), hived('2025-04-20', 'B')];

  test('a dead-out waits to be checked, until it is looked over or carried home', () => {
    const dead = [...start, { date: '2025-09-01', entry: 'loss', colony: 'A', cause: 'mites' }];
    const { held, book } = folded(dead);
    expect([held('deep box'), held('deep frame')]).toEqual([[1, 8, 1, 0, 0], [10, 80, 10, 0, 0]]);
    expect(deadOutsToCheck(book, names)).toMatchObject([{ label: 'A', yard: 'QY', day: '2025-09-01', inspector: false }]);
    const home = folded([...dead, stock('2025-09-10', 1, 'deep box', 'QY', 'shed'), stock('2025-09-10', 2, 'deep frame', 'QY', 'scrap'), stock('2025-09-10', 3, 'deep frame, to mend', 'QY', 'QY')]);
    expect([home.held('deep box'), home.held('deep frame')]).toEqual([[1, 9, 0, 0, 0], [10, 80, 5, 3, 0]]);
  });

  test('a new colony does not get what is still to be checked', () => {
    const { held } = folded([...start, { date: '2025-05-01', entry: 'loss', colony: 'A' }, hived('2025-05-02', 'C')]);
    expect(held('deep box')).toEqual([2, 7, 1, 0, 0]);
  });

  test('one united leaves it free; one sold takes it along; one sold on frames leaves the hive', () => {
    expect(folded([...start, { date: '2025-06-01', entry: 'combine', colony: 'A', into: 'B' }]).held('deep box')).toEqual([1, 9, 0, 0, 0]);
    const sold = folded([...start, { date: '2025-06-01', entry: 'sale', colony: 'A', price: '200' }]).items.find(({ item }) => item === 'deep box');
    expect(sold).toMatchObject({ onHives: 1, free: 8, sold: 1, cameIn: 10, balances: true });
    const frames = folded([...start, { date: '2025-06-01', entry: 'sale', colony: 'A', note: 'on five frames' }, stock('2025-06-01', 5, 'deep frame', 'QY', 'scrap')]);
    expect([frames.held('deep box'), frames.held('deep frame'), frames.book.shortages.size]).toEqual([[1, 9, 0, 0, 0], [10, 85, 0, 0, 0], 0]);
  });

  test('a colony that moves takes its hive along, and a row that says so again is not counted twice', () => {
    const moved = [...start, { date: '2025-06-01', entry: 'move', colony: 'A', to_yard: 'LB' }];
    for (const rows of [moved, [...moved, stock('2025-06-01', 1, 'deep box', 'QY', 'LB')]]) {
      const { at, held } = folded(rows);
      expect([at('deep box', 'QY'), at('deep box', 'LB'), held('deep box')]).toEqual([1, 1, [2, 8, 0, 0, 0]]);
    }
  });
});

describe('below nothing, and counts', () => {
  test('the entry that took more than was there is named until it is made good', () => {
    const rows = [stock('2025-03-01', 2, 'stand', 'supplier', 'shed'), stock('2025-03-05', 3, 'stand', 'shed', 'QY'), stock('2025-03-09', 1, 'stand', 'shed', 'LB')];
    const { book, held } = folded(rows);
    expect([...book.shortages.values()]).toMatchObject([{ place: 'shed', item: 'stand', count: -2, entry: 2, day: '2025-03-05' }]);
    expect(held('stand')).toEqual([0, 2, 0, 0, 0]);
    expect(folded([...rows, stock('2025-03-10', 2, 'stand', 'supplier', 'shed')]).book.shortages.size).toBe(0);
  });

  test('a count is read from its row, whatever else was entered that day', () => {
    const { book, held } = folded([...bought, stock('2025-11-01', 3, 'deep box', 'shed', 'scrap', 'counted 5, the book had 8; three broken'), stock('2025-11-01', 2, 'deep box', 'shed', 'QY')]);
    expect(book.counts).toMatchObject([{ item: 'deep box', counted: 5, noted: 8, had: 8, day: '2025-11-01' }]);
    expect(held('deep box')).toEqual([0, 7, 0, 0, 0]);
  });

  test('the parts that one entry moved on one way stand together', () => {
    const { book } = folded([...bought, hived('2025-04-20', 'A')]);
    const [line] = latestMovements(book, names, 1);
    expect([line?.from, line?.to, line?.kind, line?.parts.length, line?.parts[0]]).toEqual(['shed', 'A', 'install', 8, { item: 'deep box', count: 1 }]);
  });
});
