import type { ColonyId } from '#shared/brands.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { TypedRow } from '#core/journal/typedRow.ts';
import { WorkingSet, type LoadedColony } from '#core/journal/workingSet.ts';
import type { YardBook } from '#core/journal/yardBook.ts';
import type { Store } from '#core/book/store.ts';

/**
 * Loads what the given rows may touch: the colonies their labels can mean, the mothers of those (a split's
 * colony takes its yard from hers), and, where a row is dated before the last record of one of its colonies, the
 * entries of all its colonies and of all split from them.
 */
export async function loadWorking(store: Store, yards: YardBook, rows: readonly TypedRow[]): Promise<() => WorkingSet> {
  const named = rows.map((row) => ({ day: row.day, labels: (['colony', 'new_colony', 'into'] as const).flatMap((column) => (typeof row.values[column] === 'string' ? [row.values[column]] : [])) }));
  const labels = new Set(named.flatMap((row) => row.labels));
  const states = new Map<ColonyId, ColonyState>((await store.statesByLabel([...labels])).map((state) => [state.id, state]));
  const byLabel = Map.groupBy(states.values(), (state) => state.label);
  const history = new Set<ColonyId>();
  for (const row of named) {
    // One colony with later records is enough: the row then folds all that it names anew.
    const meant = row.labels.flatMap((label) => byLabel.get(label) ?? []);
    if (meant.some((state) => row.day < state.lastDay)) for (const state of meant) history.add(state.id);
  }
  await loadDaughters(store, states, history);
  const mothers = [...states.values()].flatMap((state) => (state.mother !== null && !states.has(state.mother) ? [state.mother] : []));
  for (const state of await store.states([...new Set(mothers)])) states.set(state.id, state);
  const entries = await store.entriesOf([...history]);
  const colonies = Array.from(states.values(), (state): LoadedColony => ({ state, entries: entries.get(state.id) ?? null }));
  const next = await store.nextIds();
  return () => new WorkingSet({ yards, colonies, nextEntry: next.entry, nextColony: next.colony });
}

/** Adds to both collections every colony that descends from those in `history`. */
export async function loadDaughters(store: Store, states: Map<ColonyId, ColonyState>, history: Set<ColonyId>): Promise<void> {
  let open = [...history];
  while (open.length > 0) {
    const daughters = open.flatMap((id) => states.get(id)?.daughters ?? []).filter((id) => !history.has(id));
    for (const id of daughters) history.add(id);
    const missing = daughters.filter((id) => !states.has(id));
    for (const state of await store.states(missing)) states.set(state.id, state);
    open = daughters;
  }
}
