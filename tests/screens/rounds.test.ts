import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { standardColumns, type RoundColumn } from '#shared/roundSheets.ts';
import { words as catalogue } from '../../renderer/screens/tonight/words.ts';
import { expectAccessible } from './support/axe.ts';
import { pdfText } from './support/pdfText.ts';
import { notice, undoByNotice, words } from './support/person.ts';
import { sheetOn, yardOf } from './roundSheet.ts';
import { closeBrowser, openWindow, today, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options?: WindowOptions) => (window = await openWindow({ at: '/tonight', ...options }));
const openYard = (colonies: number) => open({ first: (desk) => yardOf(desk, colonies) });
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** The journal's rows of a day, as the export writes them, without the empty cells. */
async function rowsOf(desk: OpenedWindow['desk'], day: string): Promise<Record<string, string>[]> {
  const { text } = await desk('export.journal', {});
  const rows: Record<string, string>[] = parse(text, { columns: true, bom: true });
  return rows.filter((row) => row['date'] === day).map((row) => Object.fromEntries(Object.entries(row).filter(([, value]) => value !== '')));
}

const kindOf = (page: Page) => page.getByRole('combobox', { name: /^Sheet/ });
const heads = async (page: Page) => (await page.locator('.round-sheet thead th').allInnerTexts()).map((head) => head.replaceAll(/\s+/g, ' ').trim());

/** Chooses a kind of round with the keyboard and waits for its sheet. */
async function chooseKind(page: Page, name: string, last: RoundColumn): Promise<void> {
  await kindOf(page).focus();
  await page.keyboard.type(name);
  await page.locator(`.round-sheet [aria-label$=", ${catalogue.names[last]}"]`).first().waitFor();
}

