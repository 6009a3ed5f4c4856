import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Grouping, LossSurvival } from '#shared/contract/lossSections.ts';
import { addDays, dayNumber, type Day } from '#shared/days.ts';
import { periodDays, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { ReviewFacts } from './reviewFacts.ts';
import type { WinterColony } from './winterCovariates.ts';

/** 0 still in the book, 1 lost or absconded, 2 sold or given away, 3 united into another. */
export type FateCode = 0 | 1 | 2 | 3;

/** One colony under watch for one stretch; days from the axis's own origin. */
export interface WatchedRow {
  readonly id: ColonyId;
  readonly season: Season;
  /** The group it was in for that stretch. */
  readonly key: string;
  readonly entry: number;
  readonly exit: number;
  readonly fate: FateCode;
  /** Its last stretch on this axis: the one by which the colony itself is counted. */
  readonly last: boolean;
}

/** A colony's time in one winter, whatever it is grouped by. */
export interface WinterSpan {
  readonly colony: WinterColony;
  readonly entry: number;
  readonly exit: number;
  readonly fate: FateCode;
  /** The day it was weighed; its entry where it was not. */
  readonly weighed: number;
}

/** Every colony's time in one winter, as its days since the winter's first; those that came during it enter late. */
export function winterSpans(facts: Pick<ReviewFacts, 'borders' | 'asOf'>, season: Season, colonies: readonly WinterColony[], stateOf: (id: ColonyId) => ColonyState): WinterSpan[] {
  const { from, until } = periodDays(season, 'winter', facts.borders);
  const tomorrow = addDays(facts.asOf, 1);
  const stop = tomorrow < until ? tomorrow : until;
  const zero = dayNumber(from);
  const end = dayNumber(stop) - zero;
  return colonies.flatMap((colony) => {
    const state = stateOf(colony.id);
    if (colony.from >= stop) return [];
    const ended = state.end !== null && state.end < stop;
    const entry = dayNumber(colony.from) - zero;
    return [{
      colony, entry, exit: ended && state.end !== null ? dayNumber(state.end) - zero : end, fate: ended ? fateOf(state) : 0,
      weighed: colony.stores === null ? entry : dayNumber(colony.stores.day) - zero,
    }];
  });
}

/**
 * The rows of one winter by group. A colony is in one group all winter, but for its stores: it stands with the ones
 * not weighed until the day it was weighed, as nobody could know of it before. A colony that left on the day it came
 * is left out unless it was lost, which then counts half a day later.
 */
export function winterRows({ yards }: Pick<ReviewFacts, 'yards'>, season: Season, spans: readonly WinterSpan[], by: Grouping): WatchedRow[] {
  const yardCode = new Map<YardId, string>(yards.map((yard) => [yard.id, yard.code]));
  return spans.flatMap(({ colony, entry, exit, fate, weighed }) => {
    const whole = { id: colony.id, season, fate };
    const key = keyOf(colony, by, yardCode);
    if (by !== 'stores' || weighed <= entry || weighed > exit) return stretch({ ...whole, key, entry, exit, last: true });
    return [...stretch({ ...whole, key: 'not weighed', entry, exit: weighed, fate: 0, last: false }), ...stretch({ ...whole, key, entry: weighed, exit, last: true })];
  });
}

function stretch(row: WatchedRow): WatchedRow[] {
  if (row.exit > row.entry) return [row];
  return row.fate === 1 ? [{ ...row, exit: row.entry + 0.5 }] : [];
}

function fateOf(state: ColonyState): FateCode {
  switch (state.how) {
    case 'lost':
    case 'absconded':
      return 1;
    case 'sold':
    case 'given':
      return 2;
    case 'combined':
      return 3;
    case 'alive':
      return 0;
  }
}

function keyOf(colony: WinterColony, by: Grouping, yardCode: ReadonlyMap<YardId, string>): string {
  switch (by) {
    case 'none':
      return 'all';
    case 'yard':
      return yardCode.get(colony.yard) ?? String(colony.yard);
    case 'source':
      return colony.source;
    case 'queenAge':
      return colony.queenAgeClass;
    case 'line':
      return colony.line ?? '';
    case 'treated':
      return colony.treated.join(' + ');
    case 'mites':
      return colony.mitesClass;
    case 'stores':
      return colony.storesClass;
  }
}

/** Groupings that stay with a colony all its life; the others are of one winter. */
export const lifeGroupings: readonly Grouping[] = ['none', 'yard', 'source', 'line'];

/** Every colony's whole life by its own age in days; in a yard it is watched while it stands there. */
export function lifeRows({ states, yards, asOf }: ReviewFacts, by: LossSurvival['asked']['by']): WatchedRow[] {
  const yardCode = new Map<YardId, string>(yards.map((yard) => [yard.id, yard.code]));
  return states.flatMap((state) => {
    if (state.start > asOf) return [];
    const zero = dayNumber(state.start);
    const age = (day: Day) => dayNumber(day) - zero;
    const ended = state.end !== null && state.end <= asOf;
    const whole = { id: state.id, season: 0, fate: ended ? fateOf(state) : (0 as const), last: true };
    if (by !== 'yard') {
      const key = by === 'source' ? state.origin : by === 'line' ? (state.reigns[0]?.source ?? '') : 'all';
      return stretch({ ...whole, key, entry: 0, exit: age(ended && state.end !== null ? state.end : asOf) });
    }
    const stays = state.stays.filter((stay) => stay.from <= asOf);
    return stays.flatMap((stay, at) => {
      const last = at === stays.length - 1;
      const key = yardCode.get(stay.yard) ?? String(stay.yard);
      const exit = age(stay.until !== null && stay.until <= asOf ? stay.until : asOf);
      return stretch({ ...whole, key, entry: age(stay.from), exit, last, fate: last ? whole.fate : 0 });
    });
  });
}
