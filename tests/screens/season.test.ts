import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('a colony’s season is drawn on one axis, another is picked, and its table says the same', async () => {
  window = await openWindow({
    at: '/colonies/1',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 12, minutes: 35 });
      await desk('journal.enter', {
        rows: [
          { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'LB-1', origin: 'package', queen_year: '2025' },
          { date: '2025-06-02', entry: 'inspection', colony: 'LB-1', frames_bees: '7', frames_brood: '4' },
          { date: '2026-05-02', entry: 'inspection', colony: 'LB-1', frames_bees: '6', frames_brood: '2.5', frames_stores: '3' },
          { date: '2026-05-20', entry: 'supers on', colony: 'LB-1', box: 'medium', count: '2' },
          { date: '2026-07-20', entry: 'harvest', colony: 'LB-1', gross: '60', tare: '15', unit: 'lb' },
          { date: '2026-08-20', entry: 'mites', colony: 'LB-1', mites: '4', bees: '300' },
          { date: '2026-09-01', entry: 'treatment', yard: 'LB', active_ingredient: 'thymol' },
        ],
      });
    },
  });
  const { page } = window;
  const section = page.getByRole('region', { name: 'A season at a glance' });
  const picture = section.getByRole('img', { name: /season 2026–27/ });
  await picture.waitFor();
  await picture.getByText('45.0 lb', { exact: true }).waitFor();
  await expectAccessible(page);
  await section.getByRole('button', { name: /As a table/ }).press('Enter');
  const row = (name: RegExp) => section.getByRole('row', { name });
  expect(await words(row(/2 May 2026/))).toBe('2 May 2026 6 2.5 3 – –');
  expect(await words(row(/20 August 2026/))).toBe('20 August 2026 – – – 1.3 (0.4–3.4) –');
  expect(await words(row(/20 July 2026/))).toContain('45.0 lb of honey taken.');
  expect(await words(row(/1 September 2026/))).toContain('Treated with thymol, every colony at Larch Bend.');
  await expectAccessible(page);
  await section.getByRole('combobox', { name: 'Season' }).selectOption('2025–26');
  expect(await words(row(/2 June 2025/))).toBe('2 June 2025 7 4 – – –');
  expect(await section.getByRole('row').count()).toBe(3);
});
