import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import { colonyDues, isOpen } from '#core/attention/colonyDues.ts';
import { lostLately, type NeedSources } from '#core/attention/needs/needFacts.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { lastVisits } from '#core/lineage/yardVisits.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { orderDeadlines } from '#core/order/orderDeadlines.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { hiveBoxesOf } from '#core/space/hiveBoxes.ts';
import { deadOutsToCheck, stockItems } from '#core/stock/stockTable.ts';
import { readOffers, readPlans } from './offerPapers.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { placedIn } from './placedPapers.ts';
import { stockBookOf } from './stockAccount.ts';
import { breathe } from './turns.ts';
import { wholeYardEntries } from './wholeYard.ts';

/** Entries this far back are read to find what is open, and to name the records behind it. */
const daysBack = 200;
/** Words about a yard older than that say nothing of this winter. */
const wordsBack = 240;

/** Reads from the book all that the rules of the list of needs look at. */
export async function needSources(book: Book, today: Day, ahead: number | null = null): Promise<NeedSources> {
  const picture = await book.picture();
  const { states, yardList, stands, rules, borders } = picture;
  const { store } = book;
  const whole = await wholeYardEntries(store);
  const recent = await recentOf(book, today);
  const treatments = whole.filter(({ kind }) => kind === 'treatment');
  const since = addDays(today, -wordsBack);
  const dues = await duesOf(picture, recent, treatments, today);
  const days = ahead ?? numberRule(rules, 'needs.ahead');
  const asked = { today, ahead: days, rules, anyLost: states.some(lostLately(today, rules)) };
  const account = needRules.some((rule) => rule.account?.(asked) === true) ? await stockBookOf(book, today) : null;
  const stock = () => {
    if (account === null) throw new Error(`a rule asked for the equipment account on ${today}, and none had said it would`);
    return account;
  };
  let unchecked: Set<ColonyId> | null = null;
  return {
    today, ahead: days, rules, borders, massUnit: picture.names.massUnit, boxesOf: (id) => hiveBoxesOf(stock(), id, rules), states, yards: yardList, details: await store.yardDetails(), stands, treatments,
    yardWords: whole.filter(({ kind, day, body }) => (kind === 'note' || kind === 'work') && day >= since && (!('colony' in body) || body.colony === undefined)),
    lastVisits: lastVisits(states, whole), duesOf: (id) => dues.get(id) ?? [],
    saidOf: (id) => (recent.get(id) ?? []).flatMap(({ id: entry, day, kind, body }) => (kind === 'inspection' && body.note !== undefined ? [{ day, words: body.note, entry }] : [])),
    deadlines: orderDeadlines(await readPlans(store), await readOffers(store), await placedIn(book, today), today, numberRule(rules, 'needs.orders.before')),
    get toMend() {
      return stockItems(stock(), { names: picture.names, rules, borders, asOf: today }).flatMap(({ item, toMend }) => (toMend > 0 ? [{ item, count: toMend }] : []));
    },
    get unchecked() {
      return (unchecked ??= new Set(deadOutsToCheck(stock(), picture.names).map(({ colony }) => colony)));
    },
    entryOf: finder(recent),
  };
}

type Recent = ReadonlyMap<ColonyId, readonly Entry[]>;

/** The last months' standing entries of each colony that they name, in the journal's order. */
async function recentOf({ store }: Book, today: Day): Promise<Recent> {
  const found = new Map<ColonyId, Entry[]>();
  for (const [at, { entry, struck }] of (await store.entries({ from: addDays(today, -daysBack), until: today })).entries()) {
    if (at % 2000 === 0) await breathe();
    if (struck !== null) continue;
    for (const { colony } of rulesOf(entry.kind).touches(entry.body)) {
      const own = found.get(colony);
      if (own === undefined) found.set(colony, [entry]);
      else own.push(entry);
    }
  }
  for (const own of found.values()) own.sort(byOrder);
  return found;
}

async function duesOf({ states, names, rules, borders }: Picture, recent: Recent, treatments: readonly Entry[], today: Day): Promise<ReadonlyMap<ColonyId, DueItem[]>> {
  const since = addDays(today, -daysBack);
  const late = treatments.filter(({ day }) => day >= since);
  const said = (entry: Entry) => rulesOf(entry.kind).sentence(entry.body, names);
  const found = new Map<ColonyId, DueItem[]>();
  for (const state of states) {
    if (!aliveOn(state, today)) continue;
    const shared = late.filter((entry) => entry.kind === 'treatment' && entry.body.colony === undefined && stoodThere(state, entry));
    const entries = [...(recent.get(state.id) ?? []), ...shared];
    if (entries.length > 0) found.set(state.id, colonyDues({ state, entries: shared.length === 0 ? entries : entries.toSorted(byOrder), said, borders }, rules, today).filter(isOpen));
    if (found.size % 100 === 0) await breathe();
  }
  return found;
}

function stoodThere(state: ColonyState, entry: Entry): boolean {
  return entry.kind === 'treatment' && aliveOn(state, entry.day) && entry.body.yard === yardOn(state, entry.day);
}

function finder(recent: Recent): (colony: ColonyId, kind: Kind, on: Day) => EntryId | null {
  return (colony, kind, on) => recent.get(colony)?.findLast((entry) => entry.kind === kind && entry.day === on)?.id ?? null;
}
