import type { StockTable } from '#shared/contract/stock.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { wholeTrouble } from '#shared/itemWords.ts';
import type { Day } from '#shared/days.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import type { YardBook } from '#core/journal/yardBook.ts';
import { houseRules, numberRule } from '#core/rules/houseRules.ts';
import { hiveRules } from '#core/stock/hives.ts';
import { countedAs, readItem, writeItem } from '#core/stock/itemName.ts';
import { calledPlace, yardKey, type PlaceKey } from '#core/stock/places.ts';
import { countMovement, countNote } from '#core/stock/stockCount.ts';
import { checkNote } from '#core/stock/stockRows.ts';
import { deadOutsToCheck, latestMovements, stockItems } from '#core/stock/stockTable.ts';
import { assumptions, countSentence, diseaseCaution, shortageSentence } from '#core/stock/stockWords.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { enterRows } from './enterRows.ts';
import { nearItemIn } from './nearItemHandlers.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { stockBookOf } from './stockAccount.ts';

const shownDeadOuts = 200;
const shownMovements = 24;
const shownCounts = 24;

export const stockHandlers: Handlers<'stock.table' | 'stock.counted' | 'stock.count' | 'stock.check'> = {
  'stock.table': async (_, context) => {
    const opened = context.open();
    const picture = await opened.picture();
    const asOf = await opened.today(context.options.now().day);
    return keptFor(picture, `stock table ${asOf}`, () => tableOf(opened, picture, asOf));
  },
  'stock.counted': async (asked, context) => {
    const { had, sentence } = await counted(asked, context);
    return { had, difference: asked.counted - had, sentence };
  },
  'stock.count': async ({ note, ...asked }, context) => {
    const opened = context.open();
    const { had, name, place } = await counted(asked, context);
    const { quantity, from, to } = countMovement(asked.counted, had, place);
    const row: Cells = { date: asked.day, entry: 'stock', item: name, quantity: String(quantity), from, to, note: countNote(asked.counted, had, note) };
    return enterRows(opened.store, [row], `Count of ${name}`, (await opened.settings()).dateOrder, context.options.now().stamp);
  },
  'stock.check': async ({ colony, day, to, parts, inspectorSeen, note }, context) => {
    const opened = context.open();
    const { names } = await opened.picture();
    const book = await stockBookOf(opened, day);
    const hive = deadOutsToCheck(book, names).find((one) => one.colony === colony);
    if (hive === undefined) throw new FaultError(refuse('refused', `No hive of ${names.colony(colony)} is to be checked on that day.`, { mend: 'It may have been looked over or carried home already.' }));
    const usable = hive.parts.some(({ item, count }) => count > (parts.find((part) => part.item === item)?.scrap ?? 0));
    if (hive.inspector && usable && !inspectorSeen) {
      throw new FaultError(refuse('refused', `Disease is written down for ${hive.label}. ${diseaseCaution}`, { field: 'inspectorSeen', mend: 'Say that the inspector has seen it, or put all of it to scrap.' }));
    }
    const rows: Cells[] = [];
    const dest = to === 'shed' ? 'shed' : hive.yard;
    for (const { item } of parts) if (!hive.parts.some((part) => part.item === item)) throw new FaultError(refuse('refused', `The hive of ${hive.label} holds no ${item}.`, { field: 'parts' }));
    for (const { item, count } of hive.parts) {
      const { toMend = 0, scrap = 0 } = parts.find((part) => part.item === item) ?? {};
      // A house rule may give a hive half a stand: then the half can be put away, and nothing else of it.
      const broken = [toMend, scrap].map((part) => (part === count ? null : wholeTrouble(part, item))).find((one) => one !== null);
      if (broken != null) throw new FaultError(refuse('refused', broken, { field: item, mend: 'Nothing was entered yet.' }));
      if (toMend + scrap > count) throw new FaultError(refuse('refused', `The hive of ${hive.label} has ${count} ${item}; ${toMend} to mend and ${scrap} for scrap are more than that.`, { field: item, mend: 'Correct the numbers; nothing was entered yet.' }));
      const row = (quantity: number, name: string, where: string): Cells => ({ date: day, entry: 'stock', item: name, quantity: String(quantity), from: hive.yard, to: where, note: checkNote(hive.label, note) });
      const typed = readItem(item);
      if (scrap > 0) rows.push(row(scrap, item, 'scrap'));
      if (toMend > 0) rows.push(row(toMend, writeItem({ ...typed, state: 'to mend' }), dest));
      if (count - toMend - scrap > 0) rows.push(row(count - toMend - scrap, writeItem({ ...typed, state: 'sound' }), dest));
    }
    return enterRows(opened.store, rows, `Hive of ${hive.label} looked over`, (await opened.settings()).dateOrder, context.options.now().stamp);
  },
};

