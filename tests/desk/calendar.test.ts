import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { demoDesk } from './freshDesk.ts';
import { withIcalJs, withNodeIcal } from '#tests/calendar/readers.ts';

const at = demoDesk();
const { ask } = at;

test('what is due, ordered and to be ordered stands in the calendar, and a change updates it', async () => {
  const yards = (await ask('yards.list', {})).yards;
  const yard = yards[0]!;
  await ask('yard.details', { id: yard.id, access: null, notes: null, registration: 'R-7', renewal: '2026-12-20' });
  const decision = await ask('order.decide', {});
  const bees = decision.answer?.bees.find(({ kind }) => kind === 'package');
  await ask('plans.keep', { question: {}, note: '' });
  await ask('orders.place', { lines: [{ offer: bees!.offer, quantity: 6 }], plan: null });

  const one = await ask('calendar.export', {});
  const events = withIcalJs(one.text);
  expect(withNodeIcal(one.text)).toEqual(events);
  const status = await ask('calendar.status', {});
  expect(one.events).toBe(Object.values(status.events).reduce((sum, count) => sum + count, 0));
  expect(events.find(({ summary }) => summary === `${yard.name}: Renew the registration of the yard`)).toMatchObject({ allDay: true, end: '2026-12-21', status: 'CONFIRMED', location: yard.name });
  expect(events.find(({ summary }) => summary.startsWith('Delivery: 6 × '))).toMatchObject({ start: '2027-04-21', end: '2027-04-30' });
  expect(events.some(({ summary, start }) => summary === 'Last day to order from Sandel Road Bees' && start === '2027-01-31')).toBe(true);

  // The same again is the same file; a renewal that is put off is the end of one due and the beginning of another.
  expect((await ask('calendar.export', {})).text).toBe(one.text);
  await ask('yard.details', { id: yard.id, access: null, notes: null, registration: 'R-7', renewal: null });
  const two = await ask('calendar.export', {});
  expect(two.cancelled).toBe(1);
  const gone = withIcalJs(two.text).find(({ status: word }) => word === 'CANCELLED');
  expect(gone).toMatchObject({ uid: events.find(({ summary }) => summary.includes('Renew'))?.uid, sequence: 1 });
});

test('a chosen file is written anew after a change, whole, and only over a calendar of this book', async () => {
  const folder = join(at.folder, 'sync');
  mkdirSync(folder);
  const path = join(folder, 'bees.ics');
  for (const [given, code] of [['bees.ics', 'refused'], [join(folder, 'bees.txt'), 'refused'], [join(folder, 'none', 'bees.ics'), 'file-missing']] as const) {
    expect(await at.answer('calendar.follow', { path: given })).toMatchObject({ ok: false, code });
  }
  writeFileSync(path, 'BEGIN:VCALENDAR\r\nPRODID:-//Elsewhere//EN\r\nEND:VCALENDAR\r\n');
  expect(await at.answer('calendar.follow', { path })).toMatchObject({ ok: false, code: 'file-exists' });
  expect(readFileSync(path, 'utf8')).toContain('Elsewhere');
  rmSync(path);

  expect((await ask('calendar.follow', { path })).file).toMatchObject({ path, trouble: null });
  const before = withIcalJs(readFileSync(path, 'utf8'));
  const yard = (await ask('yards.list', {})).yards[1]!;
  await ask('yard.details', { id: yard.id, access: null, notes: null, registration: null, renewal: '2026-12-10' });
  await expect.poll(() => withIcalJs(readFileSync(path, 'utf8')).length, { timeout: 10_000 }).toBe(before.length + 1);
  expect(readdirSync(folder)).toEqual(['bees.ics']);

  // Where it cannot be written the book goes on, and says so.
  rmSync(folder, { recursive: true });
  await ask('yard.details', { id: yard.id, access: null, notes: null, registration: null, renewal: null });
  await expect.poll(async () => (await ask('calendar.status', {})).file?.trouble ?? '', { timeout: 10_000 }).toContain('There is no folder');
  mkdirSync(folder);
  await ask('yard.details', { id: yard.id, access: null, notes: null, registration: null, renewal: '2026-12-12' });
  // Closing does not leave a change behind.
  const { book } = await ask('book.status', {});
  await ask('book.close', {});
  const last = withIcalJs(readFileSync(path, 'utf8')).filter(({ status }) => status === 'CONFIRMED');
  expect(last.find(({ summary }) => summary === `${yard.name}: Renew the registration of the yard` )).toMatchObject({ end: '2026-12-13' });
  await ask('book.open', { path: book!.path });
  expect((await ask('calendar.follow', { path: null })).file).toBeNull();
  expect(existsSync(path)).toBe(true);
});

test('a calendar of the day job is looked at, kept for a person, replaced and taken away', async () => {
  const text = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:x', 'X-WR-CALNAME:Day job', 'BEGIN:VEVENT', 'UID:1', 'DTSTART:20261130T170000', 'DTEND:20261130T190000', 'RRULE:FREQ=WEEKLY;COUNT=3', 'SUMMARY:Late shift', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n');
  const seen = await ask('calendar.look', { file: { name: 'job.ics', text } });
  expect(seen).toMatchObject({ name: 'Day job', days: 3, events: 3, free: 0, unread: [] });
  expect((await ask('calendar.status', {})).busy).toEqual([]);
  expect(await at.answer('calendar.keepBusy', { file: { name: 'job.ics', text }, person: 'Nobody' })).toMatchObject({ ok: false, field: 'person' });
  const [person] = (await ask('work.hours', {})).hours.people;
  await ask('calendar.keepBusy', { file: { name: 'job.ics', text }, person: person!.name });
  await ask('calendar.keepBusy', { file: { name: 'job.ics', text: text.replace('COUNT=3', 'COUNT=2') }, person: person!.name });
  const { busy } = await ask('calendar.status', {});
  expect(busy.map(({ name, spans }) => [name, spans.map(({ day, from, until }) => [day, from, until])])).toEqual([['Day job', [['2026-11-30', 1020, 1140], ['2026-12-07', 1020, 1140]]]]);
  expect((await ask('calendar.dropBusy', { key: busy[0]!.key })).busy).toEqual([]);
  expect(await at.answer('calendar.look', { file: { name: 'notes.txt', text: 'hello' } })).toMatchObject({ ok: false, code: 'file-unreadable' });
});
