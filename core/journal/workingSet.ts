import { dayInWords } from '#shared/days.ts';
import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { ColonyState, OrderKey } from './colonyState.ts';
import { applyStep, byOrder, checkStep, endedSentence } from './foldColony.ts';
import type { FoldContext, Refusal, Touch } from './kindRules.ts';
import { rulesOf, type Entry } from './kinds.ts';
import { foldContext, labelClash, refold } from './refold.ts';
import { resolveRow, type Lookup } from './resolveRow.ts';
import type { TypedRow } from './typedRow.ts';
import type { YardBook } from './yardBook.ts';

/** A colony as the book holds it. Its entries are needed only where a row may be dated before its last one. */
export interface LoadedColony {
  readonly state: ColonyState;
  readonly entries: readonly Entry[] | null;
}

export interface WorkingSetInput {
  readonly yards: YardBook;
  readonly colonies: Iterable<LoadedColony>;
  readonly nextEntry: number;
  readonly nextColony: number;
}

export type Added = { ok: true; entry: Entry } | { ok: false; refusal: Refusal };

interface Working {
  state: ColonyState;
  entries: Entry[] | null;
  /** A state handed in is shared with others and is copied before its first change. */
  own: boolean;
}

/**
 * The part of the operation that a change touches, held in memory while rows are added one by one. A row that
 * cannot stand is refused and leaves everything as it was. Rows must come in date order; against what the book
 * holds already they may be of any date.
 */
export class WorkingSet {
  readonly added: Entry[] = [];
  readonly #colonies = new Map<ColonyId, Working>();
  readonly #byLabel = new Map<string, ColonyId[]>();
  readonly #changed = new Set<ColonyId>();
  readonly #yards: YardBook;
  readonly #context: FoldContext;
  #nextEntry: number;
  #nextColony: number;

  constructor(input: WorkingSetInput) {
    this.#yards = input.yards;
    this.#nextEntry = input.nextEntry;
    this.#nextColony = input.nextColony;
    for (const { state, entries } of input.colonies) {
      this.#colonies.set(state.id, { state, entries: entries === null ? null : [...entries], own: false });
      this.#keepLabel(state);
    }
    this.#context = foldContext((colony) => this.#colonies.get(colony)?.state ?? null);
  }

