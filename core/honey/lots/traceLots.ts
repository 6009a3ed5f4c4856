import type { EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Lot, LotBook, LotEvent } from './lotBook.ts';
import type { HarvestFact, SaleFact } from './lotFacts.ts';

/** A harvest in a lot; `via` is the lot it was poured over from, null if it went in itself. */
export interface TracedHarvest {
  readonly harvest: HarvestFact;
  readonly via: string | null;
}

/** Every harvest of which something may be in a lot: its own, and those in lots poured into it, as they were on the day of pouring. */
export function harvestsBehind(book: LotBook, code: string): TracedHarvest[] {
  const found = new Map<EntryId, TracedHarvest>();
  const reached = new Map<string, number>();
  const follow = (lot: Lot | undefined, until: number, first: boolean) => {
    if (lot === undefined || (reached.get(lot.code) ?? -1) >= until) return;
    reached.set(lot.code, until);
    for (const { order, of } of lot.events) {
      if (order > until) break;
      if ('harvest' in of) {
        if (!found.has(of.harvest.entry) || first) found.set(of.harvest.entry, { harvest: of.harvest, via: first ? null : lot.code });
      } else if ('step' in of && !('pouredTo' in of) && of.step.act.what === 'poured') follow(book.lots.get(of.step.act.from), order, false);
    }
  };
  follow(book.lots.get(code), Infinity, true);
  return [...found.values()];
}

export interface TracedLot {
  readonly lot: Lot;
  /** The lot from which it was poured over; null if a harvest asked for went in itself. */
  readonly via: string | null;
  /** Where in the order of all lots the first of it came in. */
  readonly since: number;
  readonly harvests: readonly HarvestFact[];
  readonly filled: ReadonlyMap<string, number>;
  readonly sales: readonly SaleFact[];
}

/** Every lot in which something of these harvests may be, with the jars filled and the sales after it came in. */
export function lotsAhead(book: LotBook, asked: ReadonlySet<EntryId>): TracedLot[] {
  const reached = new Map<string, { since: number; via: string | null; harvests: Set<HarvestFact> }>();
  const queue: string[] = [];
  const reach = (code: string, since: number, via: string | null, harvests: Iterable<HarvestFact>) => {
    const known = reached.get(code);
    if (known === undefined) reached.set(code, { since, via, harvests: new Set(harvests) });
    else {
      const before = known.harvests.size;
      for (const one of harvests) known.harvests.add(one);
      if (known.since <= since && known.harvests.size === before) return;
      known.since = Math.min(known.since, since);
      if (via === null) known.via = null;
    }
    queue.push(code);
  };
  for (const lot of book.lots.values()) {
    const own = lot.events.filter(({ of }) => 'harvest' in of && asked.has(of.harvest.entry));
    if (own[0] !== undefined) reach(lot.code, own[0].order, null, own.map(harvestOf));
  }
  for (let code = queue.shift(); code !== undefined; code = queue.shift()) {
    const { since, harvests } = reached.get(code) ?? { since: Infinity, harvests: [] };
    for (const { order, of } of book.lots.get(code)?.events ?? []) if (order > since && 'pouredTo' in of) reach(of.pouredTo, order, code, harvests);
  }
  return [...reached].flatMap(([code, { since, via, harvests }]) => {
    const lot = book.lots.get(code);
    if (lot === undefined) return [];
    const after = lot.events.filter(({ order }) => order > since);
    const filled = new Map<string, number>();
    for (const { of } of after) if ('step' in of && of.step.act.what === 'filled') filled.set(`${of.step.act.size.amount} ${of.step.act.size.unit}`, (filled.get(`${of.step.act.size.amount} ${of.step.act.size.unit}`) ?? 0) + of.step.act.count);
    return [{ lot, via, since, harvests: [...harvests], filled, sales: after.flatMap(({ of }) => ('sale' in of ? [of.sale] : [])) }];
  });
}

function harvestOf({ of }: LotEvent): HarvestFact {
  if (!('harvest' in of)) throw new Error('an event that is no harvest');
  return of.harvest;
}

/** First and last day of a lot's harvests. */
export function harvestDays(harvests: readonly { readonly day: Day }[]): [Day | null, Day | null] {
  const days = harvests.map(({ day }) => day).toSorted();
  return [days[0] ?? null, days.at(-1) ?? null];
}
