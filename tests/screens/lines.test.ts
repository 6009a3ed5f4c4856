import { readFile } from 'node:fs/promises';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

const demo = (which: 'ossar' | 'tiny'): WindowOptions => ({ at: '/lines', first: async (desk) => void (await desk('book.demo', { which })) });

/** One founder with a daughter, a granddaughter and a colony united into it; one that stands alone. */
const smallBook: WindowOptions = {
  at: '/lines',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 12, minutes: 35 });
    await desk('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
    await desk('journal.enter', {
      rows: [
        { date: '2024-04-24', entry: 'install', yard: 'LB', colony: 'LB-1', origin: 'package', supplier: 'Sandel Road Bees', queen_year: '2024', queen_source: 'Tarn' },
        { date: '2024-04-24', entry: 'install', yard: 'LB', colony: 'LB-9', origin: 'nuc' },
        { date: '2025-05-30', entry: 'split', colony: 'LB-1', new_colony: 'LB-2', to_yard: 'NS', queen: 'stays' },
        { date: '2026-05-30', entry: 'split', colony: 'LB-2', new_colony: 'NS-3', queen: 'stays' },
        { date: '2025-08-15', entry: 'combine', colony: 'LB-9', into: 'LB-1' },
        { date: '2026-02-03', entry: 'loss', colony: 'LB-1', cause: 'mites' },
      ],
    });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const picture = ({ page }: OpenedWindow) => page.getByRole('listbox', { name: 'Family lines, one lane a colony' });
const lanes = (opened: OpenedWindow) => picture(opened).getByRole('option');
const here = (opened: OpenedWindow) => picture(opened).locator('[aria-selected=true] > title').textContent();
const margin = ({ page }: OpenedWindow) => page.getByRole('complementary', { name: 'Margin' });
const pick = ({ page }: OpenedWindow, name: 'Line' | 'Season' | 'Yard' | 'By', label: string | { index: number }) =>
  page.getByRole('combobox', { name: new RegExp(`^${name}`) }).selectOption(typeof label === 'string' ? { label } : label);

test('the lanes of a small book: who came from whom, by keyboard, with the margin telling of the lane', async () => {
  const opened = await open({ ...smallBook, at: '/tonight' });
  const { page } = opened;
  await goTo(page, 'Family lines');
  await expect.poll(() => lanes(opened).evaluateAll((all) => all.map((lane) => lane.querySelector('title')?.textContent.split('.')[0]))).toEqual(['LB-1', 'LB-2', 'NS-3', 'LB-9']);
  expect(await words(page.locator('.lines-sentence'))).toBe('4 colonies from 2 founding lines, 2 of them alive now.');
  await picture(opened).getByText('lost: mites').waitFor();
  await picture(opened).getByText('united into LB-1').waitFor();
  await expectAccessible(page);
  await picture(opened).focus();
  await page.keyboard.press('ArrowDown');
  expect(await here(opened)).toMatch(/^LB-2\. Split from LB-1 on 30 May 2025 at North Slope/);
  expect(await picture(opened).getAttribute('aria-activedescendant')).toBe(await picture(opened).locator('[aria-selected=true]').getAttribute('id'));
  await expect.poll(() => words(margin(opened))).toContain('NS-3, split off 30 May 2026');
  await expect.poll(() => words(margin(opened))).toContain('2 of the 3 colonies in the line of LB-1 live now.');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => words(margin(opened))).toContain('LB-9, 15 August 2025');
  await page.keyboard.press('End');
  expect(await here(opened)).toMatch(/^LB-9\. Nuc, .*combined into LB-1 15 August 2025/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: /LB-9/, level: 1 }).waitFor();
});

test('by line, season and yard; what fits nothing says so and leads back', async () => {
  const opened = await open(smallBook);
  const { page } = opened;
  await lanes(opened).first().waitFor();
  await pick(opened, 'Line', 'LB-1, package 2024 (3)');
  await expect.poll(() => lanes(opened).count()).toBe(3);
  expect(await words(page.locator('.lines-sentence'))).toBe('The line of LB-1: 3 colonies, 2 of them alive now; the whole operation has had 4 colonies, 2 of them alive now.');
  await pick(opened, 'Yard', 'North Slope');
  await expect.poll(() => lanes(opened).count()).toBe(2);
  await pick(opened, 'Season', '2024–25');
  await page.getByText('No colony of that line stood there then.').waitFor();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Show all lines' }).click();
  await expect.poll(() => lanes(opened).count()).toBe(4);
  await pick(opened, 'Season', '2024–25');
  await expect.poll(() => lanes(opened).count()).toBe(2);
  await picture(opened).getByText('summer 2024').waitFor();
  // As it was left, after a look at a colony.
  await picture(opened).press('Enter');
  await page.getByRole('heading', { name: /LB-1/, level: 1 }).waitFor();
  await goTo(page, 'Family lines');
  await expect.poll(() => lanes(opened).count()).toBe(2);
});

