import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** What to do where a browser for the screen tests is missing and may not be installed unasked. */
export const installSentence =
  'The screen tests need a Chromium-family browser and none was found. Install Chromium, Chrome or Edge ' +
  '(on Debian and Ubuntu: apt-get install chromium xvfb), or name one in OUTYARD_CHROMIUM, then run npm test again.';

/** True on a Debian-like machine where the person is root: there the browser can simply be installed. */
export function mayInstall(): boolean {
  return process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

/** Installs Chromium and a display for the shell tests from Debian's own packages. False if that failed. */
export function installBrowser(): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const run = (...parts: string[]) => spawnSync('apt-get', parts, { stdio: ['ignore', 'inherit', 'inherit'], env }).status === 0;
  return run('update', '-q') && run('install', '-y', '-q', '--no-install-recommends', 'chromium', 'xvfb');
}
