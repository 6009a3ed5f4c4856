import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { largeOperation } from '#core/demo/largeOperation.ts';
import { enterOperation } from '#core/desk/buildDemo.ts';
import { Book } from '#core/desk/openBook.ts';
import type { Day } from '#shared/days.ts';
import { trialFolder } from '../hosts/trialFolder.ts';
import { openKeeperWindow } from '../screens/support/keeperWindow.ts';
import { goTo } from '../screens/support/person.ts';
import { readWatch, startWatch, type Watched } from '../screens/support/windowWatch.ts';

// npm run -s bench -- window [colonies] [seasons] [times] [FILE.outyard]
// How long the window stands still while a large book is read in it: the whole season-end review from top to bottom,
// its choices, then the other screens, each with how long it took until it was shown; in a real browser, with the keeper as a
// process of its own. A book that is named is made there once and kept for the next call.
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

/** `act` may answer when (by this process's clock) what was asked for was there to be read. */
async function during(what: string, act: () => Promise<number | void>): Promise<void> {
  await readWatch(page);
  const start = performance.now();
  const there = await act();
  // What the act set off is drawn before it is read off.
  await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => setTimeout(done, 60)); }));
  const took = performance.now() - start;
  const watched: Watched = await readWatch(page);
  const block = Math.max(0, ...watched.tasks);
  if (block > longest.took) longest = { took: block, during: what };
  const wait = waits.filter(({ until }) => until > start).reduce((top, { from, until }) => Math.max(top, until - from), 0);
  const long = watched.tasks.filter((one) => one > most);
  say(`  ${what}`, `${block.toFixed(0)} ms`, `${watched.tasks.length} over 50 ms${long.length === 0 ? '' : ` (${long.map((one) => one.toFixed(0)).join(', ')})`}; ticks apart ${watched.gap.toFixed(0)} ms; another read waited ${wait.toFixed(0)} ms;${typeof there === 'number' ? ` shown after ${((there - start) / 1000).toFixed(1)} s,` : ''} ${(took / 1000).toFixed(1)} s in all`);
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

/** The pages that are opened by their address, each with what is there once it can be read. */
const pages: readonly (readonly [name: string, at: string, there: string])[] = [
  ['Needs', '/needs', '.needs-lines'],
  ['Mites', '/needs/mites', 'main table'],
  ['Stores and winter', '/needs/stores', 'main table'],
  ['Space and swarms', '/needs/space', 'main table'],
  ['Queens wanted', '/needs/queens', 'section[aria-label="New queens wanted"] .sentence'],
  ['Queens, breeders', '/needs/queens', 'section[aria-label="Queens to raise daughters from"] .sentence'],
  ['How the rules have done', '/needs/tally', 'main progress, main .needs-lines'],
  ['Honey', '/honey', 'main .section'],
  ['Own tasks', '/work/tasks', 'main .acts button'],
  ['Hours there are', '/work/hours', '.hours-grid'],
  ['Hours worked', '/work/worked', 'main table'],
  ['Calendar', '/work/calendar', 'main .section'],
  ['Stock', '/stock', 'main table'],
  ['Book', '/book', 'main h1'],
];

const openAt = (at: string) => page.evaluate((hash) => {
  location.hash = hash;
}, at);

async function pageOnce(name: string, at: string, there: string): Promise<void> {
  await during(`${name}, opened and read`, async () => {
    await openAt(at);
    await page.locator(there).first().waitFor(patience);
    const shown = performance.now();
    await readToEnd(40);
    return shown;
  });
}

async function lotOnce(): Promise<void> {
  const { lots, loose } = await window.ask('lots.list', {});
  const code = lots[0]?.code ?? 'BENCH-1';
  if (lots.length === 0) {
    const harvests = loose.slice(0, 2000).map(({ entry }) => entry);
    const last = loose.reduce((most, { day }) => (day > most ? day : most), loose[0]?.day ?? ('2026-04-15' as Day));
    await window.ask('lots.keep', { lot: code, day: last, act: { what: 'made', harvests } });
  }
  await pageOnce('One lot', `/honey/lots/${code}`, 'main .section');
}

async function workOnce(): Promise<void> {
  await during('Work, a plan made', async () => {
    await openAt('/work');
    await page.getByRole('button', { name: /^(Plan the work|Plan again|Plan by the program’s own hours.*)$/ }).first().click(patience);
    await page.locator('.board').first().waitFor(patience);
    const shown = performance.now();
    await page.waitForFunction(() => document.querySelector('.plan-state') !== null, undefined, patience);
    return shown;
  });
  for (const view of ['Week', 'Month', 'Board'] as const) {
    await during(`Work by ${view.toLowerCase()}`, async () => {
      await page.getByRole('radio', { name: view }).check(patience);
      await page.locator({ Week: 'main .lines', Month: '.month', Board: '.board' }[view]).first().waitFor(patience);
      const shown = performance.now();
      await readToEnd(40);
      return shown;
    });
  }
}

async function findOnce(): Promise<void> {
  const answered = (text: string) => page.waitForResponse((response) => response.url().endsWith('find.all') && (response.request().postData() ?? '').includes(`"${text}"`), patience);
  await during('Find, opened and typed into', async () => {
    await page.keyboard.press('Control+k');
    const box = page.getByRole('dialog').getByRole('combobox');
    await box.waitFor(patience);
    let shown = performance.now();
    for (const text of ['q', 'qu', 'queen']) {
      const answer = answered(text);
      await box.fill(text);
      await answer;
      shown = performance.now();
    }
    return shown;
  });
  await page.keyboard.press('Escape');
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
    for (const [name, at, there] of pages) await pageOnce(name, at, there);
    await lotOnce();
    await workOnce();
    await findOnce();
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