test('the table says what the picture says, and the lines are counted with their range', async () => {
  const opened = await open(smallBook);
  const { page } = opened;
  await page.getByRole('button', { name: 'As a table' }).press('Enter');
  const table = page.getByRole('table', { name: 'Family lines, one lane a colony' });
  const row = (name: RegExp) => table.getByRole('row', { name });
  expect(await words(row(/^LB-1 /))).toBe('LB-1 LB-1, package 2024 package 24 Apr 24 3 Feb 26 lost: mites green 2024, 24 Apr 24 –');
  expect(await words(row(/^NS-3 /))).toContain('split from LB-2 30 May 26 – alive');
  expect(await words(row(/^LB-9 /))).toContain('15 Aug 25 united into LB-1');
  const lines = page.getByRole('table', { name: 'How each line did' });
  // LB-1 went into two winters and was lost in the second: Wilson, 1 of 2, 9 to 91 %.
  expect(await words(lines.getByRole('row', { name: /Sandel Road Bees/ }))).toBe('package from Sandel Road Bees 1 0 1 of 2 50 % (9–91) So few that anything from 9 to 91 in 100 fits. – – 0 of 2 0 % (0–66)');
  await pick(opened, 'By', 'source of the queen');
  await lines.getByRole('row', { name: /^Tarn 1 0 1 of 2/ }).waitFor();
  await pick(opened, 'By', 'founding colony');
  await lines.getByRole('row', { name: /^LB-1, package 2024 3 2/ }).waitFor();
  await expectAccessible(page);
});

test('the demo: its losses are those of the ledger, its file opens as a picture, its print has every lane', async () => {
  const opened = await open(demo('ossar'));
  const { page, desk } = opened;
  await lanes(opened).first().waitFor();
  await expectAccessible(page);
  const all = await desk('lines.picture', {});
  const reviews = await Promise.all(all.seasons.map(({ season }) => desk('losses.review', { united: 'lost', season })));
  const totals = reviews.filter((review) => review.seasons.find(({ season }) => season === review.season)?.complete).map((review) => review.ledger.find(({ yard }) => yard === 'all'));
  expect(all.lines.all.lost).toBe(totals.reduce((sum, row) => sum + (row?.lostWinter ?? 0), 0));
  expect(all.lines.all.alive).toBe((await desk('book.status', {})).book?.living);

  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as SVG' }).click();
  const file = await waiting;
  expect(file.suggestedFilename()).toMatch(/family lines\.svg$/);
  const text = await readFile(await file.path(), 'utf8');
  expect(text).not.toContain('var(');
  const read = await page.evaluate((svg) => {
    const read = new DOMParser().parseFromString(svg, 'image/svg+xml');
    return { root: read.documentElement.nodeName, lives: read.querySelectorAll('.family-life').length };
  }, text);
  expect(read).toEqual({ root: 'svg', lives: all.lanes.length });

  // As a PNG it is the same picture, three dots for each of the drawing's, and something is drawn on its white.
  const pngWaiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as PNG' }).press('Enter');
  const png = await pngWaiting;
  expect(png.suggestedFilename()).toMatch(/family lines\.png$/);
  const bytes = await readFile(await png.path());
  const drawn = await page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [400, Math.round((400 * image.naturalHeight) / image.naturalWidth)];
    const paper = canvas.getContext('2d');
    paper?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const dots = paper?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    let dark = 0;
    for (let at = 0; at < dots.length; at += 4) if ((dots[at] ?? 255) < 160) dark += 1;
    return { width: image.naturalWidth, height: image.naturalHeight, corner: [...dots.slice(0, 4)], dark };
  }, bytes.toString('base64'));
  const [, width = '', height = ''] = /width="(\d+)" height="([\d.]+)"/.exec(text) ?? [];
  const times = drawn.width / Number(width);
  expect(times).toBeGreaterThanOrEqual(2);
  expect(drawn.height / Number(height)).toBeCloseTo(times, 2);
  expect(drawn.corner).toEqual([255, 255, 255, 255]);
  expect(drawn.dark).toBeGreaterThan(500);

  await page.getByRole('link', { name: 'Print' }).click();
  await page.getByRole('heading', { name: 'Family lines', level: 1 }).waitFor();
  const sheets = page.getByRole('region', { name: /, sheet \d+ of \d+$/ });
  await expect.poll(() => sheets.count()).toBe(Math.ceil(all.lanes.length / 17));
  expect(await page.locator('.family-life').count()).toBe(all.lanes.length);
  await expectAccessible(page);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(Math.ceil(all.lanes.length / 17));
  await page.getByRole('link', { name: 'Back to Family lines' }).click();
  await lanes(opened).first().waitFor();
});

