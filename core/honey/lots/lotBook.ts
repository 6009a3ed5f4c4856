import type { EntryId, Grams } from '#shared/brands.ts';
import type { JarSize, LotAccount } from '#shared/contract/lots.ts';
import type { Day } from '#shared/days.ts';
import { gramsFrom } from '#shared/units.ts';
import { massAtWater, waterOfBlend } from '../waterBalance.ts';
import { jarGrams, readSaleItem, sizeKey } from './jars.ts';
import type { HarvestFact, KeptStep, LotFacts, SaleFact } from './lotFacts.ts';

/** Jars of one size and one day of best before (null: none on them) of a lot. */
export interface JarCount {
  readonly size: JarSize;
  filled: number;
  sold: number;
  readonly bestBefore: Day | null;
}

export type WaterFrom = 'reading' | 'harvests' | 'blend' | 'drying' | null;

export type Trouble =
  | { readonly why: 'over'; readonly by: number }
  | { readonly why: 'jars'; readonly by: number; readonly size: JarSize }
  | { readonly why: 'no number' }
  | { readonly why: 'not dry'; readonly water: number | null }
  | { readonly why: 'itself' }
  | { readonly why: 'gone'; readonly harvests: number }
  | { readonly why: 'too early'; readonly harvests: number }
  | { readonly why: 'taken'; readonly harvests: number };

/** What happened to a lot, in the order of days; `order` places it among all that happened to any lot. */
export interface LotEvent {
  readonly order: number;
  readonly day: Day;
  readonly of: { readonly harvest: HarvestFact } | { readonly step: KeptStep } | { readonly sale: SaleFact } | { readonly pouredTo: string; readonly step: KeptStep };
  /** Grams by which the bulk changed, and what it was then. */
  readonly change: number;
  readonly bulk: number;
  readonly water: number | null;
  readonly trouble: Trouble | null;
}

export interface Lot {
  readonly code: string;
  readonly account: { -readonly [Part in keyof LotAccount]: number };
  readonly harvests: HarvestFact[];
  readonly jars: Map<string, JarCount>;
  readonly events: LotEvent[];
  /** Sales that name the lot and no size that is known. */
  readonly otherSales: SaleFact[];
  water: number | null;
  waterFrom: WaterFrom;
  measured: number;
  weighed: boolean;
}

export interface LotBook {
  readonly lots: ReadonlyMap<string, Lot>;
  /** Harvests that are in no lot. */
  readonly loose: readonly HarvestFact[];
}

/** Rounding of jars and scales: half a gram. */
const tolerance = 0.5;

type Happening = { readonly day: Day; readonly rank: number; readonly place: string | number } & ({ readonly harvest: HarvestFact; readonly lot: string } | { readonly step: KeptStep } | { readonly sale: SaleFact; readonly lot: string });

/**
 * All lots at once, in the order of days (harvests first in a day, then steps as they were kept, then sales), because honey
 * goes from one lot into another. Every gram that comes in is found again: harvested, poured in and what weighings found, less
 * dried, poured out, filled, lost and sold from the pail, is what is left over. An overdraw stays in the account as a bulk
 * below nought and is named as trouble; nothing is dropped.
 */
export function lotBook(facts: LotFacts): LotBook {
  const lots = new Map<string, Lot>();
  const lotOf = (code: string) => {
    const found = lots.get(code) ?? newLot(code);
    lots.set(code, found);
    return found;
  };
  let order = 0;
  const note = (lot: Lot, day: Day, of: LotEvent['of'], change: number, trouble: Trouble | null) => {
    lot.account.bulk += change;
    lot.events.push({ order, day, of, change, bulk: lot.account.bulk, water: lot.water, trouble });
  };
  const { happenings, loose, madeTrouble } = arrange(facts);
  for (const one of happenings) {
    order += 1;
    if ('harvest' in one) takeIn(lotOf(one.lot), one.harvest, one.day, note);
    else if ('sale' in one) sell(lotOf(one.lot), one.sale, note);
    else if (one.step.act.what === 'poured') pour(lotOf(one.step.act.from), lotOf(one.step.lot), one.step, one.step.act.mass, note);
    else work(lotOf(one.step.lot), one.step, madeTrouble.get(one.step.key) ?? null, note);
  }
  return { lots, loose };
}

/** A lot into which nothing has come. */
function newLot(code: string): Lot {
  return {
    code, account: { gross: 0, tare: 0, harvested: 0, pouredIn: 0, difference: 0, weighedOf: 0, dried: 0, pouredOut: 0, filled: 0, lost: 0, soldBulk: 0, bulk: 0 },
    harvests: [], jars: new Map(), events: [], otherSales: [], water: null, waterFrom: null, measured: 0, weighed: false,
  };
}

type Note = (lot: Lot, day: Day, of: LotEvent['of'], change: number, trouble: Trouble | null) => void;

