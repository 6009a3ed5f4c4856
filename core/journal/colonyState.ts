import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { feeds, queenCells } from '#shared/entryForms.ts';
import type { Ending } from '#shared/contract/values.ts';
import type { Origin } from './kinds/install.ts';

export type QueenCells = (typeof queenCells)[number];
export type Feed = (typeof feeds)[number];

/**
 * Grows with every change of what the fold keeps of an entry: a book folded by an earlier program is folded anew
 * when it is opened.
 */
export const foldVersion = 3;

/** Where an entry stands in the journal's order: by day, then by its place within all entries. */
export interface OrderKey {
  readonly day: Day;
  readonly place: number;
}

/** A stretch of days in one yard; `until` is the day it left or ended. */
export interface Stay {
  readonly yard: YardId;
  readonly from: Day;
  /** Place of the entry that began it, for the order within its day. */
  readonly fromPlace: number;
  until: Day | null;
}

/** A queen's time in one colony. She keeps the id of the entry that first brought her when she moves with a split. */
export interface Reign {
  readonly queen: EntryId;
  year: number | null;
  source: string | null;
  marked: boolean;
  readonly since: Day;
  until: Day | null;
  ending: 'replaced' | 'superseded' | 'swarmed' | 'missing' | 'moved with a split' | 'colony ended' | null;
  endEntry: EntryId | null;
}

export interface Look {
  readonly day: Day;
  readonly framesBees: number | null;
  readonly framesBrood: number | null;
  readonly framesStores: number | null;
  readonly eggs: boolean | null;
  readonly queenSeen: boolean | null;
  readonly queenCells: QueenCells | null;
  /** 1 (gentle) to 5 (fierce). */
  readonly temper: number | null;
}

/** A treatment entered for the colony itself; what was given to a whole yard is in no colony's state. */
export interface Treatment {
  readonly day: Day;
  readonly until: Day | null;
  readonly ingredient: string;
}

export interface Feeding {
  readonly day: Day;
  readonly feed: Feed;
  readonly grams: number | null;
  readonly millilitres: number | null;
}

/** Stores weighed or hefted. `fedBefore`: feedings that were written down before it on that day, so that it weighed them too; the fold always tells it. */
export interface StoresWeight {
  readonly day: Day;
  readonly grams: number;
  readonly fedBefore?: number;
}

export interface MiteCount {
  readonly day: Day;
  readonly mites: number;
  readonly bees: number;
}

export interface Harvest {
  readonly day: Day;
  readonly grams: number;
  readonly moisture: number | null;
  readonly lot: string | null;
  readonly yard: YardId;
}

/**
 * All that is known of one colony: the fold of the entries that name it, in the journal's order.
 * Every field is always present, so that two folds of the same entries are equal byte for byte.
 */
export interface ColonyState {
  readonly id: ColonyId;
  readonly label: string;
  readonly origin: Origin | 'split';
  readonly supplier: string | null;
  readonly price: number | null;
  readonly start: Day;
  readonly startPlace: number;
  readonly startEntry: EntryId;
  end: Day | null;
  endPlace: number | null;
  endEntry: EntryId | null;
  how: Ending;
  causes: readonly string[];
  readonly mother: ColonyId | null;
  into: ColonyId | null;
  daughters: ColonyId[];
  unitedFrom: ColonyId[];
  stays: Stay[];
  reigns: Reign[];
  supers: { deep: number; medium: number; shallow: number };
  looks: Look[];
  miteCounts: MiteCount[];
  harvests: Harvest[];
  treatments: Treatment[];
  feedings: Feeding[];
  storesWeights: StoresWeight[];
  lastDay: Day;
}

/** The yard a colony stands in after all its entries, or last stood in. */
export function currentYard(state: ColonyState): YardId {
  const stay = state.stays.at(-1);
  if (stay === undefined) throw new Error(`colony ${state.id} has no yard`);
  return stay.yard;
}

/** The yard a colony stood in just before a point of the journal's order; its first yard if the point lies before that. */
export function yardBefore(state: ColonyState, key: OrderKey): YardId {
  const stay = state.stays.findLast((one) => one.from < key.day || (one.from === key.day && one.fromPlace < key.place)) ?? state.stays[0];
  if (stay === undefined) throw new Error(`colony ${state.id} has no yard`);
  return stay.yard;
}

export function currentReign(state: ColonyState): Reign | null {
  const reign = state.reigns.at(-1);
  return reign !== undefined && reign.until === null ? reign : null;
}

/** Alive at the end of that day. */
export function aliveOn(state: Pick<ColonyState, 'start' | 'end'>, day: Day): boolean {
  return state.start <= day && (state.end === null || state.end > day);
}

/** Alive as that day begins, before its entries. */
export function aliveBefore(state: Pick<ColonyState, 'start' | 'end'>, day: Day): boolean {
  return state.start < day && (state.end === null || state.end >= day);
}

export function endReign(state: ColonyState, day: Day, entry: EntryId, ending: NonNullable<Reign['ending']>): void {
  const reign = currentReign(state);
  if (reign === null) return;
  reign.until = day;
  reign.ending = ending;
  reign.endEntry = entry;
}

export function beginReign(state: ColonyState, queen: EntryId, since: Day, year: number | null, source: string | null, marked = false): void {
  state.reigns.push({ queen, year, source, marked, since, until: null, ending: null, endEntry: null });
}
