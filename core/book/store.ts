import type { ColonyId, EntryId, GestureId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Yard, YardDetails } from '#core/journal/yardBook.ts';

export type GestureKind = 'enter' | 'import' | 'strike' | 'replace' | 'undo' | 'redo';

export interface Gesture {
  readonly id: GestureId;
  readonly at: string;
  readonly kind: GestureKind;
  readonly title: string;
  readonly undoes: GestureId | null;
  readonly entries: number;
  readonly firstDay: Day | null;
  readonly lastDay: Day | null;
}

/** Strikes an entry, or lifts an earlier strike. Nothing is ever removed. */
export interface Mark {
  readonly entry: EntryId;
  readonly what: 'strike' | 'lift';
  readonly reason: string;
}

/** Something kept beside the journal; see the papers migration. A null body takes it away. */
export interface Paper {
  readonly kind: string;
  readonly key: string;
  readonly body: string | null;
}

/** One act, kept whole or not at all. */
export interface Change {
  readonly at: string;
  readonly kind: GestureKind;
  readonly title: string;
  readonly undoes: GestureId | null;
  readonly yards: readonly Yard[];
  readonly entries: readonly { readonly entry: Entry; readonly replaces: EntryId | null }[];
  readonly marks: readonly Mark[];
  /** States that are no longer what the book holds. */
  readonly states: readonly ColonyState[];
  /** Colonies that nothing brings into being any more. */
  readonly vanished: readonly ColonyId[];
  /** Papers that change with the act; they may name it. Undo does not bring them back. */
  readonly papers?: readonly Paper[] | ((gesture: GestureId) => readonly Paper[]);
}

export interface EntryQuery {
  readonly ids?: readonly EntryId[];
  readonly kinds?: readonly Kind[];
  readonly from?: Day;
  readonly until?: Day;
  readonly gesture?: GestureId;
  /** Only entries that name no colony. */
  readonly ofNoColony?: true;
  /** Only entries put in the place of one of these. */
  readonly replacing?: readonly EntryId[];
  /** Only what was written after that entry. */
  readonly after?: EntryId;
  /** Only up to that entry, it too. */
  readonly upTo?: EntryId;
}

export interface StoredEntry {
  readonly entry: Entry;
  readonly gesture: GestureId;
  /** Null while it stands. */
  readonly struck: { readonly reason: string; readonly by: GestureKind } | null;
  /** The entry in whose place it was put. */
  readonly replaces: EntryId | null;
}

/**
 * The one way to a book's content: small asynchronous reads, and commits at an expected position. No room and
 * no screen knows which database is behind it.
 */
export interface Store {
  /** Grows with every change of any kind. */
  position(): Promise<number>;
  settings(): Promise<ReadonlyMap<string, string>>;
  keepSettings(values: ReadonlyMap<string, string>): Promise<void>;
  yards(): Promise<Yard[]>;
  keepYard(yard: Yard): Promise<void>;
  /** Only yards of which something is written down. */
  yardDetails(): Promise<ReadonlyMap<YardId, YardDetails>>;
  keepYardDetails(yard: YardId, details: YardDetails): Promise<void>;
  /** The colonies of each yard in the order they stand in; one that has left keeps its place for when it comes back. */
  stands(): Promise<ReadonlyMap<YardId, readonly ColonyId[]>>;
  keepStand(yard: YardId, colonies: readonly ColonyId[]): Promise<void>;
  /** Standing entries, of all days or of those up to one, and colonies living now. */
  counts(until?: Day): Promise<{ entries: number; firstDay: Day | null; lastDay: Day | null; living: number }>;
  /** The ids that come next; none is ever used again. */
  nextIds(): Promise<{ entry: number; colony: number; yard: number }>;
  /** All colonies, or those given, by id. */
  states(ids?: readonly ColonyId[]): Promise<ColonyState[]>;
  /** What changed since a position that this store was at; null where that is no longer known and all must be read. */
  changesSince(position: number): Promise<{ states: ColonyState[]; vanished: ColonyId[] } | null>;
  statesByLabel(labels: readonly string[]): Promise<ColonyState[]>;
  /** The labels of all colonies ever made, those of struck entries too. */
  labels(): Promise<Map<ColonyId, string>>;
  /** Standing entries that name each colony, of all days or of those up to one, in the journal's order. */
  entriesOf(colonies: readonly ColonyId[], until?: Day): Promise<Map<ColonyId, Entry[]>>;
  /** Standing and struck entries that name a colony, in the journal's order. */
  storyOf(colony: ColonyId): Promise<StoredEntry[]>;
  entries(query: EntryQuery): Promise<StoredEntry[]>;
  gestures(): Promise<Gesture[]>;
  /** The acts of which something dated up to that day stands, with how much and of which days. */
  gesturesUntil(until: Day): Promise<Gesture[]>;
  marksOf(gesture: GestureId): Promise<Mark[]>;
  /** Throws a FaultError `moved-on` when the position is no longer the expected one. */
  commit(change: Change, expected: number): Promise<{ gesture: GestureId; position: number }>;
  /** Several acts in one transaction, for building a book. */
  commitAll(changes: readonly Change[], expected: number): Promise<void>;
  drafts: { keep(key: string, body: string): Promise<void>; fetch(key: string): Promise<string | null>; drop(key: string): Promise<void> };
  /** What one room keeps beside the journal, by key in the order of keys; bodies are JSON text that the room reads and checks. */
  papers(kind: string): Promise<ReadonlyMap<string, string>>;
  /** All of them or none; null takes one away. */
  keepPapers(papers: readonly Paper[]): Promise<void>;
  rules(): Promise<ReadonlyMap<string, number | string>>;
  keepRule(key: string, value: number | string | null): Promise<void>;
  /** Rewrites every projection from the journal, as this program folds it. */
  rebuild(): Promise<void>;
  /** The projections as text, for comparing them byte by byte. */
  projectionText(): Promise<string>;
  /** Integrity and references; empty when sound. */
  findings(): Promise<string[]>;
  close(): Promise<void>;
}
