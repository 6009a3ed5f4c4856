import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, startBook, undoByNotice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';
import { withIcalJs } from '#tests/calendar/readers.ts';
import { spell } from '#renderer/screens/work/planWeeks.ts';
import { day } from '#shared/days.ts';
import { readFile } from 'node:fs/promises';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('hours, own tasks, a plan that is moved, pinned and kept, its trip sheet, the round with its hours, hours worked, and the calendar out and in', async () => {
  window = await openWindow({
    at: '/work',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
      await desk('yard.details', { id: 2, access: null, notes: null, registration: null, renewal: '2026-12-05' });
      await desk('journal.enter', { rows: ['QY-1', 'QY-2'].map((colony) => ({ date: '2026-05-01', entry: 'install', yard: 'QY', colony, origin: 'nuc' })) });
    },
  });
  const { page, desk } = window;
  // The plan is worked out anew after each change.
  const soon = { timeout: 20_000 };

  // As long as nobody said when there is time, that is the next step, and no plan is to be kept.
  await page.getByText('Nobody has said yet when there is time for the bees.').waitFor();
  expect(await page.getByRole('button', { name: /^Plan by the program’s own hours for now \(Mon to Fri 18-20, Sat 8-16\)$/ }).count()).toBe(1);
  await page.getByRole('link', { name: 'Write your hours down' }).press('Enter');
  // So it is where there are none, with one line for all that waits.
  for (const weekday of ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']) await page.getByRole('textbox', { name: `You, ${weekday}` }).fill('');
  await page.getByRole('button', { name: 'Keep these hours' }).press('Enter');
  await expect.poll(() => words(notice(page)), soon).toContain('nobody has any hours');
  await page.getByRole('link', { name: 'Plan', exact: true }).press('Enter');
  await page.getByText('There are no hours for the bees yet.').waitFor();
  expect(await words(page.locator('.work-waiting'))).toMatch(/^\d tasks wait for a day, \d of them overdue/);
  expect(await page.getByRole('button', { name: /plan/i }).count()).toBe(0);
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Write your hours down' }).press('Enter');

  // Hours: what cannot be read is named, and nothing is kept; then it is.
  const wednesday = page.getByRole('textbox', { name: 'You, Wednesday' });
  await wednesday.fill('17:30-');
  await page.getByRole('button', { name: 'Keep these hours' }).press('Enter');
  expect(await words(page.getByRole('alert'))).toContain('Wednesday: “17:30-” has only one time. Type from when until when, like 17:30-20 or 5:30-8 pm.');
  // Typing goes on with a person that is added; who is taken away again is in nobody's way.
  await page.getByRole('button', { name: 'Add a person' }).press('Enter');
  await page.keyboard.type('Sam');
  expect(await page.getByRole('textbox', { name: 'Name' }).nth(1).inputValue()).toBe('Sam');
  await page.getByRole('button', { name: 'Take away (Sam)' }).press('Enter');
  expect(await page.locator(':focus').innerText()).toBe('Add a person');
  // What is typed and not kept is there again, and so is what is kept.
  const saturday = page.getByRole('textbox', { name: 'You, Saturday' });
  await saturday.fill('9-11');
  await page.getByRole('link', { name: 'Own tasks' }).press('Enter');
  await page.getByRole('button', { name: 'Write down a task' }).press('Enter');
  await page.getByLabel('What').fill('Sharpen');
  await page.getByRole('link', { name: 'Hours there are' }).press('Enter');
  await page.getByText('What you had typed is back; it is not kept yet.').waitFor();
  expect(await saturday.inputValue()).toBe('9-11');
  expect((await desk('work.hours', {})).hours.people[0]?.week[5]).toBeNull();
  await page.getByRole('button', { name: 'Show the hours as they are kept' }).press('Enter');
  expect(await saturday.inputValue()).toBe('');
  await saturday.fill('8-16');
  await wednesday.fill('12-16:30');
  await page.getByRole('textbox', { name: 'You, Thursday' }).fill('12-16:30');
  await wednesday.press('Enter');
  await expect.poll(async () => (await desk('work.hours', {})).hours.people[0]?.week[2], soon).toEqual({ from: 720, until: 990 });
  await expectAccessible(page);

  // A task of one's own.
  await page.getByRole('link', { name: 'Own tasks' }).press('Enter');
  await page.getByRole('button', { name: 'Write down a task' }).press('Enter');
  await expect.poll(() => page.getByLabel('What').inputValue(), soon).toBe('Sharpen');
  await page.getByLabel('What').fill('Mend the fence');
  await page.getByLabel('Yard').selectOption('Quarry');
  await page.getByLabel('To load').fill('3 fence posts');
  await page.getByLabel('Not after').fill('2026-12-05');
  await page.getByLabel('What').press('Enter');
  await page.getByRole('row', { name: /Mend the fence/ }).waitFor();
  // Taken away with one press, it is back with Undo.
  const before = (await desk('work.ownTasks', {})).tasks;
  await page.getByRole('row', { name: /Mend the fence/ }).getByRole('button', { name: /^Take it away/ }).press('Enter');
  await expect.poll(() => words(notice(page)), soon).toContain('“Mend the fence” is taken away.');
  await undoByNotice(page);
  await expect.poll(async () => (await desk('work.ownTasks', {})).tasks, soon).toEqual(before);
  await page.getByRole('row', { name: /Mend the fence/ }).waitFor();
  expect((await desk('work.ownTasks', {})).tasks).toMatchObject([{ what: 'Mend the fence', earliest: '2026-11-25', latest: '2026-12-05', repeat: null }]);
  await expectAccessible(page);

  // The plan: Quarry is overdue for its round, so it comes on the first day with hours.
  await page.getByRole('link', { name: 'Plan', exact: true }).press('Enter');
  const planning = page.getByRole('button', { name: 'Plan the work' });
  // It cannot be pressed until what there is to plan has been read.
  await planning.click({ trial: true });
  await planning.press('Enter');
  const cell = (day: string) => page.getByRole('gridcell', { name: new RegExp(`^Quarry, ${day}.November.2026`) });
  const says = async (day: string) => words(cell(day));
  await expect.poll(() => says('Wed.25'), soon).toContain('visit at 12:18');
  const board = page.getByRole('grid');
  await expect.poll(() => words(board.getByRole('row', { name: /^Work of room/ })), soon).toMatch(/^Work of room .* of .* 4 h 30 free/);
  expect(await words(board)).toContain('no hours');

  // Hours that are written otherwise make it old; it says so, and is planned anew from there.
  await page.getByRole('link', { name: 'Hours there are' }).press('Enter');
  await page.getByRole('textbox', { name: 'You, Saturday' }).fill('9-16');
  await page.getByRole('textbox', { name: 'You, Saturday' }).press('Enter');
  await expect.poll(async () => (await desk('work.hours', {})).hours.people[0]?.week[5], soon).toEqual({ from: 540, until: 960 });
  await page.getByRole('link', { name: 'Plan', exact: true }).press('Enter');
  const old = page.getByText('The hours have changed since this plan was made.');
  await old.getByRole('button', { name: 'Plan again' }).press('Enter');
  await expect.poll(() => old.count(), soon).toBe(0);
  const { plan: shown } = await desk('work.stop', {});

  // Carried by the keyboard to a day without hours it is not put down; a day before that it is, and Undo takes it back.
  await cell('Wed.25').focus();
  for (const key of ['Space', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Space']) await page.keyboard.press(key);
  const carried = page.locator('.board-says');
  expect(await words(carried)).toBe('It cannot be put there. Nobody has hours on Sun 29 November 2026; write some down first. Carry it on, or press Esc.');
  for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'Space']) await page.keyboard.press(key);
  await expect.poll(() => notice(page).innerText(), soon).toContain('Quarry goes from');
  await expect.poll(() => says('Thu.26'), soon).toContain('pinned');
  expect(await says('Wed.25')).toContain('no visit');
  expect((await desk('work.plan', {})).choices.map(({ kind, day }) => [kind, day])).toEqual([['pin', '2026-11-26'], ['forbid', '2026-11-25']]);
  await undoByNotice(page);
  await expect.poll(() => says('Wed.25'), soon).toContain('visit at 12:18');
  await expect.poll(async () => (await desk('work.plan', {})).choices, soon).toEqual([]);
  await expect.poll(() => words(notice(page)), soon).toContain('is back on Wed 25 November 2026. The plan is as it was before.');
  expect((await desk('work.progress', {})).plan).toEqual(shown);

  // By the mouse there, and by a day that is typed back again.
  await cell('Wed.25').locator('.board-visit[draggable=true]').dragTo(cell('Thu.26'));
  await expect.poll(() => says('Thu.26'), soon).toContain('pinned');
  await cell('Thu.26').press('Enter');
  const panel = page.getByRole('region', { name: /^Quarry, Thu.26/ });
  await expect.poll(() => words(panel.getByRole('row', { name: /^Mend the fence/ })), soon).toContain('5 Dec');
  // Only days on which there can be an outing there are offered: none that is over, none without hours.
  await panel.getByLabel('Move it to').getByRole('option').first().waitFor({ state: 'attached' });
  const offered = (await panel.getByLabel('Move it to').getByRole('option').allInnerTexts()).map((text) => text.replaceAll('\u00a0', ' '));
  expect(offered[0]).toMatch(/^Wed 25 November 2026: free, room for 3 h \d\d of work; ruled out so far$/);
  expect(offered.filter((text) => !/^(Wed|Thu|Sat) /.test(text))).toEqual([]);
  await panel.getByLabel('Move it to').selectOption('2026-11-25');
  await panel.getByRole('button', { name: 'Move this visit' }).press('Enter');
  await expect.poll(() => says('Wed.25'), soon).toContain('pinned');

  // A visit that is ruled out goes, and the keyboard is on the board; it is back with Undo.
  await cell('Wed.25').press('Enter');
  await page.getByRole('region', { name: /^Quarry, Wed.25/ }).getByRole('button', { name: 'Let it go' }).press('Enter');
  await expect.poll(() => says('Wed.25'), soon).not.toContain('pinned');
  await page.getByRole('region', { name: /^Quarry, Wed.25/ }).getByRole('button', { name: 'Not on this day' }).press('Enter');
  await expect.poll(() => says('Wed.25'), soon).toContain('no visit');
  await expect.poll(() => page.locator('.board td:focus').count(), soon).toBe(1);
  // Each Ctrl Z takes one thing back, the last first, and no record for one that is left.
  await page.keyboard.press('Control+z');
  await expect.poll(() => says('Wed.25'), soon).toContain('visit at 12:18');
  await page.keyboard.press('Control+z');
  await expect.poll(() => says('Wed.25'), soon).toContain('pinned');

  // Let go and pinned by hand; what is fixed is listed below.
  await cell('Wed.25').press('Enter');
  const here = page.getByRole('region', { name: /^Quarry, Wed.25/ });
  await here.getByRole('button', { name: 'Let it go' }).click();
  await here.getByRole('button', { name: 'Pin it here' }).click();
  await here.getByRole('button', { name: 'Let it go' }).waitFor();
  const fixed = page.getByRole('region', { name: 'What you have fixed' });
  await expect.poll(() => words(fixed), soon).toContain('Quarry on Wed 25 November 2026');
  await expect.poll(() => words(fixed), soon).toContain('Quarry not on Thu 26 November 2026');
  await expect.poll(() => says('Wed.25'), soon).toContain('pinned');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Keep this plan' }).press('Enter');
  await expect.poll(() => notice(page).innerText(), soon).toContain('The plan is kept');
  await expect.poll(() => page.locator(':focus').innerText(), soon).toBe('Plan again');
  await page.getByLabel('Month', { exact: true }).check();
  await expect.poll(() => words(page.getByRole('table', { name: /^Trips by day/ })), soon).toMatch(/25 Nov QY \d/);
  await expectAccessible(page);
  await page.getByLabel('Week', { exact: true }).check();

  // The trip sheet says what to load, where to go and what to do there, and leads to the round.
  await page.getByRole('link', { name: 'Print the trip sheet' }).first().press('Enter');
  await page.getByRole('heading', { name: /^Trip of Wed.25.November.2026$/ }).waitFor();
  const sheet = page.locator('.trip-sheet');
  await expect.poll(() => words(sheet), soon).toContain('Mend the fence');
  expect(await words(sheet)).toContain('☐ 3 fence posts');
  expect(await words(sheet)).toMatch(/Winter round: heft and look all 2 .*Round sheet: Stores\./);
  // A label stays in one piece, however narrow its cell.
  await expect.poll(() => sheet.locator('tbody .paper-label').evaluateAll((labels) => labels.map((one) => [one.textContent, getComputedStyle(one).whiteSpace])), soon).toEqual([['QY-1', 'nowrap'], ['QY-2', 'nowrap']]);
  expect(await words(sheet)).not.toContain('not kept yet');
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Enter the round of Quarry' }).press('Enter');

  // The round and its hours are one act.
  await page.getByRole('heading', { name: /^Quarry, round of 25.November.2026$/ }).waitFor();
  // It is the sheet that was printed.
  await expect.poll(() => page.getByRole('combobox', { name: 'Sheet' }).inputValue(), soon).toBe('stores');
  await page.getByRole('textbox', { name: 'QY-1, frames of bees' }).fill('6');
  await page.getByRole('textbox', { name: 'Hours' }).fill('12:15-1:45 pm');
  await page.getByRole('textbox', { name: 'People' }).fill('2');
  await page.getByRole('textbox', { name: 'Miles' }).fill('14');
  await page.keyboard.press('Control+Enter');
  await expect.poll(() => notice(page).innerText(), soon).toContain('1 entry of work');

  // Planned against worked.
  const { plan } = (await desk('work.plan', {})).kept ?? {};
  const minutes = plan?.outings.find(({ day }) => day === '2026-11-25')?.working ?? 0;
  expect(minutes).toBeGreaterThan(29);
  await page.evaluate(() => void (location.hash = '/work/worked'));
  const season = page.getByRole('table', { name: /^Hours worked in 2026/ });
  expect(await words(season.getByRole('row', { name: /Quarry/ }))).toMatch(/^Quarry 1 of 2 3\.0 – 14 /);
  const against = page.getByRole('table', { name: 'Planned and worked' });
  expect(await words(against.getByRole('row', { name: /25.November.2026/ }))).toBe(`25 November 2026 Quarry ${spell(minutes).replaceAll('\u00a0', ' ')} 3 h`);
  await expectAccessible(page);

  // The calendar file, and a day job's calendar taken off the hours.
  await page.getByRole('link', { name: 'Calendar', exact: true }).press('Enter');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the calendar file' }).press('Enter');
  const text = await readFile(await (await saving).path(), 'utf8');
  const events = withIcalJs(text);
  expect(events.find(({ summary }) => summary === 'Larch Bend: Renew the registration of the yard')).toMatchObject({ allDay: true, end: '2026-12-06', status: 'CONFIRMED' });
  expect(events.find(({ location, start }) => location === 'Quarry' && start.startsWith('2026-11-25'))).toMatchObject({ start: '2026-11-25 12:18', status: 'CONFIRMED', summary: expect.stringContaining('Mend the fence') });
  const job = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:x', 'X-WR-CALNAME:Day job', 'BEGIN:VEVENT', 'UID:1', 'DTSTART;VALUE=DATE:20261202', 'SUMMARY:Fair', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n');
  await page.getByLabel('Calendar file (.ics)').setInputFiles({ name: 'job.ics', mimeType: 'text/calendar', buffer: Buffer.from(job) });
  await page.getByText('Day job: 1 event takes time on 1 day.').waitFor();
  await page.getByRole('button', { name: 'Take this time off the hours' }).press('Enter');
  await page.getByText('You: Day job').waitFor();
  await page.getByRole('button', { name: 'Take it away (Day job)' }).press('Enter');
  await expect.poll(() => words(notice(page)), soon).toContain('Day job no longer takes time off the hours.');
  await expectAccessible(page);

  // What was done in one book is not taken back in another: the message that offers it goes with the book, and Ctrl Z knows nothing of it.
  await page.getByRole('link', { name: 'Plan', exact: true }).press('Enter');
  await page.getByRole('region', { name: 'What you have fixed' }).getByRole('button', { name: /^Let it go \(Quarry not on Thu/ }).press('Enter');
  await page.locator('.notice-place').getByRole('button', { name: 'Undo' }).waitFor();
  const left = (await desk('work.plan', {})).choices;
  expect(left.map(({ kind, day }) => [kind, day])).not.toContainEqual(['forbid', '2026-11-26']);
  await goTo(page, 'Book');
  await page.getByRole('button', { name: 'Close this book' }).press('Enter');
  await startBook(page, 'Larch Ridge');
  await expect.poll(() => page.locator('.notice-place').getByRole('button', { name: 'Undo' }).count(), soon).toBe(0);
  await page.keyboard.press('Control+z');
  await expect.poll(() => words(notice(page)), soon).toMatch(/nothing/i);
  // In an empty book the yards come first, and no plan of nothing is offered.
  await page.evaluate(() => void (location.hash = '/work'));
  await page.getByRole('link', { name: 'Write down your yards, and how far they are, first' }).waitFor();
  expect(await page.getByRole('button', { name: /plan/i }).count()).toBe(0);
  await desk('yard.keep', { code: 'QY', name: 'Quarry', room: null, minutes: null });
  await page.reload();
  await page.getByRole('link', { name: 'Install colonies first' }).waitFor();
  expect(await page.getByRole('button', { name: /plan/i }).count()).toBe(0);
  // A task at home is something to plan.
  const task = { what: 'Paint lids', yard: null, colonies: [], earliest: day('2026-11-25'), latest: day('2026-12-20'), minutes: 60, people: 1, weather: 'any', bring: [], repeat: null, note: null } as const;
  await desk('work.setTask', { key: null, task: { ...task, colonies: [], bring: [] } });
  await page.reload();
  await page.getByRole('button', { name: 'Plan the work' }).waitFor();
  await goTo(page, 'Book');
  await page.getByRole('button', { name: 'Close this book' }).press('Enter');
  await page.getByRole('button', { name: 'Ossar Valley', exact: true }).press('Enter');
  await expect.poll(() => page.locator('.rail-name').textContent(), soon).toBe('Ossar Valley');
  expect((await desk('work.plan', {})).choices).toEqual(left);
});