test('the tiny demo says that its numbers are small; an empty book what will be here', async () => {
  const opened = await open(demo('tiny'));
  const { page } = opened;
  await lanes(opened).first().waitFor();
  expect(await lanes(opened).count()).toBe((await opened.desk('lines.picture', {})).lanes.length);
  await expectAccessible(page);
  await opened.desk('book.create', { name: 'New book' });
  await page.reload();
  await page.getByText('Here will be the lines of your colonies').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Enter the first colonies' }).click();
  await page.getByRole('heading', { name: 'Colonies', level: 1 }).waitFor();
});

test('450 lanes: few are drawn at a time, the rest comes when asked, the keyboard reaches the last, a file has them all, long and odd labels are shortened', async () => {
  const opened = await open({
    at: '/lines',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
      const label = (at: number) => (at === 449 ? `Z${'ong'.repeat(20)}` : `C${String(at).padStart(3, '0')}`);
      await desk('journal.enter', { rows: Array.from({ length: 450 }, (_, at) => ({ date: `2025-05-${String(1 + Math.floor(at / 15)).padStart(2, '0')}`, entry: 'install', yard: 'LB', colony: label(at), origin: 'package', queen_year: '2025' })) });
    },
  });
  const { page } = opened;
  await lanes(opened).first().waitFor();
  expect(await lanes(opened).count()).toBeLessThan(60);
  await picture(opened).focus();
  for (let at = 0; at < 40; at += 1) await page.keyboard.press('ArrowDown');
  await expect.poll(() => here(opened)).toMatch(/^C040\./);
  await page.keyboard.press('End');
  await expect.poll(() => here(opened)).toMatch(/^C399\./);
  expect(await words(page.locator('.lines-more'))).toBe('The first 400 of 450 colonies are shown. Choose a line, a season or a yard to see its own; saved or printed, all are there. Show 50 more');
  const lines = page.getByRole('table', { name: 'How each line did' });
  await pick(opened, 'By', 'founding colony');
  const bodyRows = lines.locator('tbody tr');
  for (const shown of [50, 100, 150, 200, 250]) {
    await expect.poll(() => bodyRows.count()).toBe(shown);
    await page.getByRole('button', { name: `and ${450 - shown} more` }).click();
  }
  await expect.poll(() => bodyRows.count()).toBe(300);
  expect(new Set(await lines.locator('tbody th').allTextContents()).size).toBe(300);
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as SVG' }).click();
  expect((await readFile(await (await waiting).path(), 'utf8')).match(/class="family-life/g)).toHaveLength(450);
  await page.getByRole('button', { name: 'Show 50 more' }).press('Enter');
  await page.locator('.lines-more').waitFor({ state: 'detached' });
  await picture(opened).press('End');
  await expect.poll(() => here(opened)).toMatch(/^Zong/);
  await expect.poll(() => picture(opened).getAttribute('aria-activedescendant')).not.toBeNull();
  // In sight, not only drawn.
  const [box, lane] = [await picture(opened).boundingBox(), await picture(opened).locator('[aria-selected=true] .family-row').boundingBox()];
  expect((lane?.y ?? 0) + (lane?.height ?? 0)).toBeLessThanOrEqual((box?.y ?? 0) + (box?.height ?? 0) + 1);
  expect(await lanes(opened).count()).toBeLessThan(60);
  // Drawing after a jump over all lanes keeps well under what the eye takes for a halt, on a slow machine too.
  const took = await page.evaluate(async () => {
    const box = document.querySelector('.lines-scroll');
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    const times: number[] = [];
    for (let at = 0; at < 30; at += 1) {
      const start = performance.now();
      if (box) box.scrollTop = (at % 2) * 8000 + at * 20;
      await frame();
      await frame();
      times.push(performance.now() - start);
    }
    return times.toSorted((a, b) => a - b)[15] ?? Infinity;
  });
  expect(took).toBeLessThan(150);
  await expectAccessible(page);
});
