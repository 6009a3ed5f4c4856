import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { words } from './support/person.ts';
import { scanned } from './support/scanned.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const labels = ['LB-1', 'by the old gate', '🐝 7', 'כוורת 12', `Z${'ong'.repeat(26)}y`, '"><b>/;%&?#'];

test('every tag scans to its colony, whatever its label; by yard, on Letter and on A4', async () => {
  expect(labels.map((label) => [...label].length)).toContain(80);
  window = await openWindow({
    at: '/print/tags',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
      await desk('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
      await desk('journal.enter', {
        rows: [
          ...labels.map((colony) => ({ date: '2026-04-24', entry: 'install', yard: 'LB', colony, origin: 'package', queen_year: '2026' })),
          ...Array.from({ length: 11 }, (_, at) => ({ date: '2026-05-01', entry: 'install', yard: 'NS', colony: `NS-${at + 1}`, origin: 'swarm' })),
          { date: '2026-05-02', entry: 'install', yard: 'NS', colony: 'gone', origin: 'swarm' },
          { date: '2026-06-01', entry: 'loss', colony: 'gone' },
        ],
      });
    },
  });
  const { page } = window;
  await page.getByText('17 tags on 2 sheets of ten.').waitFor();
  await expectAccessible(page);
  await page.emulateMedia({ media: 'print' });
  for (const [at, label] of labels.entries()) {
    const tag = page.getByRole('article', { name: label, exact: true });
    expect(await scanned(page, tag), label).toBe(`Outyard colony ${at + 1}: ${label}`);
    // The words stay beside the code.
    const [told, code] = [await tag.locator('.tag-words').boundingBox(), await tag.getByRole('img').boundingBox()];
    expect((told?.x ?? 0) + (told?.width ?? 0)).toBeLessThanOrEqual(code?.x ?? 0);
  }
  const first = page.getByRole('article', { name: 'LB-1', exact: true });
  expect(await words(first)).toBe('LB-1 Larch Bend queen white 2026');
  expect(await words(page.getByRole('article', { name: 'NS-1', exact: true }))).toBe('NS-1 North Slope queen not known');
  expect(await page.getByRole('article', { name: 'gone', exact: true }).count()).toBe(0);
  const sheetsOf = async () => {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf) ?? [];
    return { sheets: pdf.match(/\/Type\s*\/Page\b/g)?.length, width: Math.round(Number(width)), height: Math.round(Number(height)) };
  };
  expect(await sheetsOf()).toEqual({ sheets: 2, width: 612, height: 792 });
  await page.emulateMedia({ media: 'screen' });
  await page.getByLabel('Paper').selectOption('A4');
  await page.getByLabel('Yard').selectOption({ label: 'North Slope' });
  await page.getByText('11 tags on 2 sheets of ten.').waitFor();
  await page.emulateMedia({ media: 'print' });
  expect(await sheetsOf()).toEqual({ sheets: 2, width: 595, height: 842 });
  await page.emulateMedia({ media: 'screen' });
  await page.getByLabel('Yard').selectOption({ label: 'Larch Bend' });
  await page.getByText('6 tags on 1 sheet of ten.').waitFor();
  await page.getByRole('link', { name: 'Back to Colonies' }).press('Enter');
  await page.getByRole('link', { name: 'Print tags with codes for the hives' }).press('Enter');
  await page.getByText('17 tags').waitFor();
});
