import { spawnSync } from 'node:child_process';
import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** What the search may look at; a test passes in its own. */
export interface BrowserSearch {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** True for a file that can be started. */
  readonly serves: (path: string) => boolean;
}

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'microsoft-edge-stable', 'brave-browser'];

/** Every place where a Chromium-family browser usually is, the likeliest first. */
export function browserPlaces({ platform, env }: Pick<BrowserSearch, 'platform' | 'env'>): string[] {
  if (platform === 'darwin') {
    const programs = ['Chromium', 'Google Chrome', 'Microsoft Edge', 'Brave Browser'];
    const roots = ['/Applications', ...(env['HOME'] === undefined ? [] : [`${env['HOME']}/Applications`])];
    return roots.flatMap((root) => programs.map((program) => `${root}/${program}.app/Contents/MacOS/${program}`));
  }
  if (platform === 'win32') {
    const tails = ['Chromium\\Application\\chrome.exe', 'Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'];
    const roots = [env['ProgramFiles'], env['ProgramFiles(x86)'], env['LOCALAPPDATA']].filter((root) => root !== undefined);
    return roots.flatMap((root) => tails.map((tail) => `${root}\\${tail}`));
  }
  const folders = ['/usr/bin', '/usr/local/bin', '/snap/bin', ...(env['PATH'] ?? '').split(delimiter)].filter((folder) => folder !== '');
  return [...new Set(names.flatMap((name) => folders.map((folder) => join(folder, name))))];
}

/**
 * The browser for the screen tests: the one OUTYARD_CHROMIUM names, else the first installed one; null if there is none.
 * Throws an Error with a sentence when OUTYARD_CHROMIUM names something that cannot be started.
 */
export function findBrowser(search: BrowserSearch = thisMachine()): string | null {
  const named = search.env['OUTYARD_CHROMIUM'];
  if (named !== undefined && named !== '') {
    if (search.serves(named)) return named;
    throw new Error(`OUTYARD_CHROMIUM names ${named}, which cannot be started; correct it or leave it out.`);
  }
  return browserPlaces(search).find(search.serves) ?? null;
}

function thisMachine(): BrowserSearch {
  return { platform: process.platform, env: process.env, serves: (path) => isProgram(path) && answers(path) };
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** On Linux a name may be there and only say that something else must be installed; asking for the version tells. */
function answers(path: string): boolean {
  if (process.platform !== 'linux') return true;
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0;
}