/** Says which lot each harvest is in: the one its entry names, else the first that was made with it. */
function arrange({ harvests, sales, steps, standsFor }: LotFacts): { happenings: Happening[]; loose: HarvestFact[]; madeTrouble: Map<string, Trouble> } {
  const byEntry = new Map(harvests.map((one) => [one.entry, one]));
  const into = new Map<EntryId, { lot: string; day: Day }>(harvests.flatMap((one) => (one.lot === null ? [] : [[one.entry, { lot: one.lot, day: one.day }]])));
  const madeTrouble = new Map<string, Trouble>();
  const standing = steps.filter(({ back }) => back === null);
  for (const { key, lot, day, act } of standing.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.key < b.key ? -1 : 1))) {
    if (act.what !== 'made') continue;
    const found = act.harvests.map((entry) => byEntry.get(standsFor.get(entry) ?? entry));
    const [gone, early] = [found.filter((one) => one === undefined).length, found.filter((one) => one !== undefined && one.day > day).length];
    let taken = 0;
    for (const one of found) {
      if (one === undefined) continue;
      if (into.has(one.entry)) taken += 1;
      else into.set(one.entry, { lot, day: one.day > day ? one.day : day });
    }
    if (gone > 0) madeTrouble.set(key, { why: 'gone', harvests: gone });
    else if (taken > 0) madeTrouble.set(key, { why: 'taken', harvests: taken });
    else if (early > 0) madeTrouble.set(key, { why: 'too early', harvests: early });
  }
  const happenings: Happening[] = [
    ...harvests.flatMap((harvest): Happening[] => {
      const to = into.get(harvest.entry);
      return to === undefined ? [] : [{ day: to.day, rank: 0, place: harvest.place, harvest, lot: to.lot }];
    }),
    ...standing.map((step): Happening => ({ day: step.day, rank: 1, place: step.key, step })),
    ...sales.flatMap((sale): Happening[] => (sale.lot === null ? [] : [{ day: sale.day, rank: 2, place: sale.place, sale, lot: sale.lot }])),
  ];
  happenings.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.rank - b.rank || ownDay(a, b) || (a.place < b.place ? -1 : 1)));
  return { happenings, loose: harvests.filter(({ entry }) => !into.has(entry)), madeTrouble };
}

/** Harvests of which a lot was made on one day go in the order of their own days. */
function ownDay(a: Happening, b: Happening): number {
  if (!('harvest' in a) || !('harvest' in b) || a.harvest.day === b.harvest.day) return 0;
  return a.harvest.day < b.harvest.day ? -1 : 1;
}

/** `day` is the one on which the lot was made of it where that is later than its own. */
function takeIn(lot: Lot, harvest: HarvestFact, day: Day, note: Note): void {
  const { gross, tare, net, moisture } = harvest;
  const before = lot.account.bulk;
  // What was filled or poured out before has gone with the water it had, so only what is still there is mixed.
  const untouched = Math.abs(before - lot.account.harvested) <= tolerance;
  if (lot.waterFrom === null || (lot.waterFrom === 'harvests' && (untouched || moisture === null || lot.measured < lot.harvests.length))) {
    // The mean of what was measured so far, by weight.
    const known = [...lot.harvests, harvest].flatMap((one) => (one.moisture === null ? [] : [{ mass: one.net, water: one.moisture }]));
    lot.water = waterOfBlend(known);
    lot.waterFrom = lot.water === null ? null : 'harvests';
  } else {
    lot.water = lot.water === null || moisture === null ? null : before > 0 ? waterOfBlend([{ mass: before as Grams, water: lot.water }, { mass: net, water: moisture }]) : moisture;
    if (lot.waterFrom !== 'harvests') lot.waterFrom = 'blend';
  }
  lot.harvests.push(harvest);
  if (moisture !== null) lot.measured += 1;
  lot.account.gross += gross;
  lot.account.tare += tare;
  lot.account.harvested += net;
  note(lot, day, { harvest }, net, null);
}

function pour(from: Lot, to: Lot, step: KeptStep, mass: number, note: Note): void {
  if (from === to) return note(to, step.day, { step }, 0, { why: 'itself' });
  const over = from.account.bulk + tolerance < mass ? { why: 'over' as const, by: mass - from.account.bulk } : null;
  from.account.pouredOut += mass;
  note(from, step.day, { pouredTo: to.code, step }, -mass, over);
  to.water = to.account.bulk <= tolerance ? from.water : from.water === null || to.water === null ? null : waterOfBlend([{ mass: to.account.bulk as Grams, water: to.water }, { mass: mass as Grams, water: from.water }]);
  to.waterFrom = 'blend';
  to.account.pouredIn += mass;
  note(to, step.day, { step }, mass, null);
}

