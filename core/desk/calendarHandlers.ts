import type { CalendarStatus } from '#shared/contract/calendar.ts';
import { addDays } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { calendarKinds } from '#core/calendar/calendarItem.ts';
import { readBusy, type BusyCalendar } from '#core/calendar/readBusy.ts';
import { calendarItems, momentOf, tellCalendar } from './calendarNow.ts';
import { busyPaperOf, followedPaper, readBusyCalendars, readFollowed, withoutBusy } from './calendarPapers.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { fitFile, followedOf, writeFollowed } from './liveCalendar.ts';
import { readHours } from './workPapers.ts';

type Names = 'calendar.status' | 'calendar.export' | 'calendar.follow' | 'calendar.look' | 'calendar.keepBusy' | 'calendar.dropBusy';

/** Days ahead for which taken time is read from a calendar. */
const ahead = 400;

export const calendarHandlers: Handlers<Names> = {
  'calendar.status': async (_, context) => status(context),
  'calendar.export': async (_, context) => {
    const { text, state, name } = await tellCalendar(context.open(), context.options);
    const cancelled = state.events.filter((event) => event.cancelled).length;
    return { fileName: `${name.replace(/[^\p{L}\p{N} _-]/gu, ' ').trim()} calendar.ics`, text, events: state.events.length - cancelled, cancelled };
  },
  'calendar.follow': async ({ path }, context) => {
    const book = context.open();
    if (path !== null) {
      const fit = await fitFile(book, path);
      if (!fit.ok) throw new FaultError(fit);
    }
    const before = await readFollowed(book.store);
    await book.store.keepPapers([followedPaper(path)]);
    await writeFollowed(book, context.options);
    const { trouble } = followedOf(book);
    if (path !== null && trouble !== null) {
      await book.store.keepPapers([followedPaper(before)]);
      throw new FaultError(refuse('read-only', trouble, { field: 'path', mend: 'Choose another folder.' }));
    }
    return status(context);
  },
  'calendar.look': async ({ file }, context) => {
    const { found, from, until } = await look(file, context);
    const { spans, events, free, unread } = found;
    return { name: found.name ?? file.name, from, until, spans: spans.slice(0, 400), days: new Set(spans.map(({ day }) => day)).size, events, free, unread: [...unread] };
  },
  'calendar.keepBusy': async ({ file, person }, context) => {
    const { store } = context.open();
    const { found } = await look(file, context);
    const { hours } = await readHours(store);
    if (!hours.people.some(({ name }) => name === person)) throw new FaultError(refuse('unknown', `Nobody called ${person} is in the hours.`, { field: 'person', mend: 'Write the person down in the hours first.' }));
    await store.keepPapers([busyPaperOf({ key: '', name: found.name ?? file.name, person, at: context.options.now().stamp, spans: [...found.spans], unread: found.unread.length })]);
    return status(context);
  },
  'calendar.dropBusy': async ({ key }, context) => {
    const { store } = context.open();
    if (!(await readBusyCalendars(store)).some((one) => one.key === key)) throw new FaultError(refuse('unknown', 'That calendar is no longer in the book.'));
    await store.keepPapers([withoutBusy(key)]);
    return status(context);
  },
};

async function look(file: { name: string; text: string }, context: DeskContext) {
  const book = context.open();
  const from = await book.today(context.options.now().day);
  const until = addDays(from, ahead);
  const { hours, own } = await readHours(book.store);
  // The person's own zone, where they wrote it down; the house's is nobody's.
  const answer = readBusy(file.text, file.name, from, until, own ? hours.place.zone : momentOf(context.options).zone);
  if (!answer.ok) throw new FaultError(answer);
  return { found: answer.value satisfies BusyCalendar, from, until };
}

async function status(context: DeskContext): Promise<CalendarStatus> {
  const book = context.open();
  const today = await book.today(context.options.now().day);
  const items = await calendarItems(book, today);
  const path = await readFollowed(book.store);
  return {
    today,
    file: path === null ? null : { path, ...followedOf(book) },
    events: Object.fromEntries(calendarKinds.map((kind) => [kind, items.filter((item) => item.kind === kind).length])) as CalendarStatus['events'],
    busy: await readBusyCalendars(book.store),
  };
}
