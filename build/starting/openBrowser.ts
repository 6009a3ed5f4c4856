import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { browserArguments } from './windowChoice.ts';

/** One that has stood this long was really there, however it ended. */
const failsWithin = 8000;

/**
 * Shows the address as a window of the browser, with a fresh profile below the program's data folder, until it is
 * closed or `stop` is raised. False if the browser did not start.
 */
export async function runBrowser(browser: string, address: string, data: string, stop: AbortSignal): Promise<boolean> {
  mkdirSync(data, { recursive: true });
  const profile = mkdtempSync(join(data, 'browser-'));
  const started = Date.now();
  const child = spawn(browser, browserArguments(address, profile, process.getuid?.()), { stdio: 'ignore' });
  stop.addEventListener('abort', () => child.kill());
  const opened = await new Promise<boolean>((resolve) => {
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0 || stop.aborted || Date.now() - started > failsWithin));
  });
  // Its helpers may still be writing for a moment.
  rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
  return opened;
}
