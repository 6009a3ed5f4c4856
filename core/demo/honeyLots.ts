import type { LotAct, LotStep } from '#shared/contract/lots.ts';
import { addDays, day, type Day } from '#shared/days.ts';
import { gramsFrom, gramsPerPound, roundTo } from '#shared/units.ts';
import { readSaleItem } from '#core/honey/lots/jars.ts';
import { blendTo } from '#core/honey/waterBalance.ts';
import type { DemoAct } from './demoOperation.ts';
import { SeededRandom } from './seededRandom.ts';

interface Batch {
  readonly code: string;
  readonly year: string;
  readonly from: Day;
  pounds: number;
  water: number | null;
  /** Pounds in pails, and when they were there. */
  bulk: number;
  ready: Day;
  readonly jars: { readonly day: Day; left: number }[];
}

const jar = { amount: 1, unit: 'lb' } as const;
/** A pail that holds sixty pounds weighs some two and a half (from memory). */
const pail = { holds: 60, weighs: 2.4 };
/** These people want their honey no wetter than the second, and pour a lot above the first together with a drier one. */
const [wet, wanted] = [17.6, 17.4];

/**
 * What was done with the honey at home, told after the operation: each lot on the scale a few days after its harvest, in jars
 * by and by, the wet ones poured together with a drier one, and the lot of each sale as far as somebody wrote it down. Chance
 * comes from a seed of its own, so that the rest of the story stays as it is.
 */
export function honeyLots(acts: readonly DemoAct[], seed: number, lastDay: Day): { acts: DemoAct[]; lots: LotStep[] } {
  const random = new SeededRandom(seed + 7);
  const lots: LotStep[] = [];
  const keep = (lot: string, on: Day, act: LotAct) => {
    if (on <= lastDay) lots.push({ lot, day: on, at: `${on} 20:40`, act, back: null });
  };
  const batches = batchesOf(acts);
  for (const batch of batches) {
    const tare = Math.ceil(batch.pounds / pail.holds) * pail.weighs;
    // What stays in the cappings and on the combs.
    batch.bulk = roundTo(batch.pounds * random.between(0.945, 0.985), 1);
    batch.ready = addDays(batch.from, random.whole(2, 5));
    keep(batch.code, batch.ready, { what: 'weighed', gross: gramsFrom(roundTo(batch.bulk + tare, 1), 'lb'), tare: gramsFrom(roundTo(tare, 1), 'lb') });
    if (random.chance(0.25)) {
      batch.bulk -= 2;
      keep(batch.code, addDays(batch.ready, 1), { what: 'lost', mass: gramsFrom(2, 'lb'), why: random.pick(['skimmings', 'spilt at the gate of the tank']) });
    }
    const pouring = addDays(batch.ready, 3);
    if (batch.water !== null && batch.water > wet) pourDrier(batch, batches, pouring, keep);
    fill(batch, addDays(batch.ready, random.whole(4, 9)), random.between(0.45, 0.7), keep);
  }
  for (const batch of batches) fill(batch, addDays(batch.ready, random.whole(60, 85)), 0.85, keep);
  return { acts: acts.map((act) => ('rows' in act ? { ...act, rows: act.rows.map((row) => withLot(row, batches)) } : act)), lots: lots.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)) };
}

type Keep = (lot: string, on: Day, act: LotAct) => void;

function batchesOf(acts: readonly DemoAct[]): Batch[] {
  const struck = new Set(acts.flatMap((act) => ('strike' in act ? [`${act.strike.act}/${act.strike.row}`] : [])));
  const found = new Map<string, Batch>();
  for (const [at, act] of acts.entries()) {
    if (!('rows' in act)) continue;
    for (const [place, row] of act.rows.entries()) {
      if (row.entry !== 'harvest' || row.lot === undefined || row.date === undefined || struck.has(`${at}/${place}`)) continue;
      const on = day(row.date);
      const batch = found.get(row.lot) ?? { code: row.lot, year: row.lot.slice(0, 4), from: on, pounds: 0, water: row.moisture === undefined ? null : Number(row.moisture), bulk: 0, ready: on, jars: [] };
      batch.pounds += Number(row.gross) - Number(row.tare);
      found.set(row.lot, batch);
    }
  }
  return [...found.values()].toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.code < b.code ? -1 : 1));
}

/** A drier lot of the same year that has enough left, poured in until the whole is as dry as wanted. */
function pourDrier(batch: Batch, batches: readonly Batch[], on: Day, keep: Keep): void {
  if (batch.water === null) return;
  const drier = batches.find((one) => one !== batch && one.year === batch.year && one.ready < on && one.water !== null && one.water < wanted && one.bulk > 30);
  if (drier?.water == null) return;
  const asked = blendTo({ mass: gramsFrom(batch.bulk, 'lb'), water: batch.water }, drier.water, wanted);
  if (!asked.ok) return;
  const pounds = roundTo(asked.value.dry / gramsPerPound, 1);
  if (pounds <= 0 || pounds > drier.bulk - 2) return;
  drier.bulk -= pounds;
  batch.bulk += pounds;
  keep(batch.code, on, { what: 'poured', from: drier.code, mass: gramsFrom(pounds, 'lb') });
}

/** Whole dozens of one-pound jars out of a share of what is in the pails. */
function fill(batch: Batch, on: Day, share: number, keep: Keep): void {
  const count = Math.floor((batch.bulk * share) / 12) * 12;
  if (count < 12) return;
  batch.bulk -= count;
  batch.jars.push({ day: on, left: count });
  keep(batch.code, on, { what: 'filled', size: jar, count, bestBefore: addDays(on, 730) });
}

/** A sale from the oldest lot that has as many jars; where none has, nobody wrote a lot down. */
function withLot<Row extends Readonly<Record<string, string | undefined>>>(row: Row, batches: readonly Batch[]): Row {
  if (row.entry !== 'sale' || row.item === undefined || row.date === undefined || readSaleItem(row.item)?.kind !== 'jar') return row;
  const on = row.date;
  const count = Number(row.quantity);
  const batch = batches.find(({ jars }) => jars.some(({ day: filled, left }) => filled <= on && left >= count));
  const jars = batch?.jars.find(({ day: filled, left }) => filled <= on && left >= count);
  if (batch === undefined || jars === undefined) return row;
  jars.left -= count;
  return { ...row, lot: batch.code };
}