  /** Enters a row, or says why it cannot stand. */
  add(row: TypedRow): Added {
    const place = this.#nextEntry;
    const colonyBefore = this.#nextColony;
    const resolved = resolveRow(row, { day: row.day, place }, this.#lookup);
    if (!resolved.ok) return { ok: false, refusal: resolved.refusal };
    const entry = { id: place as EntryId, place, day: row.day, kind: row.kind, body: resolved.body } as Entry;
    const refusal = this.#enter(entry);
    if (refusal !== null) {
      this.#nextColony = colonyBefore;
      return { ok: false, refusal };
    }
    this.#nextEntry += 1;
    this.added.push(entry);
    return { ok: true, entry };
  }

  /** The states that are no longer what was handed in. */
  changed(): ColonyState[] {
    return [...this.#changed].toSorted((a, b) => a - b).flatMap((id) => this.#colonies.get(id)?.state ?? []);
  }

  states(): ColonyState[] {
    return Array.from(this.#colonies.values(), (one) => one.state);
  }

  get nextColony(): number {
    return this.#nextColony;
  }

  /** Created colonies whose label is, after all rows, also carried by another at the same time. */
  clashes(): { created: Entry; sentenceAbout: { earlier: ColonyState; later: ColonyState } }[] {
    const found: { created: Entry; sentenceAbout: { earlier: ColonyState; later: ColonyState } }[] = [];
    const creators = this.added.filter((entry) => entry.kind === 'install' || entry.kind === 'split');
    for (const created of creators) {
      const label = created.kind === 'install' || created.kind === 'split' ? created.body.label : '';
      const clash = labelClash((this.#byLabel.get(label) ?? []).flatMap((id) => this.#colonies.get(id)?.state ?? []));
      if (clash !== null && (clash.earlier.startEntry === created.id || clash.later.startEntry === created.id)) found.push({ created, sentenceAbout: clash });
    }
    return found;
  }

  #enter(entry: Entry): Refusal | null {
    const touches = rulesOf(entry.kind).touches(entry.body);
    const late = touches.some((touch) => touch.part !== 'created' && entry.day < this.#working(touch.colony).state.lastDay);
    if (late) return this.#insert(entry, touches);
    for (const touch of touches) {
      const refusal = touch.part === 'created' ? this.#labelTaken(entry) : checkStep(this.#working(touch.colony).state, entry, touch.part);
      if (refusal !== null) return refusal;
    }
    for (const touch of touches) {
      if (touch.part === 'created') {
        this.#adopt(applyStep(null, entry, 'created', this.#context), entry);
        continue;
      }
      const working = this.#working(touch.colony);
      if (!working.own) {
        working.state = structuredClone(working.state);
        working.own = true;
      }
      applyStep(working.state, entry, touch.part, this.#context);
      working.entries?.push(entry);
      this.#changed.add(touch.colony);
    }
    return null;
  }

  /** A row dated before later records: the colonies it names, and those split from them, are folded anew. */
  #insert(entry: Entry, touches: readonly Touch[]): Refusal | null {
    const entriesOf = new Map<ColonyId, readonly Entry[]>();
    for (const { colony, part } of touches) {
      if (part === 'created') {
        const taken = this.#labelTaken(entry);
        if (taken !== null) return taken;
        entriesOf.set(colony, [entry]);
        continue;
      }
      const { entries } = this.#working(colony);
      if (entries === null) throw new Error(`the entries of colony ${colony} were not loaded, and a row is dated before its last one`);
      entriesOf.set(colony, [...entries, entry].sort(byOrder));
      for (const daughter of this.#descendants(colony)) {
        const line = this.#working(daughter).entries;
        if (line === null) throw new Error(`the entries of colony ${daughter} were not loaded, and its mother's record changes`);
        if (!entriesOf.has(daughter)) entriesOf.set(daughter, line);
      }
    }
    const folded = refold(entriesOf, (colony) => this.#colonies.get(colony)?.state ?? null);
    const [first] = folded.refused;
    if (first !== undefined) {
      if (first.entry.id === entry.id) return first.refusal;
      return { column: 'date', sentence: `Entered on ${dayInWords(entry.day)}, this would contradict the entry of kind “${first.entry.kind}” of ${dayInWords(first.entry.day)}: ${first.refusal.sentence}` };
    }
    for (const [colony, state] of folded.states) {
      if (state === null) throw new Error(`colony ${colony} vanished while a row was added`);
      const working = this.#colonies.get(colony);
      if (working === undefined) {
        this.#adopt(state, entry);
      } else {
        working.state = state;
        working.own = true;
        working.entries = [...(entriesOf.get(colony) ?? [])];
        this.#changed.add(colony);
      }
    }
    return null;
  }

  #adopt(state: ColonyState, entry: Entry): void {
    this.#colonies.set(state.id, { state, entries: [entry], own: true });
    this.#keepLabel(state);
    this.#changed.add(state.id);
  }

  #descendants(colony: ColonyId): ColonyId[] {
    return this.#working(colony).state.daughters.flatMap((daughter) => [daughter, ...this.#descendants(daughter)]);
  }

  #working(colony: ColonyId): Working {
    const found = this.#colonies.get(colony);
    if (found === undefined) throw new Error(`colony ${colony} was not loaded`);
    return found;
  }

  #keepLabel(state: ColonyState): void {
    const carriers = this.#byLabel.get(state.label);
    if (carriers === undefined) this.#byLabel.set(state.label, [state.id]);
    else carriers.push(state.id);
  }

  #labelTaken(entry: Entry): Refusal | null {
    if (entry.kind !== 'install' && entry.kind !== 'split') return null;
    const { label } = entry.body;
    const holder = this.#carrierAt(label, entry);
    if (holder === null) return null;
    const column = entry.kind === 'install' ? 'colony' : 'new_colony';
    if (entry.kind === 'split' && holder.id === entry.body.colony) {
      return { column, sentence: `${label} cannot be split into its own label. Give the new colony another one.` };
    }
    return {
      column,
      sentence: `A colony called ${label} is alive on ${dayInWords(entry.day)} (it began on ${dayInWords(holder.start)}). Give the new one another label, or enter how the first one ended.`,
    };
  }

  /** The colony that carries the label at that point of the journal's order. */
  #carrierAt(label: string, key: OrderKey): ColonyState | null {
    for (const id of this.#byLabel.get(label) ?? []) {
      const { state } = this.#working(id);
      const begun = state.start < key.day || (state.start === key.day && state.startPlace < key.place);
      const over = state.end !== null && (state.end < key.day || (state.end === key.day && (state.endPlace ?? 0) < key.place));
      if (begun && !over) return state;
    }
    return null;
  }

  readonly #lookup: Lookup = {
    yard: (name) => this.#yards.find(name)?.id ?? null,
    newColony: () => {
      const id = this.#nextColony as ColonyId;
      this.#nextColony += 1;
      return id;
    },
    colony: (label, key, row) => {
      const carrier = this.#carrierAt(label, key);
      if (carrier !== null) return { id: carrier.id };
      const carriers = (this.#byLabel.get(label) ?? []).map((id) => this.#working(id).state);
      if (carriers.length === 0) return { sentence: `No colony called “${label}” is recorded. Correct the label, or enter how the colony began first.` };
      const before = carriers.filter((one) => one.start <= key.day).toSorted((a, b) => (a.start < b.start ? 1 : -1))[0];
      if (before !== undefined) return { sentence: endedSentence(before, row) };
      const [next] = carriers.toSorted((a, b) => (a.start < b.start ? -1 : 1));
      return { sentence: `${label} begins only on ${dayInWords(next?.start ?? key.day)}, after this row's ${dayInWords(key.day)}. Correct the day of one of them.` };
    },
  };
}
