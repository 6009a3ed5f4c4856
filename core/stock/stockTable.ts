import type { ColonyId, YardId } from '#shared/brands.ts';
import type { DeadOutView, StockItemView, StockTable } from '#shared/contract/stock.ts';
import type { Day } from '#shared/days.ts';
import { hiveParts } from '#shared/itemWords.ts';
import type { Borders } from '#shared/seasons.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { combOn, dueForRotation } from './comb.ts';
import { isFrame, itemOf } from './itemName.ts';
import { calledPlace, yardKey, type PlaceKey } from './places.ts';
import type { Marks } from './stacks.ts';
import type { StockBook } from './stockBook.ts';

type Held = Pick<StockItemView, 'onHives' | 'free' | 'toCheck' | 'toMend' | 'wornOut'>;
type HeldThere = Held & { place: string; total: number };

export interface TableFacts {
  readonly names: Names;
  readonly rules: RuleValues;
  readonly borders: Borders;
  readonly asOf: Day;
}

const nothing = (): Held => ({ onHives: 0, free: 0, toCheck: 0, toMend: 0, wornOut: 0 });

/** Pieces below nothing count as free ones that lack. */
function heldAs(marks: Marks, onHive: boolean): keyof Held {
  if (onHive) return 'onHives';
  return marks.state === 'to check' ? 'toCheck' : marks.state === 'to mend' ? 'toMend' : marks.state === 'worn out' ? 'wornOut' : 'free';
}

/** The order in which the parts of a hive are named; what is no part of one comes after, by its name. */
const order: readonly string[] = hiveParts;
export function byPart(a: string, b: string): number {
  const place = (item: string) => (order.indexOf(itemOf(item)) + order.length + 1) % (order.length + 1);
  const [one, other] = [order.includes(itemOf(a)) ? place(a) : 99, order.includes(itemOf(b)) ? place(b) : 99];
  return one - other || (a < b ? -1 : a > b ? 1 : 0);
}

/** All items with what is where, how it is, and the account that balances. */
export function stockItems(book: StockBook, { names, rules, borders, asOf }: TableFacts): StockItemView[] {
  const combYears = numberRule(rules, 'stock.combYears');
  const drawnDays = numberRule(rules, 'stock.drawnDays');
  const made = new Map<string, { held: Held; places: Map<PlaceKey, HeldThere>; comb: { drawn: number; foundation: number; unknown: number; drawnFree: number }; due: number; years: Map<number | null, number> }>();
  // Most hives got their frames on a few days of the year.
  const known = new Map<string, Pick<Marks, 'comb' | 'year'>>();
  const combOf = (marks: Marks) => {
    if (marks.comb === 'drawn' || marks.since === null) return marks;
    const key = `${marks.comb ?? ''} ${marks.year ?? ''} ${marks.since}`;
    const found = known.get(key) ?? combOn(marks, asOf, drawnDays, borders);
    known.set(key, found);
    return found;
  };
  for (const [key, stacks] of book.places) {
    const hive = key.startsWith('c') ? book.hives.get(Number(key.slice(1)) as ColonyId) : undefined;
    const onHive = key.startsWith('c');
    const where = hive === undefined ? key : yardKey(hive.yard);
    for (const item of stacks.items()) {
      let view = made.get(item);
      if (view === undefined) made.set(item, (view = { held: nothing(), places: new Map(), comb: { drawn: 0, foundation: 0, unknown: 0, drawnFree: 0 }, due: 0, years: new Map() }));
      let there = view.places.get(where);
      if (there === undefined) view.places.set(where, (there = { place: calledPlace(where, names), ...nothing(), total: 0 }));
      for (const { marks, count } of stacks.of(item)) {
        const as = heldAs(marks, onHive);
        view.held[as] += count;
        there[as] += count;
        there.total += count;
        if (!isFrame(item)) continue;
        const { comb, year } = combOf(marks);
        view.comb[comb ?? 'unknown'] += count;
        if (comb === 'drawn' && as === 'free') view.comb.drawnFree += count;
        if (comb === 'drawn') view.years.set(year, (view.years.get(year) ?? 0) + count);
        if (comb === 'drawn' && marks.state !== 'worn out' && dueForRotation(year, asOf, combYears)) view.due += count;
      }
    }
  }
  return book.items().toSorted(byPart).map((item) => {
    const view = made.get(item);
    const held = view?.held ?? nothing();
    const total = held.onHives + held.free + held.toCheck + held.toMend + held.wornOut;
    const [cameIn, scrapped, sold] = [-book.outsideCount('supplier', item), book.outsideCount('scrap', item), book.outsideCount('sold', item)];
    return {
      item, ...held, total, cameIn, scrapped, sold,
      balances: Math.abs(cameIn - scrapped - sold - total) < 1e-6,
      comb: isFrame(item) && view !== undefined ? view.comb : null,
      due: item === 'deep frame' ? (view?.due ?? 0) : null,
      years: [...(view?.years ?? [])].map(([year, count]) => ({ year, count })).toSorted((a, b) => (a.year ?? 0) - (b.year ?? 0)),
      places: [...(view?.places ?? [])].toSorted(([a], [b]) => (a === 'shed' ? -1 : b === 'shed' ? 1 : a < b ? -1 : 1)).map(([, there]) => there).filter((there) => there.total !== 0 || there.toCheck !== 0),
      keptFrom: book.keptFrom.get(item) ?? null,
    };
  });
}

