import { chromium, type Browser } from 'playwright-core';
import { findBrowser } from '../../../build/testing/findBrowser.ts';

const switches = [
  '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run', '--force-color-profile=srgb',
];

/** The browser for the screen tests. Throws with a sentence when there is none: a screen test is never left out in silence. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === null) throw new Error('There is no Chromium-family browser here. Install one, or name it in OUTYARD_CHROMIUM.');
  // The browser's own sandbox refuses to run as root.
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({ executablePath, args: [...switches, ...(asRoot ? ['--no-sandbox'] : [])] });
}
