import { chromium, type Browser } from 'playwright-core';
import { browserProgram } from '../machine.ts';

const switches = [
  '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run', '--force-color-profile=srgb',
];

/** The browser for the screen tests, with a fresh profile. */
export async function launchBrowser(): Promise<Browser> {
  // The browser's own sandbox refuses to run as root.
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({ executablePath: browserProgram(), args: [...switches, ...(asRoot ? ['--no-sandbox'] : [])] });
}