/** Hives without bees that nobody has looked over yet, oldest first. */
export function deadOutsToCheck(book: StockBook, names: Names): DeadOutView[] {
  const parts = new Map<ColonyId, Map<string, number>>();
  for (const [key, stacks] of book.places) {
    if (!key.startsWith('y')) continue;
    for (const [item, list] of stacks.waiting) {
      for (const { marks, count } of list) {
        if (marks.deadOut === null) continue;
        const own = parts.get(marks.deadOut) ?? new Map<string, number>();
        parts.set(marks.deadOut, own.set(item, (own.get(item) ?? 0) + count));
      }
    }
  }
  return [...parts].flatMap(([colony, own]) => {
    const found = book.deadOuts.get(colony);
    if (found === undefined) return [];
    return [{
      colony, label: names.colony(colony), yard: names.yard(found.yard).code, day: found.day, how: found.how, causes: [...found.causes], inspector: found.causes.includes('disease'),
      parts: [...own].map(([item, count]) => ({ item, count })).toSorted((a, b) => byPart(a.item, b.item)),
    }];
  }).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.colony - b.colony));
}

/** The newest movements; the parts that one entry moved on one way stand together. */
export function latestMovements(book: StockBook, names: Names, most: number): StockTable['movements'] {
  const lines: (StockTable['movements'][number] & { key: string })[] = [];
  for (const { entry, day, kind, item, count, from, to } of book.latest.toReversed()) {
    const key = `${entry} ${from} ${to}`;
    const line = lines.find((one) => one.key === key);
    if (line !== undefined) {
      const part = line.parts.find((one) => one.item === item);
      if (part === undefined) line.parts.push({ item, count });
      else part.count += count;
      continue;
    }
    if (lines.length === most) break;
    lines.push({ key, entry, day, kind, from: calledPlace(from, names), to: calledPlace(to, names), parts: [{ item, count }] });
  }
  return lines.map(({ key: _, ...line }) => ({ ...line, parts: line.parts.toSorted((a, b) => byPart(a.item, b.item)) }));
}

/** What is there of an item: free in the shed and in yards, on hives, and what cannot be used as it is. */
export interface Available {
  /** Sound and free; below nothing where more left than was there. */
  readonly shed: number;
  readonly yards: number;
  readonly onHives: number;
  /** From dead-outs that nobody has looked over yet. */
  readonly toCheck: number;
  readonly toMend: number;
  readonly wornOut: number;
  /** Drawn comb among what is free, and among what is to be checked. */
  readonly drawn: number;
  readonly drawnToCheck: number;
}

/** What is there of an item, for working out what to order. Null where no stock row names it. */
export function equipmentAvailable(book: StockBook, item: string): Available | null {
  if (!book.keptFrom.has(item)) return null;
  const sum = { shed: 0, yards: 0, onHives: 0, toCheck: 0, toMend: 0, wornOut: 0, drawn: 0, drawnToCheck: 0 };
  for (const [key, stacks] of book.places) {
    for (const { marks, count } of stacks.of(item)) {
      const as = heldAs(marks, key.startsWith('c'));
      sum[as === 'free' ? (key === 'shed' ? 'shed' : 'yards') : as] += count;
      if (marks.comb === 'drawn' && as === 'free') sum.drawn += count;
      if (marks.comb === 'drawn' && as === 'toCheck') sum.drawnToCheck += count;
    }
  }
  return sum;
}

export function yardOfDeadOut(book: StockBook, colony: ColonyId): YardId | null {
  return book.deadOuts.get(colony)?.yard ?? null;
}