async function tableOf(opened: Book, { names, rules, borders }: Picture, asOf: Day): Promise<StockTable> {
  const book = await stockBookOf(opened, asOf);
  const deadOuts = deadOutsToCheck(book, names);
  const shortages = [...book.shortages.values()];
  const causes = new Map((await opened.store.entries({ ids: shortages.map(({ entry }) => entry) })).map(({ entry }) => [entry.id, entry]));
  const kept = [...book.keptFrom.values()].toSorted();
  return {
    asOf,
    keptFrom: kept[0] ?? null,
    items: stockItems(book, { names, rules, borders, asOf }),
    deadOuts: deadOuts.slice(0, shownDeadOuts),
    deadOutCount: deadOuts.length,
    movements: latestMovements(book, names, shownMovements),
    shortages: shortages.map(({ place, item, entry, kind, day, count }) => {
      const cause = causes.get(entry);
      const called = calledPlace(place, names);
      const colony = cause === undefined ? null : (rulesOf(cause.kind).touches(cause.body)[0]?.colony ?? null);
      return {
        place: called, item, count, day, entry, kind, colony, what: cause === undefined ? kind : rulesOf(cause.kind).sentence(cause.body, names),
        sentence: shortageSentence(called, item, count, day),
        mend: `Enter what came in before that day, count what is there, or ${colony === null ? 'strike the entry if it is wrong' : 'mend the entry on the colony’s page'}.`,
      };
    }),
    counts: book.counts.slice(-shownCounts).reverse().map(({ day, place, item, counted, had }) => ({ day, place: calledPlace(place, names), item, counted, had, difference: counted - had })),
    assumptions: assumptions(hiveRules(rules), numberRule(rules, 'stock.combYears')),
    caution: diseaseCaution,
    rules: houseRules(rules).filter((rule) => rule.room === 'stock'),
  };
}

interface Asked {
  readonly place: string;
  readonly item: string;
  readonly counted: number;
  readonly day: Day;
}

async function counted({ place: typed, item, counted: found, day }: Asked, context: DeskContext) {
  const opened = context.open();
  const { rules, yards, names } = await opened.picture();
  const today = await opened.today(context.options.now().day);
  if (day > today) throw new FaultError(refuse('refused', 'A count cannot be of a day to come.', { field: 'day', mend: 'Give the day on which it was counted.' }));
  const place = placeOf(typed, yards);
  if (place === null) throw new FaultError(refuse('refused', `“${typed}” is no place that can be counted. Choose the shed or a yard.`, { field: 'place' }));
  const book = await stockBookOf(opened, day);
  const read = readItem(item);
  const name = countedAs(read, hiveRules(rules).usual);
  const broken = wholeTrouble(found, name);
  if (broken !== null) throw new FaultError(refuse('refused', broken, { field: 'counted', mend: 'Nothing was entered yet.' }));
  // What is counted is the item whatever its state, so the row names no more than that.
  const had = Math.round((book.places.get(place)?.count(name) ?? 0) * 1000) / 1000;
  const called = calledPlace(place, names);
  const near = await nearItemIn(opened, item);
  return { had, name, place: called, sentence: near?.sentence ?? countSentence(found, had, name, called) };
}

function placeOf(typed: string, yards: YardBook): PlaceKey | null {
  if (typed.toLowerCase() === 'shed') return 'shed';
  const yard = yards.find(typed);
  return yard === null ? null : yardKey(yard.id);
}
