import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { BrowserContext, Page } from 'playwright-core';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import { startLoopback, type Loopback, type LoopbackOptions } from '#electron/loopback/loopback.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';
import { placeDemo } from '#tests/demo/demoCopy.ts';
import { builtPages } from '../machine.ts';
import { keptBrowser } from './browser.ts';

/** The day that the tests' books take for today (the demo has its own). */
export const today = day('2026-11-25');

export interface OpenedWindow {
  readonly page: Page;
  /** Scratch folder of the books. */
  readonly folder: string;
  /** Asks the desk behind the window, past the window; throws on a fault. For arranging, and for looking at what was kept. */
  desk<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>>;
  /** Ends the desk and the page, starts both again on the same folder and opens the same book, as after closing the program. */
  restart(): Promise<void>;
  close(): Promise<void>;
}

export interface WindowOptions {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
  /** Arranges the books before the page opens. */
  readonly first?: (desk: OpenedWindow['desk']) => Promise<void>;
  /** The address within the program, `/book`. */
  readonly at?: string;
}

let profile: Promise<BrowserContext> | undefined;

/**
 * The browser's profile in which all windows of a file open. A profile of its own for each window costs as much as
 * opening the program in it; windows share no address, so nothing of one is seen in another.
 */
function sharedProfile(): Promise<BrowserContext> {
  return (profile ??= (async () => {
    const context = await (await keptBrowser()).newContext({ reducedMotion: 'reduce', acceptDownloads: true });
    // An empty page stays, so that the browser never closes its last window and has to draw another.
    await context.newPage();
    return context;
  })());
}

/** Call in `afterAll` of a file that opens windows: puts the profile away. The browser itself serves the next file. */
export async function closeBrowser(): Promise<void> {
  const used = await profile;
  profile = undefined;
  await used?.close();
}

/**
 * The real window over the real desk: built pages, the loopback host, a book in a scratch folder. Whatever the page
 * writes to its console as an error (a blocked script or style too) makes `close` throw.
 */
export async function openWindow(options: WindowOptions = {}): Promise<OpenedWindow> {
  const pages = await builtPages();
  const context = await sharedProfile();
  const complaints: string[] = [];
  const page = await listeningPage(context, complaints);
  await page.setViewportSize({ width: options.width ?? 1280, height: options.height ?? 800 });
  await page.emulateMedia({ colorScheme: options.scheme ?? 'light' });
  const folder = await mkdtemp(join(tmpdir(), 'outyard-window-'));
  let desk: Desk;
  let loopback: Loopback;

  // Slowness is measured elsewhere, on a quiet machine.
  const log = (line: string) => {
    if (!line.startsWith('slow:')) complaints.push(`log: ${line}`);
  };

  const start = async (at: string) => {
    await page.goto(loopback.openingAddress('once'));
    if (at !== '') await page.goto(`${loopback.origin}/#${at}`);
    await page.locator('h1').waitFor();
  };
  const raise = async () => {
    desk = createDesk({
      folder,
      program: 'Outyard (tests)',
      now: () => ({ day: today, stamp: `${today} 20:00` }),
      log,
    });
    loopback = await startLoopback({ pages, call: sluggish((name, input) => desk.call(name, input)), log });
  };

  const ask: OpenedWindow['desk'] = async (name, input) => {
    if (name === 'book.demo') await placeDemo((input as InputOf<'book.demo'>).which, folder);
    const answer = await desk.call(name, input);
    if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
    // The desk's own answer to that operation; its type follows from the contract.
    return answer.value as never;
  };

  await raise();
  await options.first?.(ask);
  await start(options.at ?? '');

  return {
    page,
    folder,
    desk: ask,
    restart: async () => {
      const at = new URL(page.url()).hash.slice(1);
      const { book } = await ask('book.status', {});
      await forget(context, page, loopback.origin, () => page.goto('about:blank'));
      await loopback.close();
      await desk.close();
      await raise();
      if (book !== null) await ask('book.open', { path: book.path });
      await start(at);
    },
    close: async () => {
      const pages = context.pages().filter((one) => one === page || one.url().startsWith(loopback.origin));
      await forget(context, page, loopback.origin, () => Promise.all(pages.map((one) => one.close())));
      await loopback.close();
      await desk.close();
      await rm(folder, { recursive: true, force: true });
      if (complaints.length > 0) throw new Error(`The window complained:\n${complaints.join('\n')}`);
    },
  };
}

/** The longest (ms) that a desk asked by a window takes for an answer, for finding what only goes well on a quick machine: `OUTYARD_SLUGGISH=200`. */
const longest = Number(process.env['OUTYARD_SLUGGISH'] ?? 0);

/** The same calls in the same order, each after a while of its own. */
function sluggish(call: LoopbackOptions['call']): LoopbackOptions['call'] {
  if (!(longest > 0)) return call;
  let before: Promise<unknown> = Promise.resolve();
  return (name, input) => {
    const answer = before.then(() => setTimeout(Math.random() * longest)).then(() => call(name, input));
    before = answer.catch(() => undefined);
    return answer;
  };
}

/** Takes the window from its address and leaves nothing of it there, for whoever gets that address next. */
async function forget(context: BrowserContext, page: Page, origin: string, go: () => Promise<unknown>): Promise<void> {
  await page.evaluate(() => localStorage.clear()).catch(() => undefined);
  await go();
  // Not before the page is gone: what it still asks for would be refused.
  await context.clearCookies({ name: `outyard-${new URL(origin).port}` });
}

async function listeningPage(context: BrowserContext, complaints: string[]): Promise<Page> {
  const page = await context.newPage();
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.setDefaultTimeout(30_000);
  return page;
}
