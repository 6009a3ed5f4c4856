import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('what needs doing: why, for whom, put off, dismissed with a reason and asked for again; by yard; as of a day in May', async () => {
  window = await openWindow({ at: '/needs', first: async (desk) => void (await desk('book.demo', { which: 'ossar' })) });
  const { page, desk } = window;
  const list = page.getByRole('region', { name: 'The list' });
  const asked = async () => (await desk('needs.list', { yard: null })).lines;
  const [first, second] = await asked();
  await list.getByText(first!.act).first().waitFor();
  const members = first!.members.map(({ colony }) => colony!.label);
  expect(members.length).toBeGreaterThan(0);
  for (const label of members) await list.getByRole('link', { name: label }).waitFor();
  await expectAccessible(page);

  // The rail counts what is to be done now, in its name in words, and counts again after what is written.
  const rail = page.getByRole('navigation', { name: 'Screens' });
  const inRail = (count: number) => rail.getByRole('link', { name: `Needs, ${count} to do`, exact: true }).waitFor();
  const { due } = await desk('needs.count', {});
  expect(due).toBeGreaterThan(1);
  await inRail(due);

  // The margin tells of the line that has the keyboard: its record, its place, its numbers with their source.
  await list.getByRole('button', { name: `Put off: ${first!.act}` }).focus();
  const margin = page.getByRole('complementary');
  await expect.poll(() => words(margin)).toContain(first!.rank);
  for (const { label, value } of first!.sources) expect(await words(margin)).toContain(`${label}: ${value}`);
  for (const { words: says } of first!.members.flatMap(({ records }) => records).slice(0, 6)) expect(await words(margin)).toContain(says);

  // Put off until a day, by keyboard alone; a day that is none, and one that is past, are refused.
  await page.keyboard.press('Enter');
  const form = page.getByRole('form', { name: `Put off: ${first!.act}` });
  await form.getByLabel('Until').fill('tomorrow');
  await page.keyboard.press('Enter');
  await form.getByText('That is no day.').waitFor();
  await form.getByLabel('Until').fill('2026-11-20');
  await page.keyboard.press('Enter');
  await form.getByText('20 November 2026 is not after today.').first().waitFor();
  expect(await form.getByText('is not after today').count()).toBe(1);
  await form.getByLabel('Until').fill('2099-12-31');
  await page.keyboard.press('Enter');
  await form.getByText('31 December 2099 is too far off: a line is put off until 1 April 2027 at most.').waitFor();
  await form.getByLabel('Until').fill('2026-12-02');
  await page.keyboard.press('Enter');
  await notice(page).getByText(`Put off until 2 December 2026: ${first!.act}.`).waitFor();
  await expect.poll(async () => (await asked()).some(({ key }) => key === first!.key)).toBe(false);

  await inRail(due - 1);

  // Dismissed for good only with a reason.
  await list.getByRole('button', { name: `Put off: ${second!.act}` }).press('Enter');
  const other = page.getByRole('form', { name: `Put off: ${second!.act}` });
  await other.getByRole('button', { name: 'Dismiss for good' }).press('Enter');
  await other.getByText('needs a reason').first().waitFor();
  expect(await other.getByText('needs a reason').count()).toBe(1);
  await other.getByLabel('Why').fill('reducers stay on all year');
  await other.getByRole('button', { name: 'Dismiss for good' }).press('Enter');
  await notice(page).getByText(`Dismissed: ${second!.act}.`).waitFor();
  await page.getByText('Put off or dismissed: 2').press('Enter');
  await page.getByText('reducers stay on all year').waitFor();
  await expectAccessible(page);
  for (const { act } of [first!, second!]) {
    await page.getByRole('button', { name: `Ask again: ${act}` }).first().press('Enter');
    // While one is written down the other waits.
    await notice(page).getByText(`Asked for again: ${act}.`).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe(act === first!.act ? 'SUMMARY' : 'H1');
  }
  await expect.poll(async () => (await asked()).slice(0, 2).map(({ key }) => key)).toEqual([first!.key, second!.key]);

  // Ctrl Z takes back what was done last, though it is no act of the journal, and no record with it; the keyboard stays in the window.
  const last = (await desk('journal.recent', { limit: 1 })).gestures[0]?.id;
  await list.getByRole('button', { name: `Put off: ${first!.act}` }).press('Enter');
  await form.getByRole('button', { name: 'Put off until then' }).press('Enter');
  await notice(page).getByText(`Put off until`).waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
  await page.keyboard.press('Control+z');
  await notice(page).getByText(`Asked for again: ${first!.act}.`).waitFor();
  await expect.poll(async () => (await asked())[0]?.key).toBe(first!.key);
  expect((await desk('journal.recent', { limit: 1 })).gestures[0]?.id).toBe(last);

  // Put off in another window meanwhile: said so, and the list is read again without it.
  await list.getByRole('button', { name: `Put off: ${first!.act}` }).press('Enter');
  const { keys } = await desk('needs.putOff', { line: first!.key, yard: null, colony: null, until: '2026-12-02' as never, reason: '' });
  await form.getByRole('button', { name: 'Put off until then' }).press('Enter');
  await notice(page).getByText('Nothing in the record asks for that any more. It was done or put off meanwhile; nothing was changed.').waitFor();
  await form.waitFor({ state: 'detached' });
  await list.getByRole('button', { name: `Put off: ${first!.act}` }).waitFor({ state: 'detached' });
  await desk('needs.askAgain', { keys });

  // One yard alone; a colony is a step away.
  await page.getByLabel('Yard').selectOption({ label: `North Slope: ${(await desk('needs.list', { yard: null })).yards.find(({ code }) => code === 'NS')!.lines}` });
  await list.getByRole('link', { name: 'NS-05' }).click();
  await page.getByRole('heading', { level: 1, name: 'Colony NS-05' }).waitFor();

  // In May there is more than fits; the rest opens.
  await page.keyboard.press('Alt+l');
  await page.getByRole('textbox', { name: 'Look at the operation as it was' }).fill('2024-05-15');
  await page.keyboard.press('Enter');
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Needs' }).click();
  const may = await desk('needs.list', { yard: null, asOf: '2024-05-15' as never });
  const now = may.lines.filter(({ status, optional }) => status !== 'coming' && !optional);
  expect(now.length).toBeGreaterThan(8);
  const rows = list.locator('ol').first().locator(':scope > li');
  await expect.poll(() => rows.count()).toBe(7);
  await list.getByRole('button', { name: `and ${now.length - 7} more` }).press('Enter');
  await expect.poll(() => rows.count()).toBe(now.length);
  const many = now.find(({ count }) => count > 3)!;
  await list.getByRole('button', { name: `: ${many.act}` }).first().press('Enter');
  for (const { colony } of many.members.slice(0, 5)) await list.getByRole('link', { name: colony!.label }).first().waitFor();
  expect(await list.getByRole('button', { name: `Put off: ${many.act}` }).first().isDisabled()).toBe(true);

  // Its page opens at its own yard, whichever of them is the likeliest above the threshold.
  const counting = now.find(({ page: at, yards }) => at === '/needs/mites' && yards.length > 1)!;
  const { code, name } = counting.yards.at(-1)!;
  await list.getByRole('link', { name: `${code} ${name}, Mites: ${counting.act}` }).click();
  await page.getByRole('region', { name: `What could be given at ${code} ${name}` }).waitFor();
  await page.getByRole('button', { name: `${code} ${name}`, exact: true, pressed: true }).waitFor();

  // How the rules have done in the seasons that were over then: gone through while one waits, each with its figures, numbers and their source.
  await inRail(now.length);
  await page.getByRole('navigation', { name: 'Pages of what needs doing' }).getByRole('link', { name: 'How the rules have done' }).click();
  const rules = page.getByRole('region', { name: 'The rules' });
  await rules.waitFor();
  const tally = await desk('needs.tally', { asOf: '2024-05-15' as never });
  expect(tally).toMatchObject({ state: 'done', seasons: ['2021–22', '2022–23', '2023–24'] });
  expect(await words(rules)).toContain('From 3 April 2021 to 31 March 2024');
  for (const { title, says } of tally.rules) {
    const line = rules.getByRole('listitem').filter({ has: page.getByRole('link', { name: `Change its numbers: ${title}`, exact: true }) });
    expect(await words(line)).toContain(says.replaceAll('\u00a0', ' '));
  }
  const treated = tally.rules.find(({ rule }) => rule === 'winterBees')!;
  await rules.getByRole('link', { name: `Change its numbers: ${treated.title}` }).focus();
  await expect.poll(() => words(margin)).toContain(`${treated.done!.count} of ${treated.done!.of}`);
  for (const { label, value } of treated.sources) expect(await words(margin)).toContain(`${label}: ${value}`);
  await expectAccessible(page);
  const download = page.waitForEvent('download');
  await rules.getByRole('button', { name: 'Save as CSV' }).press('Enter');
  expect((await download).suggestedFilename()).toBe('rules-until-2024-03-31.csv');
  await rules.getByRole('link', { name: `Change its numbers: ${treated.title}` }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'House rules' }).waitFor();
});
