import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { EntryQuery, Store } from '#core/book/store.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { refold } from '#core/journal/refold.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { lastVisits } from '#core/lineage/yardVisits.ts';
import { wholeYardEntries } from './wholeYard.ts';

/** The operation on that evening, worked out once for each position of the book. */
interface Past {
  readonly position: number;
  readonly states: readonly ColonyState[];
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  readonly yards: readonly Yard[];
}

/**
 * A book's content as it was on the evening of a day: the entries dated up to it, as they stand now (one struck or
 * entered late counts as the record has it today), and the states that follow from them. What has no day (settings,
 * rules, papers, drafts, what is written down of a yard, how colonies stand) is as it is now. For reading alone.
 * `present`: the states as they are now; only colonies of which something came later are folded anew.
 */
export function pastStore(store: Store, asOf: Day, present: () => Promise<readonly ColonyState[]>): Store {
  let kept: Past | null = null;
  const past = async (): Promise<Past> => {
    const position = await store.position();
    if (kept?.position === position) return kept;
    const now = await present();
    const states = await statesThen(store, asOf, now);
    kept = { position, states, byId: new Map(states.map((state) => [state.id, state])), yards: await yardsThen(store, asOf, now, states) };
    return kept;
  };
  const upToDay = (query: EntryQuery): EntryQuery => ({ ...query, until: query.until === undefined || query.until > asOf ? asOf : query.until });
  const refused = async (): Promise<never> => {
    throw new Error(`a write reached the book as of ${asOf}`);
  };
  const shown: Store = {
    ...store,
    yards: async () => [...(await past()).yards],
    counts: async () => ({ ...(await store.counts(asOf)), living: (await past()).states.filter(({ how }) => how === 'alive').length }),
    states: async (ids) => {
      const { states, byId } = await past();
      return ids === undefined ? [...states] : [...new Set(ids)].flatMap((id) => byId.get(id) ?? []).toSorted((a, b) => a.id - b.id);
    },
    changesSince: async () => null,
    statesByLabel: async (labels) => {
      const wanted = new Set(labels);
      return (await past()).states.filter(({ label }) => wanted.has(label));
    },
    entriesOf: (colonies) => store.entriesOf(colonies, asOf),
    storyOf: async (colony) => (await store.storyOf(colony)).filter(({ entry }) => entry.day <= asOf),
    entries: (query) => store.entries(upToDay(query)),
    gestures: () => store.gesturesUntil(asOf),
    keepSettings: refused, keepYard: refused, keepYardDetails: refused, keepStand: refused, keepPapers: refused, keepRule: refused, commit: refused, commitAll: refused, rebuild: refused, close: refused,
  };
  presents.set(shown, store);
  return shown;
}

/** Yards that an entry names anywhere, struck ones too, so that each can be put into words. */
function yardsNamed({ body }: Entry): YardId[] {
  const places = Object.values(body).filter((value): value is { yard: YardId } => typeof value === 'object' && value !== null && 'yard' in value);
  return ['yard' in body ? body.yard : undefined, 'toYard' in body ? body.toYard : undefined, ...places.map(({ yard }) => yard)].filter((yard) => yard !== undefined);
}

const presents = new WeakMap<Store, Store>();

/** The store of all that is recorded, behind one that ends on a day; else the store itself. */
export function presentOf(store: Store): Store {
  return presents.get(store) ?? store;
}

/** The states of that evening, by id: a colony's own state is still that of then unless something of it came later. */
async function statesThen(store: Store, asOf: Day, now: readonly ColonyState[]): Promise<ColonyState[]> {
  const later = now.filter(({ start, lastDay }) => start <= asOf && lastDay > asOf);
  const same = now.filter(({ lastDay }) => lastDay <= asOf);
  const known = new Map(same.map((state) => [state.id, state]));
  const folded = refold(await store.entriesOf(later.map(({ id }) => id), asOf), (id) => known.get(id) ?? null);
  return [...same, ...[...folded.states.values()].filter((state) => state !== null)].toSorted((a, b) => a.id - b.id);
}

/** A yard begins with the first record that names it, a struck one too; one that no record names has no day on which it began. */
async function yardsThen(store: Store, asOf: Day, now: readonly ColonyState[], then: readonly ColonyState[]): Promise<Yard[]> {
  const yards = await store.yards();
  const stood = new Set(then.flatMap(({ stays }) => stays.map(({ yard }) => yard)));
  const visited = lastVisits(now, await wholeYardEntries(store));
  // Of the others, the record itself tells when they were named first.
  const open = yards.filter(({ id }) => !stood.has(id) && visited.has(id));
  const named = open.length === 0 ? null : await namedSince(store);
  return yards.filter(({ id }) => {
    const first = named?.get(id);
    return stood.has(id) || !visited.has(id) || (first !== undefined && first <= asOf);
  });
}

/** The first day on which any entry ever made names each yard. The journal only grows, so after the first time only what is new is read. */
async function namedSince(store: Store): Promise<ReadonlyMap<YardId, Day>> {
  const known = named.get(store) ?? { first: new Map<YardId, Day>(), last: 0 as EntryId };
  named.set(store, known);
  const { entry: next } = await store.nextIds();
  if (known.last + 1 >= next) return known.first;
  for (const { entry } of await store.entries({ after: known.last })) {
    for (const yard of yardsNamed(entry)) {
      const had = known.first.get(yard);
      if (had === undefined || entry.day < had) known.first.set(yard, entry.day);
    }
  }
  known.last = (next - 1) as EntryId;
  return known.first;
}

const named = new WeakMap<Store, { readonly first: Map<YardId, Day>; last: EntryId }>();
