import { chromium, type Browser } from 'playwright-core';
import { browserProgram } from '../machine.ts';

const switches = [
  '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run', '--force-color-profile=srgb',
];

/** A browser of its own for the screen tests, with a fresh profile. */
export async function launchBrowser(): Promise<Browser> {
  // The browser's own sandbox refuses to run as root.
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({ executablePath: browserProgram(), args: [...switches, ...(asRoot ? ['--no-sandbox'] : [])] });
}

let kept: Promise<Browser> | undefined;

/** The browser that all files of this process share, started when the first asks; it ends with the worker, or by `quitBrowser`. */
export async function keptBrowser(): Promise<Browser> {
  if (kept !== undefined && !(await kept).isConnected()) kept = undefined;
  kept ??= launchBrowser();
  globalThis.beforeWorkerEnds = quitBrowser;
  return kept;
}

export async function quitBrowser(): Promise<void> {
  await (await kept)?.close();
  kept = undefined;
}
