import type { ColonyId, EntryId, Grams, YardId } from '#shared/brands.ts';
import type { LotStep } from '#shared/contract/lots.ts';
import type { Day } from '#shared/days.ts';

/** A standing harvest; `lot` is the one its entry names. */
export interface HarvestFact {
  readonly entry: EntryId;
  readonly day: Day;
  readonly place: number;
  /** Null only for a harvest that names neither yard nor colony. */
  readonly yard: YardId | null;
  /** Null for a yard weighed together. */
  readonly colony: ColonyId | null;
  /** Full, and empty; `net` is what lies between. */
  readonly gross: Grams;
  readonly tare: Grams;
  readonly net: Grams;
  readonly moisture: number | null;
  readonly lot: string | null;
}

/** A standing sale of goods. */
export interface SaleFact {
  readonly entry: EntryId;
  readonly day: Day;
  readonly place: number;
  readonly item: string;
  readonly quantity: number | null;
  readonly price: number | null;
  readonly lot: string | null;
}

export interface KeptStep extends LotStep {
  readonly key: string;
}

export interface LotFacts {
  readonly harvests: readonly HarvestFact[];
  readonly sales: readonly SaleFact[];
  readonly steps: readonly KeptStep[];
  /** The harvest entry that now stands for one that was named when the lot was made and replaced since. */
  readonly standsFor: ReadonlyMap<EntryId, EntryId>;
}
