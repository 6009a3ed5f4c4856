import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { largeOperation } from '#core/demo/largeOperation.ts';
import { enterOperation } from '#core/desk/buildDemo.ts';
import { Book } from '#core/desk/openBook.ts';
import { trialFolder } from '../hosts/trialFolder.ts';
import { openKeeperWindow } from '../screens/support/keeperWindow.ts';
import { goTo } from '../screens/support/person.ts';
import { readWatch, startWatch, type Watched } from '../screens/support/windowWatch.ts';

// npm run -s bench -- window [colonies] [seasons] [times] [FILE.outyard]
// How long the window stands still while a large book is read in it: the whole season-end review from top to bottom,
// its choices, then the other screens; in a real browser, with the keeper as a process of its own. A book that is named
// is made there once and kept for the next call.
const [colonies, seasons, times] = [Number(process.argv[2] ?? 10_000), Number(process.argv[3] ?? 10), Number(process.argv[4] ?? 1)];
if (![colonies, seasons, times].every((value) => Number.isInteger(value) && value > 0)) {
  console.error('Usage: npm run -s bench -- window [colonies] [seasons] [times] [FILE.outyard], the first three whole numbers from 1.');
  process.exit(2);
}
/** The measure that the window is held to. */
const most = 100;
const patience = { timeout: 120_000 };

const trial = trialFolder();
const path = process.argv[5] ?? join(trial.folder, 'bench.outyard');
const say = (what: string, figure: string, more = '') => console.log(`${what.padEnd(50)}${figure.padStart(12)}  ${more}`);

async function makeBook(): Promise<void> {
  const start = performance.now();
  const book = await Book.create(path, new Map([['name', 'Bench'], ['demoDay', '2026-04-15']]));
  await enterOperation(book.store, largeOperation({ seed: 1, colonies, seasons }));
  const { entries } = await book.store.counts();
  await book.store.close();
  say('the book is made', `${((performance.now() - start) / 1000).toFixed(0)} s`, `${entries} entries`);
}

const window = await openKeeperWindow().catch((error: unknown) => {
  trial.remove();
  throw error;
});
const { page } = window;

/** How long a small read had to wait behind the others, asked all the time. */
const waits: { from: number; until: number }[] = [];
const stop = new AbortController();
async function askAllTheTime(): Promise<void> {
  while (!stop.signal.aborted) {
    const from = performance.now();
    await window.ask('journal.recent', { limit: 1 });
    waits.push({ from, until: performance.now() });
    await new Promise((done) => {
      setTimeout(done, 50);
    });
  }
}

let longest: { took: number; during: string } = { took: 0, during: 'nothing' };

async function during(what: string, act: () => Promise<void>): Promise<void> {
  await readWatch(page);
  const start = performance.now();
  await act();
  // What the act set off is drawn before it is read off.
  await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => setTimeout(done, 60)); }));
  const took = performance.now() - start;
  const watched: Watched = await readWatch(page);
  const block = Math.max(0, ...watched.tasks);
  if (block > longest.took) longest = { took: block, during: what };
  const wait = waits.filter(({ until }) => until > start).reduce((top, { from, until }) => Math.max(top, until - from), 0);
  const long = watched.tasks.filter((one) => one > most);
  say(`  ${what}`, `${block.toFixed(0)} ms`, `${watched.tasks.length} over 50 ms${long.length === 0 ? '' : ` (${long.map((one) => one.toFixed(0)).join(', ')})`}; ticks apart ${watched.gap.toFixed(0)} ms; another read waited ${wait.toFixed(0)} ms; ${(took / 1000).toFixed(1)} s in all`);
}

/** Reads on with the wheel until the foot of the page is there and nothing is still being read. */
async function readToEnd(turns = Infinity): Promise<void> {
  for (let still = 0, turn = 0; still < 3 && turn < turns; turn += 1) {
    await page.mouse.move(640, 500);
    await page.mouse.wheel(0, 700);
    await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => setTimeout(done, 30)); }));
    const left = await page.evaluate(() => {
      const { scrollTop, scrollHeight, clientHeight } = document.scrollingElement ?? document.documentElement;
      return scrollHeight - scrollTop - clientHeight > 4 || document.querySelector('.review-waiting') !== null;
    });
    still = left ? 0 : still + 1;
  }
}

const settled = async () => {
  await page.waitForFunction(() => document.querySelector('.review-waiting, .review-stale') === null, undefined, patience);
};

async function reviewOnce(): Promise<void> {
  const start = await page.evaluate(() => performance.now());
  await during('Losses, read from top to bottom', async () => {
    await goTo(page, 'Losses');
    await page.locator('.review-section').first().waitFor(patience);
    await readToEnd();
  });
  const { sections } = await readWatch(page);
  for (const [name, at] of Object.entries(sections)) say(`    ${name}`, `${((at - start) / 1000).toFixed(2)} s`, 'after the click');
  if (Object.keys(sections).length !== 7) throw new Error(`${Object.keys(sections).length} sections of the review came, not 7`);

  /** Chooses, and waits for the desk's answer. */
  const choose = async (list: Locator, option: string, operation: string) => {
    const answered = page.waitForResponse((response) => response.url().endsWith(operation), patience);
    await list.selectOption(option);
    await answered;
    await settled();
  };
  await during('when they died, by line', () => choose(page.locator('.survival-choices select').nth(0), 'line', 'losses.survival'));
  await during('when they died, all winters', () => choose(page.locator('.survival-choices select').nth(2), 'all', 'losses.survival'));
  await during('what went with losses, all seasons', async () => {
    await choose(page.getByLabel('Compare within'), 'all', 'losses.factors');
    await page.waitForFunction(() => [...document.querySelectorAll('option')].some((option) => /\d+ winters/.test(option.text)) && document.querySelector('.risk-table') !== null, undefined, patience);
  });
  await during('the colonies behind a yard of the order', async () => {
    await page.locator('.yard-order .figure-open').first().click();
    await page.locator('.behind-figure').first().waitFor(patience);
  });
  await during('the colonies behind the account’s total', async () => {
    await page.locator('.ledger tfoot .figure-behind').first().click();
    await page.locator('.behind-list').first().waitFor(patience);
  });
  await during('another season', async () => {
    await page.locator('.review-head select').selectOption({ index: 1 });
    await page.locator('.review-section').first().waitFor(patience);
    await readToEnd();
  });
}

try {
  if (!existsSync(path)) await makeBook();
  await window.ask('book.open', { path });
  await startWatch(page);
  await window.show('/book');
  const asking = askAllTheTime();
  for (let turn = 0; turn < times; turn += 1) {
    console.log(times === 1 ? '' : `\nturn ${turn + 1}`);
    await reviewOnce();
    for (const screen of ['Colonies', 'Yards', 'Family lines', 'Tonight'] as const) {
      await during(`${screen}, opened and read`, async () => {
        await goTo(page, screen);
        await page.locator('main table, main svg, main .empty').first().waitFor(patience);
        // Lists with a foot of their own are thousands of rows long.
        await readToEnd(40);
      });
    }
    await during('one yard', async () => {
      await goTo(page, 'Yards');
      await page.locator('main a[href^="#/yards/"]').first().click();
      await page.locator('main table').first().waitFor(patience);
    });
  }
  stop.abort();
  await asking;
  console.log(`\nlongest block of the window: ${longest.took.toFixed(0)} ms`);
  console.log(`(${longest.during}; at most ${most} ms is what the window is held to)`);
  if (longest.took > most) process.exitCode = 1;
} finally {
  stop.abort();
  await window.close();
  trial.remove();
}
