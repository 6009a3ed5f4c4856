import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Borders } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import type { Store } from '#core/book/store.ts';
import { YardBook, type Yard } from '#core/journal/yardBook.ts';
import { textRule, type RuleValues } from '#core/rules/houseRules.ts';
import { namesOf } from './names.ts';

/** What many answers need of the book, read once and kept until the book changes. */
export interface Picture {
  readonly position: number;
  readonly states: readonly ColonyState[];
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  readonly yards: YardBook;
  readonly yardList: readonly Yard[];
  /** The colonies of each yard in the order they stand in. */
  readonly stands: ReadonlyMap<YardId, readonly ColonyId[]>;
  readonly names: Names;
  readonly rules: RuleValues;
  readonly borders: Borders;
}

/** Reads what is new since an earlier picture, or all of it. */
export async function readPicture(store: Store, earlier: Picture | null = null): Promise<Picture> {
  const position = await store.position();
  if (earlier?.position === position) return earlier;
  const yardList = await store.yards();
  const byId = await readStates(store, earlier);
  const yards = new YardBook(yardList);
  const rules = await store.rules();
  return {
    position, states: [...byId.values()], byId, yards, yardList, stands: await store.stands(), names: await namesOf(store, yards), rules,
    borders: { seasonStart: textRule(rules, 'season.start'), winterStart: textRule(rules, 'season.winter') },
  };
}

async function readStates(store: Store, earlier: Picture | null): Promise<ReadonlyMap<ColonyId, ColonyState>> {
  const changes = earlier === null ? null : await store.changesSince(earlier.position);
  if (earlier === null || changes === null) return new Map((await store.states()).map((state) => [state.id, state]));
  if (changes.states.length === 0 && changes.vanished.length === 0) return earlier.byId;
  const byId = new Map(earlier.byId);
  // A colony may vanish by one act and come back by the next: the store's own word is the last one.
  const touched = new Set([...changes.states.map((state) => state.id), ...changes.vanished]);
  for (const id of changes.vanished) byId.delete(id);
  for (const state of await store.states([...touched])) byId.set(state.id, state);
  return new Map([...byId].toSorted(([a], [b]) => a - b));
}