test('split, requeened and combined right in the row, by keyboard: fields, a refusal under its row, one gesture, undo', async () => {
  const { page, desk } = await openYard(5);
  await desk('yard.keep', { code: 'NS', name: 'North Slope', room: 12, minutes: 55 });
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('9');
  await sheet.go('LB-01', 'act');
  await page.keyboard.type('sp');
  await page.keyboard.press('Enter');
  await sheet.isAt('LB-01', 'newLabel');
  // Into a label that is taken; the old queen stays, the new colony raises its own.
  for (const text of ['LB-02', 's', 'w', '3', '2', '1', 'ns', '2026']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  await sheet.isAt('LB-01', 'queenSource');
  expect(await sheet.cell('LB-01', 'newQueen').inputValue()).toBe('walk-away');
  await page.keyboard.press('Enter');
  await sheet.isAt('LB-02', 'act');
  await page.keyboard.type('rq');
  await page.keyboard.press('Tab');
  // Tab meets the note and then the fields, and skips nothing.
  await sheet.isAt('LB-02', 'note');
  await page.keyboard.press('Tab');
  await sheet.isAt('LB-02', 'queenYear');
  await page.keyboard.type('2026');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Kestrel');
  await page.keyboard.press('Tab');
  await sheet.isAt('LB-02', 'supplier');
  await page.keyboard.press('Tab');
  await sheet.isAt('LB-03', 'bees');
  await page.keyboard.type('2');
  await sheet.go('LB-03', 'act');
  await page.keyboard.type('cb');
  await page.keyboard.press('Enter');
  await sheet.isAt('LB-03', 'into');
  expect(await sheet.below('LB-03')).toBe('Combined: into which colony?');
  await page.keyboard.type('LB-04');
  await page.keyboard.press('ArrowUp');
  await sheet.isAt('LB-03', 'act');
  await expectAccessible(page);

  await sheet.enter();
  await sheet.isAt('LB-01', 'newLabel');
  expect(await sheet.below('LB-01')).toContain('A colony called LB-02 is alive');
  expect(await rowsOf(desk, today)).toEqual([]);
  await page.keyboard.type('NS-01');
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toBe('Round at Larch Bend, 3 colonies: 2 inspections, 1 split, 1 new queen, 1 colony combined.');
  const base = { date: today, yard: 'LB' };
  expect(await rowsOf(desk, today)).toEqual([
    { ...base, entry: 'inspection', colony: 'LB-01', frames_bees: '9' },
    { ...base, entry: 'split', colony: 'LB-01', new_colony: 'NS-01', to_yard: 'NS', queen: 'stays', new_queen: 'walk-away', queen_year: '2026', frames_bees: '3', frames_brood: '2', frames_stores: '1' },
    { ...base, entry: 'requeen', colony: 'LB-02', queen_year: '2026', queen_source: 'Kestrel' },
    { ...base, entry: 'inspection', colony: 'LB-03', frames_bees: '2' },
    { ...base, entry: 'combine', colony: 'LB-03', into: 'LB-04' },
  ]);
  await expect.poll(sheet.labels).toEqual(['LB-01', 'LB-02', 'LB-04', 'LB-05']);

  await undoByNotice(page);
  await expect.poll(sheet.labels).toHaveLength(5);
  expect(await rowsOf(desk, today)).toEqual([]);
  await expect.poll(() => sheet.cell('LB-01', 'toYard').inputValue()).toBe('ns');
});

test('kinds of round: feed, supers, harvest, treatment with its caution, hours; columns and kind are remembered', async () => {
  const { page, desk } = await openYard(3);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await chooseKind(page, 'Feed', 'feed');
  expect(await heads(page)).toEqual(['Colony', 'Queen', 'Bees frames', 'Stores frames', 'Fed how much', 'Lost, or act', 'Note']);
  await page.getByRole('combobox', { name: /^Feed/ }).selectOption('syrup 2:1');
  await page.getByRole('textbox', { name: 'each' }).fill('1 gal');
  await page.getByRole('textbox', { name: 'Hours' }).fill('1.5');
  await page.getByRole('textbox', { name: 'Miles' }).fill('9999');
  await sheet.go('LB-01', 'feed');
  await sheet.typeDown(['y', '2l', '5 lb f']);
  // What is refused of the whole sheet takes the keyboard to its field; what is only unlikely is asked about.
  await sheet.enter();
  await expect.poll(() => page.locator(':focus').inputValue()).toBe('9999');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('700');
  await sheet.enter();
  await page.getByText('700 miles is a long way. One value is out of the ordinary.').first().waitFor();
  await page.getByRole('textbox', { name: 'Miles' }).fill('24');
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toBe('Round at Larch Bend, 3 colonies: 3 feeds, 1 entry of work.');
  const base = { date: today, yard: 'LB' };
  expect(await rowsOf(desk, today)).toEqual([
    { ...base, entry: 'feed', colony: 'LB-01', feed: 'syrup 2:1', amount: '1', unit: 'gal' },
    { ...base, entry: 'feed', colony: 'LB-02', feed: 'syrup 2:1', amount: '2', unit: 'l' },
    { ...base, entry: 'feed', colony: 'LB-03', feed: 'fondant', amount: '5', unit: 'lb' },
    { ...base, entry: 'work', hours: '1.5', miles: '24', task: 'feeding round' },
  ]);
  expect(await page.getByRole('textbox', { name: 'Hours' }).inputValue()).toBe('');

  await chooseKind(page, 'Supers', 'supersOn');
  await sheet.go('LB-01', 'supersOn');
  await sheet.typeDown(['2m', '', '1m 1s']);
  await chooseKind(page, 'Harvest', 'full');
  // What was typed on the other sheet stays in sight and goes in with the round.
  expect(await sheet.cell('LB-03', 'supersOn').inputValue()).toBe('1 medium 1 shallow');
  await page.getByRole('textbox', { name: 'Empty weight', exact: true }).fill('12');
  await page.getByRole('textbox', { name: 'Lot', exact: true }).fill('A-1');
  await sheet.go('LB-02', 'full');
  await page.keyboard.type('48.5');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.type('25');
  expect(await sheet.below('LB-02')).toContain('25 % water is far above the standard');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('17,5');
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toBe('Round at Larch Bend, 3 colonies: 3 entries of supers on, 1 harvest.');
  expect((await rowsOf(desk, today)).find(({ entry }) => entry === 'harvest')).toEqual({ ...base, entry: 'harvest', colony: 'LB-02', gross: '48.5', tare: '12', unit: 'lb', moisture: '17.5', lot: 'A-1' });

  await chooseKind(page, 'Mites', 'treat');
  await page.getByText('The label is the law').waitFor();
  expect(await page.getByText('The label is the law').count()).toBe(1);
  await page.getByRole('combobox', { name: 'Treated with' }).fill('thymol');
  await sheet.go('LB-01', 'treat');
  await sheet.typeDown(['y', 'ox']);
  await sheet.enter();
  await expect.poll(async () => (await rowsOf(desk, today)).filter(({ entry }) => entry === 'treatment').map((row) => row['active_ingredient'])).toEqual(['thymol', 'oxalic acid']);

  // The columns by keyboard, remembered with the kind.
  await page.getByRole('button', { name: 'Columns' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('checkbox', { name: 'temper' }).focus();
  await page.keyboard.press('Space');
  await expect.poll(() => heads(page)).toEqual(['Colony', 'Queen', 'Bees frames', 'Temper', 'Mites count', 'in bees', 'Treated with', 'Lost, or act', 'Note']);
  await expectAccessible(page);
  await page.reload();
  await sheet.ready();
  expect(await kindOf(page).inputValue()).toBe('mites');
  expect(await heads(page)).toContain('Temper');
  await page.getByRole('button', { name: 'Columns' }).press('Enter');
  await page.getByRole('button', { name: 'As it was made' }).press('Enter');
  await expect.poll(() => heads(page)).not.toContain('Temper');
  await page.getByRole('button', { name: 'Done' }).press('Enter');
  await sheet.isAt('LB-01', 'bees');
});

test('the short marks are listed, changed, refused when two would clash, and made standard again', async () => {
  const { page, desk } = await openYard(2);
  const sheet = sheetOn(page);
  const legend = () => words(page.getByLabel('Short marks', { exact: true }));
  await sheet.isAt('LB-01', 'bees');
  await sheet.go('LB-01', 'queen');
  await page.keyboard.type('q');
  await sheet.go('LB-01', 'cells');
  await page.keyboard.type('sw');
  await page.keyboard.press('Tab');
  expect((await sheet.row('LB-01')).slice(4, 6)).toEqual(['yes', 'swarm']);

  await page.getByRole('button', { name: 'Short marks' }).press('Enter');
  await page.getByLabel('swarm cells').fill('z');
  await page.getByLabel('emergency cells').fill('z');
  await page.keyboard.press('Enter');
  await expect.poll(() => words(page.getByRole('alert'))).toContain('“z” would mean both swarm and emergency');
  await expectAccessible(page);
  await page.getByLabel('emergency cells').fill('e');
  await page.keyboard.press('Enter');
  await page.getByLabel('swarm cells').waitFor({ state: 'detached' });
  await expect.poll(legend).toContain('z su e -');
  await sheet.go('LB-02', 'cells');
  await page.keyboard.type('z');
  await page.keyboard.press('Tab');
  expect((await sheet.row('LB-02'))[5]).toBe('swarm');
  expect((await desk('rounds.setting', { yard: 1, day: today })).marks).toEqual({ swarm: 'z' });

  await page.getByRole('button', { name: 'Short marks' }).press('Enter');
  await page.getByRole('button', { name: 'As they were made' }).press('Enter');
  await expect.poll(legend).toContain('s su e -');
});

test('two windows on one sheet: the second is told, nothing is overwritten, and what one entered the other does not enter again', async () => {
  const { page, desk } = await openYard(2);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  const other = await page.context().newPage();
  other.setDefaultTimeout(30_000);
  await other.goto(page.url());
  const second = sheetOn(other);
  await second.isAt('LB-01', 'bees');

  await page.bringToFront();
  await sheet.go('LB-01', 'bees');
  await page.keyboard.type('8');
  await sheet.draftKept();
  await second.go('LB-02', 'bees');
  await other.keyboard.type('5');
  await other.getByText('This sheet is being typed in another window too').waitFor();
  const kept = async () => (await desk('draft.fetch', { key: `round:1:${today}` })).body ?? '';
  expect(await kept()).toContain('"bees":"8"');
  await expectAccessible(other);
  // Neither goes in while the two differ.
  await second.enter();
  await expect.poll(second.says).toContain('Another window has other typing for this sheet.');
  expect(await rowsOf(desk, today)).toEqual([]);

  await other.getByRole('button', { name: 'Take what is kept there' }).press('Enter');
  await expect.poll(() => second.cell('LB-01', 'bees').inputValue()).toBe('8');
  expect(await second.cell('LB-02', 'bees').inputValue()).toBe('');
  await second.go('LB-02', 'bees');
  await other.keyboard.type('6');
  await second.enter();
  await expect.poll(async () => (await rowsOf(desk, today)).map((row) => row['frames_bees'])).toEqual(['8', '6']);

  // The first still shows its 8: it must not be entered a second time.
  await page.bringToFront();
  expect(await sheet.cell('LB-02', 'bees').inputValue()).toBe('');
  await sheet.go('LB-01', 'brood');
  await page.keyboard.type('4');
  await sheet.enter();
  await page.getByText('This sheet is being typed in another window too').waitFor();
  expect(await rowsOf(desk, today)).toHaveLength(2);
  await page.getByRole('button', { name: 'Keep what stands here' }).press('Enter');
  await expect.poll(kept).toContain('"brood":"4"');
  await other.close();
});

const odd = ['LB 07 by the gate', 'LB-🐝', 'כוורת 12', `L${'o'.repeat(78)}g`];

test('the field sheet on paper: 60 colonies in stand order over numbered pages, Letter and A4, odd labels too', async () => {
  const { page, desk } = await open({
    first: async (ask) => {
      await yardOf(ask, 56);
      await ask('journal.enter', { rows: odd.map((colony) => ({ date: '2026-05-02', entry: 'install', yard: 'LB', colony, origin: 'swarm' })) });
      await ask('journal.enter', { rows: [{ date: '2026-11-20', entry: 'inspection', yard: 'LB', colony: 'LB-02', frames_bees: '7', eggs: 'no', queen_cells: 'emergency' }] });
      await ask('rounds.layout', { yard: 1, day: today, kind: 'inspection', columns: ['bees', 'eggs', 'queen', 'weight', 'act', 'note'] });
    },
  });
  const sheet = sheetOn(page);
  await sheet.ready();
  const last = (await sheet.labels()).length;
  expect(last).toBe(60);
  // On the sheet a long label is cut, not laid over its neighbours, and told in full.
  const longest = page.getByRole('rowheader', { name: odd[3] ?? '' });
  expect(await longest.evaluate((cell) => cell.clientWidth)).toBeLessThan(80);
  expect(await longest.getAttribute('title')).toBe(odd[3]);

  await page.getByRole('link', { name: 'Print this sheet' }).click();
  await page.getByRole('heading', { name: 'Larch Bend, Wed 25 November 2026' }).waitFor();
  const columns = (await page.locator('.field-sheet thead tr').last().locator('th').allInnerTexts()).map((head) => head.trim());
  expect(columns).toEqual(['Colony', 'Queen', 'Found last, and what to look for', 'Bees frames', 'Eggs', 'Queen seen', 'Stores lb', 'Lost, or act', 'Note']);
  const row = await words(page.locator('.field-sheet tbody tr').filter({ hasText: 'LB-02' }));
  expect(row).toContain('white 2026');
  expect(row).toContain('No eggs on 20 November: look for eggs or the queen.');
  expect(row).toContain('Emergency cells on 20 November');
  await expectAccessible(page);

  const listed = (await desk('rounds.paper', { yard: 1, day: today })).rows.map(({ label }) => label);
  for (const [format, box] of [['Letter', [792, 612]], ['A4', [842, 595]]] as const) {
    const file = await page.pdf({ format, landscape: true });
    const pages = pdfText(file).map((text) => text.replaceAll(/\s+/g, ''));
    const media = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(file.toString('latin1')) ?? [];
    // A4 is 841.89 by 595.28 points; the browser rounds it to whole dots.
    media.slice(1).forEach((points, side) => expect(Math.abs(Number(points) - (box[side] ?? 0)), `${format} ${points}`).toBeLessThan(1.5));
    expect(media).toHaveLength(3);
    expect(pages.length).toBeGreaterThan(2);
    expect(pages.length).toBeLessThan(9);
    pages.forEach((text, at) => {
      expect(text).toContain(`${at + 1}of${pages.length}`);
      expect(text).toContain('OssarValley,LarchBend,Wed25November2026');
      expect(text).toContain('Foundlast,andwhattolookfor');
    });
    // Every label, each on one page; signs that are no letters have no text of their own on paper.
    for (const label of listed.filter((one) => /^[\w -]+$/.test(one))) expect(pages.filter((text) => text.includes(label.replaceAll(' ', ''))), label).toHaveLength(1);
    const lastPlain = listed.findLast((one) => /^[\w -]+$/.test(one)) ?? '';
    expect(pages.at(-1)).toContain(lastPlain.replaceAll(' ', ''));
  }
  await page.getByRole('link', { name: 'Back to Tonight' }).click();
  await sheet.ready();
});

test('bad rounds: a colony that begins later, the same round twice, a label of another direction', async () => {
  const { page, desk } = await open({
    first: async (ask) => {
      await yardOf(ask, 1);
      await ask('journal.enter', { rows: [...odd, 'LB-99'].map((colony) => ({ date: '2026-11-20', entry: 'install', yard: 'LB', colony, origin: 'swarm' })) });
    },
  });
  const sheet = sheetOn(page);
  const day = page.getByLabel('Day', { exact: false }).first();
  await sheet.isAt(odd[0] ?? '', 'bees');
  await day.fill('2026-11-19');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Larch Bend, round of 19' }).waitFor();
  await expect.poll(sheet.labels).toEqual(['LB-01']);
  await day.fill('2026-11-25');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Larch Bend, round of 25' }).waitFor();
  await sheet.ready();

  const enterBees = async (label: string, bees: string) => {
    await sheet.go(label, 'bees');
    await page.keyboard.type(bees);
    await sheet.enter();
  };
  for (const label of odd) await page.getByLabel(catalogue.cellName(label, catalogue.names.bees), { exact: true }).fill('6');
  await enterBees('LB-99', '7');
  await expect.poll(() => notice(page).textContent()).toBe('Round at Larch Bend, 5 colonies: 5 inspections.');
  expect((await rowsOf(desk, today)).map((row) => row['colony']).toSorted()).toEqual([...odd, 'LB-99'].toSorted());
  await page.getByText('5 colonies have entries on this day already').waitFor();
  expect(await page.getByText('entered already').count()).toBe(5);

  await enterBees('LB-99', '7');
  await expect.poll(() => sheet.below('LB-99')).toContain('The same entry of 25 November 2026 is in the book already.');
  expect(await rowsOf(desk, today)).toHaveLength(5);
});

test.each([1024, 853])('with every column the sheet scrolls inside, its colonies stay in sight, at %i px', async (width) => {
  const { page } = await open({
    width,
    height: width === 853 ? 533 : 768,
    first: async (desk) => {
      await yardOf(desk, 14);
      await desk('rounds.layout', { yard: 1, day: today, kind: 'mix', columns: [...new Set(Object.values(standardColumns).flat())] });
    },
  });
  const sheet = sheetOn(page);
  await sheet.ready();
  await sheet.go('LB-09', 'note');
  const place = await page.evaluate(() => {
    const box = (of: Element | null | undefined) => of?.getBoundingClientRect();
    const row = document.activeElement?.closest('tr');
    return { label: box(row?.querySelector('th')), note: box(document.activeElement), scroll: box(document.querySelector('.round-scroll')), over: document.documentElement.scrollWidth - document.documentElement.clientWidth };
  });
  expect(place.over).toBe(0);
  expect(place.label?.left).toBeGreaterThanOrEqual(place.scroll?.left ?? Infinity);
  expect(place.note?.right).toBeLessThanOrEqual((place.scroll?.right ?? 0) + 1);
  // A cell that the keyboard comes to is not under the colonies' labels.
  await sheet.go('LB-09', 'bees');
  const cell = await page.evaluate(() => ({ left: document.activeElement?.getBoundingClientRect().left ?? 0, label: document.activeElement?.closest('tr')?.querySelector('th')?.getBoundingClientRect().right ?? 0 }));
  expect(cell.left).toBeGreaterThanOrEqual(cell.label - 1);
  await expectAccessible(page);
});
