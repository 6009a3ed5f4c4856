import type { ColonyId, EntryId, GestureId } from '#shared/brands.ts';
import type { Written } from '#shared/contract/journal.ts';
import { dayInWords } from '#shared/days.ts';
import { FaultError, refuse, type Fault, type RowFault } from '#shared/faults.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { labelClash, labelClashSentence, refold } from '#core/journal/refold.ts';
import type { GestureKind, Mark, Store } from '#core/book/store.ts';
import { loadDaughters } from './loadWorking.ts';

export interface StandingChange {
  readonly kind: GestureKind;
  readonly title: string;
  readonly undoes: GestureId | null;
  /** Entries that stand now and shall not. */
  readonly strike: readonly { readonly entry: Entry; readonly reason: string }[];
  /** Struck entries that shall stand again. */
  readonly lift: readonly { readonly entry: Entry; readonly reason: string }[];
  readonly add: readonly { readonly entry: Entry; readonly replaces: EntryId }[];
}

/** What a change of standing would do: worked out in one place, whether it is then done or only shown. */
export interface Judgement {
  /** The book's position that it holds for. */
  readonly expected: number;
  /** Colonies that the entries themselves name. */
  readonly colonies: ReadonlySet<ColonyId>;
  readonly before: ReadonlyMap<ColonyId, ColonyState>;
  /** Those colonies and all split from them; null where nothing brings one into being any more. */
  readonly after: ReadonlyMap<ColonyId, ColonyState | null>;
  /** The entries of each that would then stand, in the journal's order. */
  readonly entriesOf: ReadonlyMap<ColonyId, readonly Entry[]>;
  /** Entries that would then contradict the record, `line` being the entry's id; empty when the change can be made. */
  readonly contradictions: readonly RowFault[];
}

/** Folds anew the colonies that the change names and those split from them; changes nothing. */
export async function judgeStanding(store: Store, change: StandingChange): Promise<Judgement> {
  const expected = await store.position();
  const arriving = arrivingIn(change);
  const touched = [...change.strike.map(({ entry }) => entry), ...arriving];
  const colonies = new Set(touched.flatMap((entry) => rulesOf(entry.kind).touches(entry.body).map((touch) => touch.colony)));
  const before = new Map<ColonyId, ColonyState>((await store.states([...colonies])).map((state) => [state.id, state]));
  const history = new Set(colonies);
  await loadDaughters(store, before, history);

  const entriesOf = await store.entriesOf([...history]);
  const struck = new Set(change.strike.map(({ entry }) => entry.id));
  for (const [colony, entries] of entriesOf) entriesOf.set(colony, entries.filter((entry) => !struck.has(entry.id)));
  for (const entry of arriving) for (const touch of rulesOf(entry.kind).touches(entry.body)) entriesOf.get(touch.colony)?.push(entry);
  for (const entries of entriesOf.values()) entries.sort(byOrder);

  const mothers = [...before.values()].flatMap((state) => (state.mother !== null && !history.has(state.mother) ? [state.mother] : []));
  const outside = new Map((await store.states([...new Set(mothers)])).map((state) => [state.id, state]));
  const folded = refold(entriesOf, (colony) => outside.get(colony) ?? null);
  const faults = new Map<EntryId, RowFault>();
  for (const { entry, refusal } of folded.refused) {
    faults.set(entry.id, { line: entry.id, column: refusal.column, value: '', sentence: `The entry of kind “${entry.kind}” of ${dayInWords(entry.day)} could then not stand: ${refusal.sentence}` });
  }
  const clash = await findClash(store, folded.states);
  if (clash !== null) faults.set(clash.later.startEntry, { line: clash.later.startEntry, column: 'colony', value: clash.later.label, sentence: labelClashSentence(clash) });
  return { expected, colonies, before, after: folded.states, entriesOf, contradictions: [...faults.values()] };
}

/** What contradicts, as the fault that the change is refused with. */
export function contradictionFault(rows: readonly RowFault[]): Fault {
  return refuse('refused', rows[0]?.sentence ?? '', { mend: `Nothing was changed. ${rows.length === 1 ? 'Strike or mend that entry' : `Strike or mend those ${rows.length} entries`} first.`, rows: [...rows] });
}

/**
 * Changes which entries stand. The colonies they name, and those split from them, are folded anew; if any entry
 * that would then stand contradicts the record, nothing changes and each is named.
 */
export async function changeStanding(store: Store, change: StandingChange, sentence: string, at: string): Promise<Written> {
  const { expected, colonies, after, contradictions } = await judgeStanding(store, change);
  if (contradictions.length > 0) throw new FaultError(contradictionFault(contradictions));
  const marks: Mark[] = [
    ...change.strike.map(({ entry, reason }): Mark => ({ entry: entry.id, what: 'strike', reason })),
    ...change.lift.map(({ entry, reason }): Mark => ({ entry: entry.id, what: 'lift', reason })),
  ];
  const { gesture, position } = await store.commit(
    {
      at, kind: change.kind, title: change.title, undoes: change.undoes, yards: [], entries: change.add, marks,
      states: [...after.values()].filter((state) => state !== null).toSorted((a, b) => a.id - b.id),
      vanished: [...after].filter(([, state]) => state === null).map(([colony]) => colony),
    },
    expected,
  );
  return { gesture, sentence, entered: arrivingIn(change).length, struck: change.strike.length, colonies: [...colonies], position };
}

function arrivingIn(change: StandingChange): Entry[] {
  return [...change.lift.map(({ entry }) => entry), ...change.add.map(({ entry }) => entry)];
}

async function findClash(store: Store, changed: ReadonlyMap<ColonyId, ColonyState | null>) {
  const labels = new Set([...changed.values()].flatMap((state) => (state === null ? [] : [state.label])));
  const all = new Map((await store.statesByLabel([...labels])).map((state) => [state.id, state]));
  for (const [colony, state] of changed) {
    if (state === null) all.delete(colony);
    else all.set(colony, state);
  }
  for (const label of labels) {
    const clash = labelClash([...all.values()].filter((state) => state.label === label));
    if (clash !== null) return clash;
  }
  return null;
}
