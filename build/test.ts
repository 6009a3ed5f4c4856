import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { findBrowser } from './testing/findBrowser.ts';
import { installBrowser, installSentence, mayInstall } from './testing/installBrowser.ts';

// Everything a fresh machine needs, then the check. Its last line is the check's: `N passed, N failed`.
function browserOrSentence(): { path: string } | { sentence: string } {
  try {
    const found = findBrowser();
    if (found !== null) return { path: found };
    if (!mayInstall()) return { sentence: installSentence };
    console.log('No browser for the screen tests yet: installing Chromium.');
    if (!installBrowser()) return { sentence: `Chromium could not be installed. ${installSentence}` };
    const installed = findBrowser();
    return installed === null ? { sentence: installSentence } : { path: installed };
  } catch (error) {
    return { sentence: error instanceof Error ? error.message : String(error) };
  }
}

const browser = browserOrSentence();
if ('sentence' in browser) {
  console.error(browser.sentence);
  process.exitCode = 1;
} else {
  console.log(`Browser for the screen tests: ${browser.path}`);
  const check = spawnSync(process.execPath, [fileURLToPath(new URL('check.ts', import.meta.url)), ...process.argv.slice(2)], {
    stdio: 'inherit',
    env: { ...process.env, OUTYARD_CHROMIUM: browser.path },
  });
  process.exitCode = check.status ?? 1;
}
