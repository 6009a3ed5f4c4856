import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeParts } from '#build/making/makeParts.ts';
import { rootFlags } from '#build/starting/windowChoice.ts';
import type { BookStatus } from '#shared/contract/book.ts';
import type { DeskClient } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/faults.ts';
import { deskSuite, valueOf } from '../hosts/deskSuite.ts';
import { trialFolder } from '../hosts/trialFolder.ts';
import { openDisplay, type Display } from './display.ts';
import { shellRuntime, type InstalledShell, type ShellRuntime } from './shellRuntime.ts';

/** What the page has beside a browser's own things. */
interface PageWindow {
  outyard: { call(name: string, input: unknown): Promise<Answer<unknown>> };
  ran?: string[];
}

const runtime = shellRuntime();

// Without a runtime every test below is counted as not run and named at the end. One is had by naming it in
// OUTYARD_TRIAL_ELECTRON, or by letting npm start fetch the pinned one.
const which = runtime === null ? 'none here' : `${runtime.version}, ${runtime.flavour} build`;
describe.skipIf(runtime === null)(`the window in Electron (${which})`, () => shellTests(runtime as ShellRuntime));

function shellTests(shell: ShellRuntime): void {
  let trial: ReturnType<typeof trialFolder>;
  let display: Display | null = null;
  let installed: InstalledShell | undefined;
  let environment: Record<string, string> = {};
  let args: string[] = [];
  let app: ElectronApplication;
  let page: Page;

  beforeAll(async () => {
    trial = trialFolder();
    await makeParts(['renderer', shell.flavour === 'trial' ? 'electron-trial' : 'electron']);
    display = process.platform === 'linux' ? await openDisplay() : null;
    if (process.platform === 'linux' && display === null) throw new Error('The shell needs a display: install Xvfb (on Debian: apt-get install xvfb).');
    const own = Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined);
    environment = {
      ...Object.fromEntries(own),
      ...(display === null ? {} : { DISPLAY: display.name }),
      OUTYARD_FOLDER: trial.folder,
      OUTYARD_KEEPER_NODE: process.execPath,
      // Neither a bus nor the helpers that are asked for over it belong to what is tested; waiting for them would.
      DBUS_SESSION_BUS_ADDRESS: 'disabled:',
      NO_AT_BRIDGE: '1',
    };
    installed = shell.install();
    args = [...installed.args, ...rootFlags(process.getuid?.()), '--disable-gpu', '--disable-dev-shm-usage'];
    app = await _electron.launch({ executablePath: installed.electron, args, env: environment, timeout: 60_000 });
    page = await app.firstWindow();
    await page.waitForLoadState('load');
  });
  afterAll(async () => {
    await app?.close();
    display?.close();
    installed?.remove();
    trial.remove();
  });

  const call = (name: string, input: unknown) =>
    page.evaluate(([asked, given]) => (window as unknown as PageWindow).outyard.call(asked as string, given), [name, input]);
  const status = () => valueOf(call('book.status', {})) as Promise<BookStatus>;

  /** The keeper's process id: as Electron counts its own, or in a trial as the system lists it. */
  async function keeperId(): Promise<number> {
    const ids =
      shell.flavour === 'trial'
        ? keepersOf(trial.folder)
        : await app.evaluate(({ app: program }) => program.getAppMetrics().filter((one) => one.name === 'Outyard keeper').map((one) => one.pid));
    expect(ids).toHaveLength(1);
    return ids[0] ?? 0;
  }

  test('opens with its title at its own address, in the size of the design', async () => {
    expect(await page.title()).toMatch(/Outyard$/);
    expect(page.url()).toMatch(/^app:\/\/ui\//);
    await page.getByText('Outyard').first().waitFor();
    const found = await app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().map((window) => ({ visible: window.isVisible(), size: window.getSize(), least: window.getMinimumSize() })),
    );
    expect(found).toEqual([{ visible: true, size: [1280, 800], least: [900, 600] }]);
  });

  test('the page is a page: no Node, and one function beyond the browser’s own', async () => {
    const seen = await page.evaluate(() => {
      const here = window as unknown as Record<string, unknown> & PageWindow;
      return {
        node: ['require', 'module', 'process', 'Buffer', 'global', 'electron', 'ipcRenderer'].filter((name) => name in here),
        bridge: Object.entries(here.outyard).map(([name, value]) => `${name}: ${typeof value}`),
      };
    });
    expect(seen).toEqual({ node: [], bridge: ['call: function'] });
    const preferences = await app.evaluate(({ BrowserWindow }) => {
      const { webContents } = BrowserWindow.getAllWindows()[0] as unknown as { webContents: { getLastWebPreferences(): Record<string, unknown> } };
      return webContents.getLastWebPreferences();
    });
    expect(preferences).toMatchObject({ nodeIntegration: false, contextIsolation: true, sandbox: true, webviewTag: false });
    expect(preferences['webSecurity'] ?? true).toBe(true);
    expect(preferences['experimentalFeatures'] ?? false).toBe(false);
  });

  test('no script runs that is not a file of the program', async () => {
    const ran = await page.evaluate(async () => {
      const here = window as unknown as PageWindow;
      here.ran = [];
      const own = document.createElement('script');
      own.textContent = 'window.ran.push("inline")';
      const written = document.createElement('div');
      written.innerHTML = '<img src="x:" onerror="window.ran.push(\'handler\')"><a href="javascript:window.ran.push(\'address\')">a</a>';
      const data = document.createElement('script');
      data.src = 'data:text/javascript,window.ran.push("data")';
      document.body.append(own, written, data);
      written.querySelector('a')?.click();
      const refused = new Promise((resolve) => document.addEventListener('securitypolicyviolation', resolve, { once: true }));
      const another = document.createElement('script');
      another.src = 'https://other.example/a.js';
      document.body.append(another);
      await refused;
      written.remove();
      return here.ran;
    });
    expect(ran).toEqual([]);
  });

  test('nothing is fetched, from the program’s own address or elsewhere', async () => {
    const outcomes = await page.evaluate(() =>
      Promise.all(['https://other.example/', 'http://127.0.0.1/', 'app://ui/index.html', 'file:///etc/hostname'].map((address) => fetch(address).then(() => 'came', () => 'refused'))),
    );
    expect(outcomes).toEqual(['refused', 'refused', 'refused', 'refused']);
  });

  test.each([
    ['app://ui/', 200],
    ['app://ui/index.html', 200],
    ['app://ui/../../package.json', 404],
    ['app://ui/%2e%2e/%2e%2e/package.json', 404],
    ['app://ui/..%5c..%5cpackage.json', 404],
    ['app://ui/absent.js', 404],
  ])('%s answers %i', async (address, expected) => {
    expect(await app.evaluate(({ net }, asked) => net.fetch(asked).then((response) => response.status), address)).toBe(expected);
  });

  test.each(['app://ui/index.html%00', 'app://other/index.html', 'app://ui.example/', 'https://other.example/'])('%s is not reached at all', async (address) => {
    const outcome = await app.evaluate(({ net }, asked) => net.fetch(asked).then((response) => response.status, () => 'refused'), address);
    expect([404, 'refused']).toContain(outcome);
  });

  test('every permission is refused', async () => {
    const states = await page.evaluate(async () => {
      const asked = ['geolocation', 'notifications', 'midi', 'camera', 'microphone', 'clipboard-read'];
      const found = await Promise.all(asked.map(async (name) => (await navigator.permissions.query({ name: name as PermissionName })).state));
      const camera = await navigator.mediaDevices.getUserMedia({ video: true }).then(() => 'given', (error: DOMException) => error.name);
      const place = await new Promise<number | string>((resolve) => navigator.geolocation.getCurrentPosition(() => resolve('given'), (error) => resolve(error.code)));
      return { found: [...new Set(found)], notification: await Notification.requestPermission(), camera, place };
    });
    // Place code 1 is PERMISSION_DENIED.
    expect(states).toEqual({ found: ['denied'], notification: 'denied', camera: expect.stringMatching(/^Not(Allowed|Found)Error$/), place: 1 });
  });

  test('the page stays: no other address, no second window, no embedded page', async () => {
    const before = page.url();
    for (const address of ['https://other.example/', 'file:///etc/hostname', 'app://other/', 'data:text/html,x', 'http://ui/']) {
      await page.evaluate((to) => {
        location.href = to;
      }, address);
      expect(await page.evaluate(() => window.open('https://other.example/') === null && window.open('app://ui/') === null)).toBe(true);
      expect(page.url()).toBe(before);
    }
    const embedded = await page.evaluate(() => {
      const view = document.createElement('webview');
      view.setAttribute('src', 'https://other.example/');
      document.body.append(view);
      const methods = 'loadURL' in view;
      view.remove();
      return methods;
    });
    expect(embedded).toBe(false);
    expect(app.windows()).toHaveLength(1);
    expect((await status()).program).toMatch(/^Outyard /);
  });

  test('what the page itself made can be saved, and nothing else', async () => {
    const target = join(trial.folder, 'saved.csv');
    // Awaited, so that the place to save is set before the page asks: else a dialog would stand there for ever.
    await app.evaluate(({ session }, path) => {
      const here = globalThis as unknown as { saved: Promise<string> };
      here.saved = new Promise((resolve) => {
        session.defaultSession.once('will-download', (_event, item) => {
          item.setSavePath(path);
          item.once('done', (_done, state) => resolve(state));
        });
      });
    }, target);
    await page.evaluate(() => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob(['date,entry\n'], { type: 'text/csv' }));
      link.download = 'journal.csv';
      link.click();
    });
    expect(await app.evaluate(() => (globalThis as unknown as { saved: Promise<string> }).saved)).toBe('completed');
    expect(readFileSync(target, 'utf8')).toBe('date,entry\n');
  });

  deskSuite(() => call as DeskClient['call']);

  test('after a reload the same book is there', async () => {
    await page.reload();
    expect((await status()).book?.name).toBe('Two yards');
  });

  test('shows every screen of the rail, and the page complains of nothing', async () => {
    const complaints: string[] = [];
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    const rail = page.getByRole('navigation').getByRole('link');
    await rail.first().waitFor();
    const headings: string[] = [];
    const names = await rail.allTextContents();
    expect(names).toEqual(expect.arrayContaining(['Tonight', 'Colonies', 'Losses', 'Stock and orders', 'Book']));
    for (const name of names) {
      await rail.filter({ hasText: name }).click();
      await page.locator('nav a[aria-current=page]').filter({ hasText: name }).waitFor();
      const heading = page.getByRole('heading', { level: 1 });
      // A screen's own heading follows the rail by a moment.
      await expect.poll(async () => headings.includes((await heading.textContent()) ?? ''), { timeout: 20_000 }).toBe(false);
      headings.push((await heading.textContent()) ?? '');
    }
    await rail.filter({ hasText: 'Colonies' }).click();
    await page.getByText('L1', { exact: true }).first().waitFor();
    expect(complaints).toEqual([]);
  });

  test('a killed keeper is replaced, with the book open', async () => {
    const keeper = await keeperId();
    process.kill(keeper, 'SIGKILL');
    await expect.poll(async () => (await call('book.status', {})).ok, { timeout: 20_000 }).toBe(true);
    expect((await status()).book?.name).toBe('Two yards');
    expect(await keeperId()).not.toBe(keeper);
  });

  test('the menu has what works and nothing else, and zooms between 80 and 200 per cent', async () => {
    const labels = await app.evaluate(({ Menu }) =>
      (Menu.getApplicationMenu()?.items ?? []).map((top) => `${top.label}: ${(top.submenu?.items ?? []).filter((item) => item.visible && item.type !== 'separator').map((item) => item.label).join(', ')}`),
    );
    expect(labels[0]).toMatch(/^&File: &Print …, /);
    expect(labels.at(-1)).toBe('&Help: Show the folder of books, About Outyard');
    const zooms = await app.evaluate(({ Menu, BrowserWindow }) => {
      const view = Menu.getApplicationMenu()?.items.find((item) => item.label === '&View');
      const press = (label: string) => view?.submenu?.items.find((item) => item.label === label)?.click();
      const zoom = () => Math.round((BrowserWindow.getAllWindows()[0]?.webContents.getZoomFactor() ?? 0) * 100);
      const seen: number[] = [];
      for (const label of ['Larger', 'Larger', 'Larger', 'Larger', 'Larger', 'Larger', 'Usual size', 'Smaller', 'Smaller', 'Smaller', 'Usual size']) {
        press(label);
        seen.push(zoom());
      }
      return seen;
    });
    expect(zooms).toEqual([110, 125, 150, 175, 200, 200, 100, 90, 80, 80, 100]);
  });

  test('started twice, the second one ends and the first keeps its one window', async () => {
    const second = spawn(installed?.electron ?? '', args, { env: environment, stdio: 'ignore', timeout: 30_000, killSignal: 'SIGKILL' });
    const [code] = (await once(second, 'exit')) as [number | null];
    expect(code).toBe(0);
    expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
    expect((await status()).book?.name).toBe('Two yards');
  });

  test('closing the window ends the program and its keeper', async () => {
    const keeper = await keeperId();
    const ended = new Promise<void>((resolve) => app.on('close', () => resolve()));
    await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());
    await ended;
    await expect.poll(() => isRunning(keeper), { timeout: 10_000 }).toBe(false);
  });
}

/** Process ids of the keepers that work in a folder, as the system lists them. */
function keepersOf(folder: string): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((name) => {
      try {
        const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0');
        return words.some((word) => word.endsWith('keeper.cjs')) && words.includes(folder);
      } catch {
        return false;
      }
    })
    .map(Number);
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
