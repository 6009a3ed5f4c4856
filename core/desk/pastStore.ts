import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { EntryQuery, Gesture, Store, StoredEntry } from '#core/book/store.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { lastVisits, wholeYardKinds } from '#core/lineage/yardVisits.ts';

/** The journal up to the day, read once for each position of the book. */
interface Past {
  readonly position: number;
  readonly stored: readonly StoredEntry[];
  readonly standing: readonly Entry[];
  readonly states: readonly ColonyState[];
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  readonly yards: readonly Yard[];
}

/**
 * A book's content as it was on the evening of a day: the entries dated up to it, as they stand now (one struck or
 * entered late counts as the record has it today), and the states that follow from them. What has no day (settings,
 * rules, papers, drafts, what is written down of a yard, how colonies stand) is as it is now. For reading alone.
 */
export function pastStore(store: Store, asOf: Day): Store {
  let kept: Past | null = null;
  const past = async (): Promise<Past> => {
    const position = await store.position();
    if (kept?.position === position) return kept;
    const stored = await store.entries({ until: asOf });
    const standing = stored.filter(({ struck }) => struck === null).map(({ entry }) => entry);
    const states = statesAsOf(standing);
    const yards = yardsThen(await store.yards(), new Set(stored.flatMap(({ entry }) => yardsNamed(entry))), lastVisits(await store.states(), await standingWholeYard(store)));
    kept = { position, stored, standing, states, byId: new Map(states.map((state) => [state.id, state])), yards };
    return kept;
  };
  const upToDay = (query: EntryQuery): EntryQuery => ({ ...query, until: query.until === undefined || query.until > asOf ? asOf : query.until });
  const refused = async (): Promise<never> => {
    throw new Error(`a write reached the book as of ${asOf}`);
  };
  return {
    ...store,
    yards: async () => [...(await past()).yards],
    counts: async () => {
      const { standing, states } = await past();
      return { entries: standing.length, firstDay: standing[0]?.day ?? null, lastDay: standing.at(-1)?.day ?? null, living: states.filter(({ how }) => how === 'alive').length };
    },
    states: async (ids) => {
      const { states, byId } = await past();
      return ids === undefined ? [...states] : [...new Set(ids)].flatMap((id) => byId.get(id) ?? []).toSorted((a, b) => a.id - b.id);
    },
    changesSince: async () => null,
    statesByLabel: async (labels) => {
      const wanted = new Set(labels);
      return (await past()).states.filter(({ label }) => wanted.has(label));
    },
    entriesOf: async (colonies) => new Map([...(await store.entriesOf(colonies))].map(([id, entries]) => [id, entries.filter(({ day }) => day <= asOf)])),
    storyOf: async (colony) => (await store.storyOf(colony)).filter(({ entry }) => entry.day <= asOf),
    entries: (query) => store.entries(upToDay(query)),
    gestures: async () => gesturesThen(await store.gestures(), (await past()).stored),
    keepSettings: refused, keepYard: refused, keepYardDetails: refused, keepStand: refused, keepPapers: refused, keepRule: refused, commit: refused, commitAll: refused, rebuild: refused, close: refused,
  };
}

/** Yards that an entry names anywhere, struck ones too, so that each can be put into words. */
function yardsNamed({ body }: Entry): YardId[] {
  const places = Object.values(body).filter((value): value is { yard: YardId } => typeof value === 'object' && value !== null && 'yard' in value);
  return ['yard' in body ? body.yard : undefined, 'toYard' in body ? body.toYard : undefined, ...places.map(({ yard }) => yard)].filter((yard) => yard !== undefined);
}

async function standingWholeYard(store: Store): Promise<Entry[]> {
  return (await store.entries({ kinds: wholeYardKinds })).filter(({ struck }) => struck === null).map(({ entry }) => entry);
}

/** A yard begins with the first record that names it; one that no record names has no day on which it began. */
function yardsThen(all: readonly Yard[], then: ReadonlySet<YardId>, now: ReadonlyMap<YardId, Day>): Yard[] {
  return all.filter(({ id }) => then.has(id) || !now.has(id));
}

/** The acts of which something stands in the record of those days, with what of it does. */
function gesturesThen(gestures: readonly Gesture[], stored: readonly StoredEntry[]): Gesture[] {
  const byGesture = Map.groupBy(stored.filter(({ struck }) => struck === null), ({ gesture }) => gesture);
  return gestures.flatMap((gesture) => {
    const own = byGesture.get(gesture.id);
    return own === undefined ? [] : [{ ...gesture, entries: own.length, firstDay: own[0]?.entry.day ?? null, lastDay: own.at(-1)?.entry.day ?? null }];
  });
}
