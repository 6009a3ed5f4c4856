import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';
import { withIcalJs } from '#tests/calendar/readers.ts';
import { readFile } from 'node:fs/promises';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('hours, own tasks, a round with its hours, hours worked, and the calendar out and in', async () => {
  window = await openWindow({
    at: '/work/hours',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
      await desk('yard.details', { id: 2, access: null, notes: null, registration: null, renewal: '2026-12-05' });
      await desk('journal.enter', { rows: ['QY-1', 'QY-2'].map((colony) => ({ date: '2026-05-01', entry: 'install', yard: 'QY', colony, origin: 'nuc' })) });
    },
  });
  const { page, desk } = window;

  // Hours: what cannot be read is named, and nothing is kept; then it is.
  const wednesday = page.getByRole('textbox', { name: 'You, Wednesday' });
  await wednesday.fill('17:30-');
  await page.getByRole('button', { name: 'Keep these hours' }).press('Enter');
  expect(await words(page.getByRole('alert'))).toContain('“17:30-” on Wednesday is no stretch of the day.');
  await wednesday.fill('17:30-20');
  await wednesday.press('Enter');
  await expect.poll(async () => (await desk('work.hours', {})).own).toBe(true);
  expect((await desk('work.hours', {})).hours.people[0]?.week[2]).toEqual({ from: 1050, until: 1200 });
  await expectAccessible(page);

  // A task of one's own.
  await page.getByRole('link', { name: 'Own tasks' }).press('Enter');
  await page.getByRole('button', { name: 'Write down a task' }).press('Enter');
  await page.getByLabel('What').fill('Mend the fence');
  await page.getByLabel('Not after').fill('2026-12-05');
  await page.getByLabel('What').press('Enter');
  await page.getByRole('row', { name: /Mend the fence/ }).waitFor();
  expect((await desk('work.ownTasks', {})).tasks).toMatchObject([{ what: 'Mend the fence', earliest: '2026-11-25', latest: '2026-12-05', repeat: null }]);
  await expectAccessible(page);

  // The round and its hours are one act, and one Undo.
  await page.evaluate(() => void (location.hash = '/tonight/1/2026-11-20'));
  await page.getByRole('heading', { name: /^Quarry, round of 20.November.2026$/ }).waitFor();
  await page.getByRole('textbox', { name: 'QY-1, frames of bees' }).fill('6');
  await page.getByRole('textbox', { name: 'Hours' }).fill('17:30-19');
  await page.getByRole('textbox', { name: 'People' }).fill('2');
  await page.keyboard.press('Control+Enter');
  await expect.poll(() => notice(page).innerText()).toContain('1 entry of work');
  await page.evaluate(() => void (location.hash = '/work/worked'));
  const season = page.getByRole('table', { name: /^Hours worked in 2026/ });
  expect(await words(season.getByRole('row', { name: /Quarry/ }))).toMatch(/^Quarry 1 of 2 3\.0 /);
  await expectAccessible(page);

  // The calendar file, and a day job's calendar taken off the hours.
  await page.getByRole('link', { name: 'Calendar', exact: true }).press('Enter');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the calendar file' }).press('Enter');
  const text = await readFile(await (await saving).path(), 'utf8');
  expect(withIcalJs(text)).toMatchObject([{ summary: 'Larch Bend: Renew the registration of the yard', allDay: true, end: '2026-12-06', status: 'CONFIRMED' }]);
  const job = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:x', 'X-WR-CALNAME:Day job', 'BEGIN:VEVENT', 'UID:1', 'DTSTART;VALUE=DATE:20261202', 'SUMMARY:Fair', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n');
  await page.getByLabel('Calendar file (.ics)').setInputFiles({ name: 'job.ics', mimeType: 'text/calendar', buffer: Buffer.from(job) });
  await page.getByText('Day job: 1 event takes time on 1 day.').waitFor();
  await page.getByRole('button', { name: 'Take this time off the hours' }).press('Enter');
  await page.getByText('You: Day job').waitFor();
  await expectAccessible(page);
  await goTo(page, 'Yards');
});
