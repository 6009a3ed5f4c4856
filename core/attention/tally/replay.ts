import type { ColonyId, YardId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import type { NeedKey } from '#shared/contract/needs.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import { currentYard, type ColonyState } from '#core/journal/colonyState.ts';
import { applyStep, byOrder, checkStep } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { foldContext } from '#core/journal/refold.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { hiveBoxesOf } from '#core/space/hiveBoxes.ts';
import { foldStock, stockKinds } from '#core/stock/foldStock.ts';
import type { StockBook } from '#core/stock/stockBook.ts';
import { colonyDues, isOpen } from '../colonyDues.ts';
import { needFacts } from '../needs/needFacts.ts';
import type { NeedFacts, NeedRule } from '../needs/needRule.ts';

/*
 * The rules are asked what they would have asked on one evening of every week that is past, by what was in the record
 * then. The record is folded forward once, so that a week costs what happened in it; and in slices, so that whoever
 * does it can do something else in between.
 */

export const weekly = 7;
/** Later than this nothing answers any more. */
export const lateDays = 30;
const recentDays = 200;
/** Colonies looked at, and entries folded, in one slice. */
const slice = { colonies: 150, entries: 1000 };

export interface ReplayFacts {
  readonly rules: RuleValues;
  readonly borders: Borders;
  readonly massUnit: MassUnit;
  readonly yards: readonly Yard[];
}

/** One time that a rule asked for a colony; or for a yard, by rules that ask for a yard and look for no harm. */
export interface Asked {
  readonly rule: NeedKey;
  readonly colony: ColonyId | null;
  readonly yard: YardId;
  /** The evening on which it first stood in the list. */
  readonly first: Day;
  /** Answered up to this day it was answered in time: its last day, or a week after it was first seen. */
  readonly by: Day;
  lastSeen: Day;
  answered: Day | null;
}

export class Replay {
  readonly asked: Asked[] = [];
  readonly states = new Map<ColonyId, ColonyState>();
  readonly #facts: ReplayFacts;
  readonly #rules: readonly NeedRule[];
  readonly #byKey = new Map<string, Asked>();
  readonly #open = new Map<ColonyId | `yard ${number}`, Asked[]>();
  readonly #recent = new Map<ColonyId, Entry[]>();
  readonly #treatments: Entry[] = [];
  readonly #context = foldContext((colony) => this.states.get(colony) ?? null);
  readonly #unfolded: Entry[] = [];
  #stock: StockBook | null = null;

  constructor(facts: ReplayFacts, rules: readonly NeedRule[]) {
    this.#facts = facts;
    this.#rules = rules.filter(({ key, tally }) => tally !== undefined && numberRule(facts.rules, `needs.grave.${key}`) > 0);
  }

  /** Enters the standing entries since the last evening, up to that day, and asks the rules; it gives way after every slice. */
  *evening(day: Day, entries: readonly Entry[]): Generator<void> {
    for (const [at, entry] of entries.toSorted(byOrder).entries()) {
      this.#enter(entry);
      if (at % slice.entries === slice.entries - 1) yield;
    }
    // Folded every week, wanted or not, so that a winter's entries never come all at once.
    while (this.#unfolded.length > 0) {
      this.#stock = foldStock(this.#nextDays(), this.#facts, undefined, this.#stock ?? undefined);
      yield;
    }
    for (const yards of this.#groups()) {
      this.#ask(day, yards);
      yield;
    }
  }

  #enter(entry: Entry): void {
    const touches = rulesOf(entry.kind).touches(entry.body);
    // What a split takes from must be done before what it makes.
    for (const { colony, part } of touches.toSorted((a, b) => Number(a.part === 'created') - Number(b.part === 'created'))) {
      const state = this.states.get(colony) ?? null;
      if (checkStep(state, entry, part) !== null) continue;
      this.states.set(colony, applyStep(state, entry, part, this.#context));
      const own = this.#recent.get(colony);
      if (own === undefined) this.#recent.set(colony, [entry]);
      else own.push(entry);
    }
    if (entry.kind === 'treatment') this.#treatments.push(entry);
    if (stockKinds.includes(entry.kind)) this.#unfolded.push(entry);
    this.#answer(entry, touches.map(({ colony }) => colony));
  }

  /** Some whole days of what the account has not yet seen. */
  #nextDays(): Entry[] {
    const last = this.#unfolded[slice.entries]?.day;
    const until = last === undefined ? -1 : this.#unfolded.findIndex(({ day }) => day > last);
    return this.#unfolded.splice(0, until < 0 ? this.#unfolded.length : until);
  }

  /** An entry of a colony answers for it and for its yard; one of a whole yard for all that stand there. */
  #answer(entry: Entry, touched: readonly ColonyId[]): void {
    const whole = touched.length === 0 && 'yard' in entry.body ? entry.body.yard : undefined;
    const colonies = whole === undefined ? touched : [...this.states.values()].flatMap((state) => (state.end === null && currentYard(state) === whole ? [state.id] : []));
    const yards = new Set([...colonies.flatMap((id) => this.states.get(id) ?? []).map(currentYard), ...(whole === undefined ? [] : [whole])]);
    for (const key of [...colonies, ...[...yards].map((id) => `yard ${id}` as const)]) {
      const open = this.#open.get(key);
      if (open === undefined) continue;
      const left = open.filter((asked) => {
        if (entry.day > addDays(asked.by, lateDays)) return false;
        if (!this.#answers(asked.rule).includes(entry.kind) || entry.day <= asked.first) return true;
        asked.answered = entry.day;
        return false;
      });
      this.#open.set(key, left);
    }
  }

  #answers(key: NeedKey): readonly Entry['kind'][] {
    return this.#rules.find((rule) => rule.key === key)?.tally?.answers ?? [];
  }

  /** The living by yard, yards together as long as they are few. */
  #groups(): Map<YardId, ColonyState[]>[] {
    const living = Map.groupBy([...this.states.values()].filter(({ end }) => end === null), currentYard);
    const groups: Map<YardId, ColonyState[]>[] = [];
    let room = 0;
    for (const [yard, states] of living) {
      if (room < states.length || groups.length === 0) {
        groups.push(new Map());
        room = slice.colonies;
      }
      groups.at(-1)?.set(yard, states);
      room -= states.length;
    }
    return groups;
  }

  #ask(day: Day, standing: ReadonlyMap<YardId, readonly ColonyState[]>): void {
    const facts = this.#needFacts(day, standing);
    for (const rule of this.#rules) {
      for (const found of rule.find(facts)) {
        if (found.earliest > day) continue;
        const yard = found.colony?.yard.yard.id ?? found.yard?.yard.id;
        if (yard === undefined) continue;
        const by = found.latest > addDays(day, weekly) ? found.latest : addDays(day, weekly);
        if (found.colony !== undefined) this.#note(rule.key, found.colony.state.id, yard, found.episode, day, by);
        else if (rule.tally?.came === null) this.#note(rule.key, null, yard, found.episode, day, by);
        else for (const { id } of standing.get(yard) ?? []) this.#note(rule.key, id, yard, found.episode, day, by);
      }
    }
  }

  #note(rule: NeedKey, colony: ColonyId | null, yard: YardId, episode: string, day: Day, by: Day): void {
    const about = colony ?? (`yard ${yard}` as const);
    const key = `${rule}|${about}|${episode}`;
    const known = this.#byKey.get(key);
    if (known !== undefined) {
      known.lastSeen = day;
      return;
    }
    const asked: Asked = { rule, colony, yard, first: day, by, lastSeen: day, answered: null };
    this.#byKey.set(key, asked);
    this.asked.push(asked);
    this.#open.set(about, [...(this.#open.get(about) ?? []), asked]);
  }

  #needFacts(day: Day, standing: ReadonlyMap<YardId, readonly ColonyState[]>): NeedFacts {
    const { rules, borders, massUnit, yards } = this.#facts;
    const since = addDays(day, -recentDays);
    const recentOf = (id: ColonyId) => {
      const own = this.#recent.get(id) ?? [];
      const recent = own[0] !== undefined && own[0].day < since ? own.filter((entry) => entry.day >= since) : own;
      if (recent !== own) this.#recent.set(id, recent);
      return recent;
    };
    const whole = this.#treatments.filter((entry) => entry.day >= since && entry.kind === 'treatment' && entry.body.colony === undefined);
    const duesOf = (id: ColonyId): DueItem[] => {
      const state = this.states.get(id);
      if (state === undefined) return [];
      const shared = whole.filter((entry) => entry.kind === 'treatment' && state.stays.some(({ yard, from, until }) => yard === entry.body.yard && from <= entry.day && (until === null || until > entry.day)));
      const entries = [...recentOf(id), ...shared];
      return colonyDues({ state, entries: shared.length === 0 ? entries : entries.toSorted(byOrder), said: () => '', borders }, rules, day).filter(isOpen);
    };
    return needFacts({
      today: day, ahead: 0, rules, borders, massUnit, states: [...standing.values()].flat(), byId: this.states, yards: yards.filter(({ id }) => standing.has(id)), details: new Map(), stands: new Map(),
      treatments: this.#treatments, yardWords: [], lastVisits: new Map(), duesOf, deadlines: [], toMend: [], unchecked: new Set(), entryOf: () => null,
      boxesOf: (id) => (this.#stock === null ? null : hiveBoxesOf(this.#stock, id, rules)),
      saidOf: (id) => recentOf(id).flatMap(({ id: entry, day: on, kind, body }) => (kind === 'inspection' && body.note !== undefined ? [{ day: on, words: body.note, entry }] : [])),
    });
  }
}
