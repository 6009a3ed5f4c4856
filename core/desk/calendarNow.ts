import type { Day } from '#shared/days.ts';
import { colonyDues } from '#core/attention/colonyDues.ts';
import { yardDues } from '#core/attention/yardDues.ts';
import type { CalendarItem, CalendarState } from '#core/calendar/calendarItem.ts';
import { deadlineItems, deliveryItems, dueItems, visitItems } from '#core/calendar/calendarItems.ts';
import { nextState, sameState } from '#core/calendar/nextState.ts';
import { writeCalendar } from '#core/calendar/writeCalendar.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { orderDeadlines } from '#core/order/orderDeadlines.ts';
import { readTold, toldPaper } from './calendarPapers.ts';
import type { DeskOptions } from './desk.ts';
import { openRecordsOf } from './dueHandlers.ts';
import { readOffers, readPlans } from './offerPapers.ts';
import type { Book } from './openBook.ts';
import { placedIn } from './placedPapers.ts';
import { readKeptPlan } from './workPapers.ts';

/** All that belongs in the person's calendar as the book stands. */
export async function calendarItems(book: Book, today: Day): Promise<CalendarItem[]> {
  const { store } = book;
  const picture = await book.picture();
  const details = await store.yardDetails();
  const living = picture.states.filter((state) => aliveOn(state, today));
  const records = await openRecordsOf(book, picture, living, today);
  const byYard = Map.groupBy(records, ({ state }) => yardOn(state, today));
  const dues = picture.yardList.flatMap((yard) => {
    const own = (byYard.get(yard.id) ?? []).map((record) => ({ id: record.state.id, label: record.state.label, items: colonyDues(record, picture.rules, today) }));
    const kept = details.get(yard.id);
    return dueItems(yard, yardDues(own, kept?.renewal ?? null, kept?.registration ?? null, picture.rules, today));
  });
  const orders = await placedIn(book, today);
  const kept = await readKeptPlan(store);
  return [
    ...visitItems(kept?.plan ?? null, picture.yardList, today), ...dues,
    ...deadlineItems(orderDeadlines(await readPlans(store), await readOffers(store), orders, today)), ...deliveryItems(orders),
  ];
}

/** The calendar file as it is to be now. What it tells is kept before anybody reads it, or a name could be given twice. */
export async function tellCalendar(book: Book, options: DeskOptions): Promise<{ text: string; state: CalendarState; name: string }> {
  const { store } = book;
  const today = await book.today(options.now().day);
  const told = await readTold(store);
  const state = nextState(told, await calendarItems(book, today), today, momentOf(options).instant);
  if (!sameState(told, state)) await store.keepPapers([toldPaper(state)]);
  const { name } = await book.settings();
  return { text: writeCalendar(state, name), state, name };
}

export function momentOf({ moment, now }: DeskOptions): { instant: string; zone: string } {
  return moment?.() ?? { instant: `${now().stamp.replace(' ', 'T')}:00Z`, zone: 'UTC' };
}
