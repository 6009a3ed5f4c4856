import type { ColonyId } from '#shared/brands.ts';
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
  readonly names: Names;
  readonly rules: RuleValues;
  readonly borders: Borders;
}

export async function readPicture(store: Store): Promise<Picture> {
  const position = await store.position();
  const yardList = await store.yards();
  const states = await store.states();
  const yards = new YardBook(yardList);
  const rules = await store.rules();
  return {
    position, states, byId: new Map(states.map((state) => [state.id, state])), yards, yardList, names: await namesOf(store, yards), rules,
    borders: { seasonStart: textRule(rules, 'season.start'), winterStart: textRule(rules, 'season.winter') },
  };
}
