import { afterEach, beforeEach, expect } from 'vitest';
import { join } from 'node:path';
import { contract } from '#shared/contract/contract.ts';
import type { NeedItem, NeedKey, NeedLine } from '#shared/contract/needs.ts';
import type { YardId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { needFacts, type NeedSources } from '#core/attention/needs/needFacts.ts';
import type { Found, NeedRule } from '#core/attention/needs/needRule.ts';
import { needRuleOf } from '#core/attention/needs/needRules.ts';
import type { DeskContext } from '#core/desk/desk.ts';
import { needHandlers } from '#core/desk/needHandlers.ts';
import { needSources } from '#core/desk/needSources.ts';
import { Book } from '#core/desk/openBook.ts';
import { houseRuleDefinitions, ruleTrouble, type RuleValues } from '#core/rules/houseRules.ts';
import { scratchFolder } from '#tests/book/trialFile.ts';
import { acts } from '#tests/journal/trialBook.ts';

/*
 * A small book for each test, asked as of a day through the handler that answers the list. What the tests see is written
 * down by rule: that it asked, that it kept quiet, and that a house rule which it names changed what it said.
 */

export interface Asked {
  /** The colony's label or the yard's code; "all" where it is about the operation. */
  readonly who: string;
  readonly act: string;
  readonly because: string;
  readonly detail: string | null;
  readonly earliest: string;
  readonly latest: string;
  readonly status: string;
  readonly records: readonly string[];
  readonly line: NeedLine;
}

type Seen = 'asks' | 'is quiet' | 'goes by the house';
const seen = new Map<NeedKey, Set<Seen>>();

export function seenOf(key: NeedKey): Seen[] {
  return [...(seen.get(key) ?? [])].toSorted();
}

function saw(key: NeedKey, what: Seen): void {
  seen.set(key, (seen.get(key) ?? new Set()).add(what));
}

let scratch: ReturnType<typeof scratchFolder>;
let book: Book | null = null;
let changed: string[] = [];
let before = new Map<string, string>();

/** Every test has a book with the yards QY and LB and nothing in them. */
export function bookForEach(): void {
  beforeEach(async () => {
    scratch = scratchFolder();
    await openBook();
  });
  afterEach(async () => {
    await book?.store.close();
    scratch.remove();
  });
}

export async function openBook(settings: Readonly<Record<string, string>> = {}): Promise<void> {
  await book?.store.close().catch(() => undefined);
  book = await Book.create(join(scratch.folder, `${Object.keys(settings).join('') || 'needs'}.outyard`), new Map(Object.entries({ name: 'Ossar Valley', ...settings })));
  for (const [at, [code, name]] of [['QY', 'Quarry'], ['LB', 'Larch Bend']].entries()) await book.store.keepYard({ id: (at + 1) as YardId, code: code ?? '', name: name ?? '', room: null, minutes: null });
  [changed, before] = [[], new Map()];
}

export function opened(): Book {
  if (book === null) throw new Error('no book is open');
  return book;
}

export async function enter(...rows: Cells[]): Promise<void> {
  await acts.enter(opened().store, rows);
}

/** The person changes a house rule. */
export async function setRule(key: string, value: number | string): Promise<void> {
  expect(ruleTrouble(key, value)).toBeNull();
  await opened().store.keepRule(key, value);
  changed.push(key);
}

/** Everything that one rule asks for on the evening of a day, in the list's own words. */
export async function asked(key: NeedKey, on: string): Promise<Asked[]> {
  const past = opened().asOf(day(on));
  const context: DeskContext = { options: { folder: scratch.folder, program: 'Outyard under test', now: () => ({ day: day(on), stamp: `${on} 21:00` }), log: () => undefined }, book: () => past, open: () => past, setBook: async () => undefined };
  const list = await needHandlers['needs.list']({ yard: null }, context);
  expect(contract['needs.list'].output.parse(list)).toEqual(list);
  const found = list.lines.filter(({ rule }) => rule === key).flatMap((line) => line.members.map(({ colony, yard, detail, earliest, latest, status, records }): Asked => ({
    who: colony?.label ?? yard?.code ?? 'all', act: line.act, because: line.because, detail, earliest, latest, status, records: records.map(({ words }) => words), line,
  })));
  saw(key, found.length > 0 ? 'asks' : 'is quiet');
  goesByTheHouse(key, on, JSON.stringify(found));
  nothingUnnamed(needRuleOf(key), await needSources(past, day(on)));
  return found;
}

/** The one thing that a rule asks for. */
export async function one(key: NeedKey, on: string): Promise<Asked> {
  const found = await asked(key, on);
  expect(found.map(({ who }) => who)).toHaveLength(1);
  return found[0]!;
}

/** Who it asks for, in the list's order. */
export async function who(key: NeedKey, on: string): Promise<string[]> {
  return (await asked(key, on)).map((found) => found.who);
}

export function bring({ line }: Asked): Omit<NeedItem, 'each'>[] {
  return line.bring;
}

function goesByTheHouse(key: NeedKey, on: string, answer: string): void {
  const at = `${key} ${on}`;
  const earlier = before.get(at);
  // Only a number that the rule itself names counts as its own.
  const named = changed.length > 0 && changed.every((rule) => namedBy(needRuleOf(key)).has(rule));
  if (earlier === undefined) before.set(at, answer);
  else if (earlier !== answer && named) saw(key, 'goes by the house');
}

/** What makes one rule keep quiet for another, or speak because of it, is named by the other, whose line stands in the same list. */
const goBefore: Partial<Readonly<Record<NeedKey, readonly NeedKey[]>>> = { mitesSoon: ['mitesOver', 'winterBees'], winterBees: ['mitesOver'], supersOff: ['mitesOver', 'winterBees'], noEggs: ['weakAutumn'] };

function namedBy({ key, numbers }: NeedRule): Set<string> {
  return new Set([...numbers, ...(goBefore[key] ?? []).flatMap((other) => needRuleOf(other).numbers)]);
}

/** What frames every account of the book, and how early something that is to come is shown. */
const frame: ReadonlySet<string> = new Set(['season.start', 'season.winter', 'needs.ahead']);

/** A number that changes what the rule finds in this record is one that the rule names, so that the margin shows it with its source. */
function nothingUnnamed(rule: NeedRule, sources: NeedSources): void {
  const read = new Set<string>();
  const plain = foundWith(rule, sources, new Listening(sources.rules, read));
  const named = new Set([...namedBy(rule), ...frame]);
  for (const key of read) {
    if (named.has(key)) continue;
    for (const value of otherValues(key)) {
      expect(foundWith(rule, sources, new Map([...sources.rules, [key, value]])), `${rule.key} goes by ${key}, and does not name it`).toBe(plain);
    }
  }
}

class Listening extends Map<string, number | string> {
  readonly #read: Set<string>;
  constructor(rules: RuleValues, read: Set<string>) {
    super(rules);
    this.#read = read;
  }
  override get(key: string): number | string | undefined {
    this.#read?.add(key);
    return super.get(key);
  }
}

function foundWith(rule: NeedRule, sources: NeedSources, rules: RuleValues): string {
  // Laid over the sources, so that what they read late is read only where a rule asks for it.
  const other = Object.create(sources, { rules: { value: rules } }) as NeedSources;
  return JSON.stringify(rule.find(needFacts(other)).map(plainly));
}

function plainly({ colony, yard, ended, ...found }: Found): unknown {
  return { ...found, colony: colony?.state.id, yard: yard?.yard.id, ended: ended?.id };
}

function otherValues(key: string): (number | string)[] {
  const rule = houseRuleDefinitions.find((found) => found.key === key);
  switch (rule?.type) {
    case 'number':
      return [...(rule.range ?? [])];
    case 'month-day':
      return ['01-01', '04-20', '07-01', '09-20', '12-31'];
    default:
      return [...(rule?.choices ?? [])];
  }
}

/** A row of the exchange form. */
export function row(date: string, entry: NonNullable<Cells['entry']>, more: Cells): Cells {
  return { date, entry, ...more };
}

/** A colony on one deep of ten frames, in the yard QY unless said. */
export function hived(colony: string, date = '2025-04-20', more: Cells = {}): Cells {
  return row(date, 'install', { yard: 'QY', colony, origin: 'nuc', queen_year: '2024', note: 'on one deep', ...more });
}

export function seenIn(colony: string, date: string, more: Cells): Cells {
  return row(date, 'inspection', { colony, ...more });
}

/** A wash of 300 bees unless said. */
export function wash(colony: string, date: string, mites: number, bees = 300): Cells {
  return row(date, 'mites', { colony, mites: String(mites), bees: String(bees) });
}
