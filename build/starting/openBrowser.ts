import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { browserArguments } from './windowChoice.ts';

/**
 * Shows the address as a window of the browser, with a fresh profile below the program's data folder, until it is
 * closed. False if the browser did not start.
 */
export async function runBrowser(browser: string, address: string, data: string): Promise<boolean> {
  mkdirSync(data, { recursive: true });
  const profile = mkdtempSync(join(data, 'browser-'));
  const child = spawn(browser, browserArguments(address, profile, process.getuid?.()), { stdio: 'ignore' });
  const opened = await new Promise<boolean>((resolve) => {
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0));
  });
  // Its helpers may still be writing for a moment.
  rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
  return opened;
}
