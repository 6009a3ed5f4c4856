import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { standardColumns } from '#shared/roundSheets.ts';
import type { ColumnKey } from '../../renderer/screens/tonight/sheetColumns.ts';
import { words as catalogue } from '../../renderer/screens/tonight/words.ts';
import type { OpenedWindow } from './support/window.ts';
import { words } from './support/person.ts';

/** A book with one yard, Larch Bend, and so many colonies hived there on 24 April 2026. */
export async function yardOf(desk: OpenedWindow['desk'], colonies: number): Promise<void> {
  await desk('book.create', { name: 'Ossar Valley' });
  await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
  const labels = Array.from({ length: colonies }, (_, at) => `LB-${String(at + 1).padStart(2, '0')}`);
  await desk('journal.enter', {
    title: `${colonies} packages hived at Larch Bend`,
    rows: labels.map((colony) => ({ date: '2026-04-24', entry: 'install', yard: 'LB', colony, origin: 'package', queen_year: '2026' })),
  });
}

/** The round sheet, by colony label and column. */
export function sheetOn(page: Page) {
  const cell = (label: string, column: ColumnKey) => page.getByLabel(catalogue.cellName(label, catalogue.names[column]), { exact: true });
  return {
    cell,
    ready: () => page.locator('[data-cell="0,0"]').waitFor(),
    go: (label: string, column: ColumnKey) => cell(label, column).focus(),
    /** Types values from the cell the keyboard is in, Enter after each. */
    typeDown: async (values: readonly string[]) => {
      for (const value of values) {
        await page.keyboard.type(value);
        await page.keyboard.press('Enter');
      }
    },
    /** Types values from the cell the keyboard is in, Tab after each. */
    typeAcross: async (values: readonly string[]) => {
      for (const value of values) {
        await page.keyboard.type(value);
        await page.keyboard.press('Tab');
      }
    },
    labels: async () => (await page.locator('.round-sheet tbody th').allTextContents()).map((label) => label.split(' ')[0]),
    /** What one colony's row holds, column by column. */
    row: (label: string) => Promise.all(standardColumns.inspection.map((column) => cell(label, column).inputValue())),
    below: async (label: string) => words(page.locator('tbody').filter({ has: page.getByRole('rowheader', { name: label }) }).locator('.round-below')),
    says: () => words(page.locator('.round-says')),
    enter: () => page.keyboard.press('Control+Enter'),
    draftKept: () => page.getByText('Draft kept').waitFor(),
    /** Waits until the keyboard is in that cell. */
    isAt: async (label: string, column: ColumnKey) => {
      const name = catalogue.cellName(label, catalogue.names[column]);
      await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(name);
    },
  };
}
