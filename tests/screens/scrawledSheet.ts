import type { Page } from 'playwright-core';
import { addDays } from '#shared/days.ts';
import { standardColumns, type RoundColumn } from '#shared/roundSheets.ts';
import type { KeeperWindow } from './support/keeperWindow.ts';

/*
 * An evening's sheet as it comes from the field: frames of bees, brood and stores, eggs, whether the queen was seen,
 * swarm cells where there were any, temper, mites for every third colony, and two colonies found dead (invented).
 */
const scrawl = `
8   6   3   y y .  2 4  .
9   7   2   y . .  1 .  .
7.5 5   4   y y .  2 .  .
10  8   3   y . s  3 2  .
6   4   3   y y .  1 .  .
8   6   2   y y .  2 .  .
.   .   .   . . .  . .  x
9   7   3   y . .  2 11 .
11  8   4   y y .  1 .  .
7   5   2.5 y . .  2 0  .
8   6   3   y y .  4 .  .
5   3   4   y y .  2 .  .
9   6.5 3   y . s  2 7  .
8   6   2   y y .  1 .  .
10  7   5   y y .  1 .  .
7   5   3   n n e  3 3  .
9   7   2   y . .  2 .  .
8   5   3   y y .  2 .  .
6   4   2   y y .  1 1  .
.   .   .   . . .  . .  st
9   8   3   y y .  2 .  .
7   5   4   y . .  1 5  .
8   6   3   y y .  2 .  .
12  8   4   y y su 3 .  .
6   4   2   y y .  1 0  .
8   6   3   y . .  2 .  .
9   7   3   y y .  2 .  .
7   5   2   y y .  1 6  .
8   6   4   y y .  2 .  .
10  8   3   y y .  1 .  .
`;
const scrawled = ['bees', 'brood', 'stores', 'eggs', 'queen', 'cells', 'temper', 'mites', 'act'] as const;
type Scrawled = (typeof scrawled)[number];
type Line = Readonly<Record<Scrawled, string>>;

export const sheetLines: readonly Line[] = scrawl.trim().split('\n').map((line) => {
  const cells = line.split(/\s+/);
  return Object.fromEntries(scrawled.map((key, at) => [key, cells[at] === '.' ? '' : (cells[at] ?? '')])) as Line;
});
export const labels = sheetLines.map((_, at) => `LB-${String(at + 1).padStart(2, '0')}`);

/** A yard of so many colonies as the sheet has lines, hived 200 days ago; the window stands on its empty sheet. */
export async function openSheet(window: KeeperWindow): Promise<void> {
  await window.ask('book.create', { name: 'Ossar Valley' });
  const { today } = await window.ask('book.status', {});
  await window.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: 40, minutes: 35 });
  await window.ask('journal.enter', {
    rows: labels.map((colony) => ({ date: addDays(today, -200), entry: 'install', yard: 'LB', colony, origin: 'package' })),
  });
  await window.show('/tonight');
  await atCell(window.page, 0, 'bees');
}

/** Waits until the keyboard is in that cell. */
export async function atCell(page: Page, row: number, column: RoundColumn): Promise<void> {
  await page.waitForFunction((cell) => document.activeElement?.getAttribute('data-cell') === cell, `${row},${standardColumns.inspection.indexOf(column)}`);
}

/** What stands in a cell. */
export function cellText(page: Page, row: number, column: RoundColumn): Promise<string> {
  return page.locator(`[data-cell="${row},${standardColumns.inspection.indexOf(column)}"]`).inputValue();
}

/** Someone who types the scrawled sheet down its columns, without a mouse; counts every key that goes down, Shift and Ctrl too. */
export class Typist {
  readonly page: Page;
  keys = 0;

  constructor(page: Page) {
    this.page = page;
  }

  /** "Enter", "Control+Enter". */
  async press(keys: string, times = 1): Promise<void> {
    for (let turn = 0; turn < times; turn += 1) {
      this.keys += keys.split('+').length;
      await this.page.keyboard.press(keys);
    }
  }

  async type(text: string): Promise<void> {
    // None of the sheet's signs needs Shift.
    this.keys += text.length;
    await this.page.keyboard.type(text);
  }

  /** A value and Enter, or Enter alone: from the last colony on to the top of the next column. */
  async numbers(column: 'bees' | 'brood' | 'stores' | 'mites'): Promise<void> {
    await atCell(this.page, 0, column);
    for (const line of sheetLines) {
      await this.type(line[column]);
      await this.press('Enter');
    }
  }

  /** A sign for every colony, a space for none; marks run on by themselves, Enter only after the last. */
  async marks(column: 'eggs' | 'queen' | 'temper'): Promise<void> {
    await atCell(this.page, 0, column);
    for (const line of sheetLines) await this.type(line[column] === '' ? ' ' : line[column]);
    await this.press('Enter');
  }

  /** What most have is typed once and repeated down into the rows begun; then the few that differ. */
  async repeated(column: 'eggs', most: string): Promise<void> {
    await atCell(this.page, 0, column);
    await this.type(most);
    await this.press('Control+Shift+D');
    let at = 0;
    for (const [row, line] of sheetLines.entries()) {
      if (line[column] === '' || line[column] === most) continue;
      at = await this.downTo(row, at);
      await this.type(line[column]);
    }
    await this.toTopOfNext(Math.ceil(at / 10));
  }

  /** Only where there is something: by pages and arrows from mark to mark. */
  async few(column: 'cells' | 'act'): Promise<void> {
    await atCell(this.page, 0, column);
    let at = 0;
    for (const [row, line] of sheetLines.entries()) {
      if (line[column] === '') continue;
      at = await this.downTo(row, at);
      await this.type(line[column]);
    }
  }

  async toTopOfNext(pages = 3): Promise<void> {
    await this.press('PageUp', pages);
    await this.press('ArrowRight');
  }

  async downTo(row: number, from: number): Promise<number> {
    const far = row - from;
    const pages = far % 10 > 5 && from + (Math.floor(far / 10) + 1) * 10 < sheetLines.length ? Math.floor(far / 10) + 1 : Math.floor(far / 10);
    await this.press('PageDown', pages);
    const rest = far - pages * 10;
    await this.press(rest < 0 ? 'ArrowUp' : 'ArrowDown', Math.abs(rest));
    return row;
  }

  /** The whole sheet; `between` is called after each column with its name. */
  async sheet(between: (column: Scrawled) => Promise<void> = () => Promise.resolve()): Promise<void> {
    for (const column of ['bees', 'brood', 'stores'] as const) {
      await this.numbers(column);
      await between(column);
    }
    await this.repeated('eggs', 'y');
    await between('eggs');
    await this.marks('queen');
    await between('queen');
    await this.few('cells');
    await this.toTopOfNext();
    await between('cells');
    await this.marks('temper');
    await between('temper');
    await this.numbers('mites');
    await between('mites');
    // Past the bees in the sample, which the sheet says for all.
    await this.press('ArrowRight');
    await this.few('act');
    await between('act');
  }

  async enter(): Promise<void> {
    await this.press('Control+Enter');
    await this.page.getByRole('status').filter({ hasText: 'Round at Larch Bend' }).waitFor();
  }

  get perColony(): number {
    return this.keys / sheetLines.length;
  }
}