function work(lot: Lot, step: KeptStep, made: Trouble | null, note: Note): void {
  const { account } = lot;
  const { act, day } = step;
  const over = (mass: number): Trouble | null => (account.bulk + tolerance < mass ? { why: 'over', by: mass - account.bulk } : null);
  switch (act.what) {
    case 'made':
      return note(lot, day, { step }, 0, made);
    case 'water':
      lot.water = act.water;
      lot.waterFrom = 'reading';
      return note(lot, day, { step }, 0, null);
    case 'weighed': {
      const change = act.gross - act.tare - account.bulk;
      account.difference += change;
      account.weighedOf = account.harvested + account.pouredIn;
      lot.weighed = true;
      return note(lot, day, { step }, change, null);
    }
    case 'dried': {
      const { water } = lot;
      if (water === null || !(act.to < water) || account.bulk <= 0) return note(lot, day, { step }, 0, { why: 'not dry', water });
      const removed = account.bulk - massAtWater({ mass: account.bulk as Grams, water }, act.to);
      account.dried += removed;
      lot.water = act.to;
      lot.waterFrom = 'drying';
      return note(lot, day, { step }, -removed, null);
    }
    case 'filled': {
      const mass = jarGrams(act.size) * act.count;
      const trouble = over(mass);
      fillJars(lot, act.size, act.bestBefore, act.count);
      account.filled += mass;
      return note(lot, day, { step }, -mass, trouble);
    }
    case 'lost': {
      const trouble = over(act.mass);
      account.lost += act.mass;
      return note(lot, day, { step }, -act.mass, trouble);
    }
    case 'poured':
      return;
  }
}

function sell(lot: Lot, sale: SaleFact, note: Note): void {
  const sold = readSaleItem(sale.item);
  if (sold === null) {
    lot.otherSales.push(sale);
    return note(lot, sale.day, { sale }, 0, null);
  }
  if (sale.quantity === null) return note(lot, sale.day, { sale }, 0, { why: 'no number' });
  if (sold.kind === 'jar') {
    const by = sellJars(lot, sold.size, sale.quantity);
    return note(lot, sale.day, { sale }, 0, by > 0 ? { why: 'jars', by, size: sold.size } : null);
  }
  const mass = gramsFrom(sale.quantity, sold.unit);
  const over = lot.account.bulk + tolerance < mass;
  lot.account.soldBulk += mass;
  note(lot, sale.day, { sale }, -mass, over ? { why: 'over', by: mass - (lot.account.bulk) } : null);
}

/** The sizes of a lot's jars, each once, in the order in which they came up. */
export function jarSizes({ jars }: Lot): JarSize[] {
  return [...new Map([...jars.values()].map(({ size }) => [sizeKey(size), size])).values()];
}

/** Jars of a size, those with the earliest best before first, those with none last. */
export function jarsOfSize(lot: Lot, size: JarSize): JarCount[] {
  const own = [...lot.jars.values()].filter((one) => sizeKey(one.size) === sizeKey(size));
  return own.toSorted((a, b) => (a.bestBefore === b.bestBefore ? 0 : a.bestBefore === null ? 1 : b.bestBefore === null ? -1 : a.bestBefore < b.bestBefore ? -1 : 1));
}

function jarsOf(lot: Lot, size: JarSize, bestBefore: Day | null): JarCount {
  const key = jarsKey(size, bestBefore);
  const found = lot.jars.get(key) ?? { size, filled: 0, sold: 0, bestBefore };
  lot.jars.set(key, found);
  return found;
}

function jarsKey(size: JarSize, bestBefore: Day | null): string {
  return bestBefore === null ? sizeKey(size) : `${sizeKey(size)} ${bestBefore}`;
}

/** What was sold of the size before it was there is counted to these jars. */
function fillJars(lot: Lot, size: JarSize, bestBefore: Day | null, count: number): void {
  const jars = jarsOf(lot, size, bestBefore);
  jars.filled += count;
  for (const one of jarsOfSize(lot, size)) {
    const short = one.sold - one.filled;
    if (one === jars || short <= 0) continue;
    one.sold -= short;
    jars.sold += short;
    if (one.filled === 0) lot.jars.delete(jarsKey(size, one.bestBefore));
  }
}

/** A sale names no day of best before, so the jars there that keep the shortest are taken first. Gives how many more were sold than filled. */
function sellJars(lot: Lot, size: JarSize, quantity: number): number {
  let rest = quantity;
  for (const one of jarsOfSize(lot, size)) {
    const taken = Math.min(rest, Math.max(0, one.filled - one.sold));
    one.sold += taken;
    rest -= taken;
  }
  const last = jarsOfSize(lot, size).at(-1) ?? jarsOf(lot, size, null);
  last.sold += rest;
  return jarsOfSize(lot, size).reduce((sum, { filled, sold }) => sum + sold - filled, 0);
}
