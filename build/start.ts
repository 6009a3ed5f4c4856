import { join } from 'node:path';
import { startLoopbackDesk } from '#electron/loopback/startDesk.ts';
import { makeParts, pagesFolder, root } from './making/makeParts.ts';
import { fetchElectron, installedElectron } from './starting/findElectron.ts';
import { runBrowser } from './starting/openBrowser.ts';
import { runElectron } from './starting/openElectron.ts';
import { hasDisplay } from './starting/windowChoice.ts';
import { findBrowser } from './testing/findBrowser.ts';

// `npm start`: Electron where its binary is or can be had, else a window of an installed browser, else the address alone.
// `OUTYARD_WINDOW=browser` leaves Electron out; `OUTYARD_HEADLESS=1` leaves every window out.
// The address is the only line on the standard output; everything said beside it goes to the error stream.
const say = (line: string) => console.error(line);

await makeParts(['renderer', 'electron'], { say });
const display = hasDisplay(process.platform, process.env);
if (!(display && process.env['OUTYARD_WINDOW'] !== 'browser' && (await showElectron()))) await serveLoopback();

async function showElectron(): Promise<boolean> {
  let electron = installedElectron(root, process.env);
  if (electron === null) {
    say('Electron is not here yet: fetching it, once (some 120 MB) …');
    await fetchElectron(root);
    electron = installedElectron(root, process.env);
  }
  if (electron === null) {
    say('Electron could not be fetched.');
    return false;
  }
  const shown = await runElectron(electron, root);
  if (!shown) say('Electron did not start.');
  return shown;
}

async function serveLoopback(): Promise<void> {
  const browser = display ? installedBrowser() : null;
  const desk = await startLoopbackDesk({ script: join(root, 'out', 'electron', 'keeper.cjs'), pages: pagesFolder });
  const stopping = new AbortController();
  const stop = () => {
    stopping.abort();
    // Nothing else holds the process: it ends when the host, the keeper and the browser have.
    void desk.close();
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
  process.once('SIGHUP', stop);
  if (browser !== null) {
    say(`Opening a window of ${browser}. The program stops when it is closed.`);
    if (await runBrowser(browser, desk.loopback.openingAddress('once'), desk.data, stopping.signal)) return stop();
    say('The browser did not start.');
  }
  say('Open this address in a browser on this machine; stop with Ctrl+C.');
  console.log(desk.loopback.openingAddress('often'));
}

function installedBrowser(): string | null {
  try {
    return findBrowser();
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    return null;
  }
}
