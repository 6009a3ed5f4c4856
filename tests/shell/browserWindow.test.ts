import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { expect, test } from 'vitest';
import { makeParts, root } from '#build/making/makeParts.ts';
import { findBrowser } from '#build/testing/findBrowser.ts';
import { trialFolder } from '../hosts/trialFolder.ts';
import { openDisplay } from './display.ts';

const browser = findBrowser();
const display = process.platform === 'linux' ? await openDisplay() : null;

if (browser === null || display === null) {
  test('not run: no browser or no display of its own', () => {
    expect(browser !== null && display !== null).toBe(false);
  });
} else {
  test('npm start without Electron: a window of the browser, and the program ends with it', async () => {
    await makeParts(['renderer', 'electron']);
    const trial = trialFolder();
    // The same browser with an ear for the test.
    const listening = join(trial.folder, 'listening-browser');
    writeFileSync(listening, `#!/bin/sh\nexec '${browser}' --remote-debugging-port=0 "$@"\n`);
    chmodSync(listening, 0o755);
    const program = spawn(process.execPath, [join(root, 'build', 'start.ts')], {
      env: { ...process.env, DISPLAY: display.name, OUTYARD_WINDOW: 'browser', OUTYARD_FOLDER: trial.folder, OUTYARD_CHROMIUM: listening },
      stdio: ['ignore', 'inherit', 'pipe'],
    });
    const ended = once(program, 'exit') as Promise<[number | null]>;
    const profiles = () => readdirSync(trial.folder).includes('program') ? readdirSync(join(trial.folder, 'program')).filter((name) => name.startsWith('browser-')) : [];
    const portFile = () => join(trial.folder, 'program', profiles()[0] ?? 'none', 'DevToolsActivePort');
    await expect.poll(() => existsSync(portFile()), { timeout: 40_000 }).toBe(true);
    const [port] = readFileSync(portFile(), 'utf8').split('\n');

    const seen = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const context = seen.contexts()[0];
    const page = context?.pages()[0] ?? (await context?.waitForEvent('page'));
    if (page === undefined) throw new Error('the browser shows no page');
    await page.waitForURL(/^http:\/\/127\.0\.0\.1:\d+\/(#.*)?$/);
    expect(await page.title()).toMatch(/Outyard$/);
    // A window of its own: no address bar takes height from the page beyond a title.
    expect(await page.evaluate(() => window.matchMedia('(display-mode: standalone)').matches)).toBe(true);
    expect(await page.evaluate(() => fetch('/desk/book.status', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' }).then((response) => response.json()))).toMatchObject({
      ok: true,
      value: { folder: trial.folder },
    });
    expect(await page.evaluate(() => document.cookie)).toBe('');

    await page.close();
    const [code] = await ended;
    expect(code).toBe(0);
    expect(profiles()).toEqual([]);
    display.close();
    trial.remove();
  });
}
