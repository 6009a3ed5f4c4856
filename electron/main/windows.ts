import { join } from 'node:path';
import { BrowserWindow, Menu, nativeTheme, screen, type WebPreferences } from 'electron';
import { appStart } from '#electron/pages/appAddress.ts';
import { smallest, windowPlace } from './windowPlace.ts';

/** The paper's colour, so that nothing white flashes before the first picture. */
const paper = { light: '#faf8f3', dark: '#161a18' } as const;

/**
 * What every window is held to. The spelling checker stays off because it would fetch word lists from the network.
 */
export const pagePreferences = {
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  contextIsolation: true,
  sandbox: true,
  webviewTag: false,
  spellcheck: false,
  navigateOnDragDrop: false,
} as const satisfies WebPreferences;

/** The one place where windows are made. */
export function openWindow(): BrowserWindow {
  const place = windowPlace(screen.getPrimaryDisplay().workArea);
  const window = new BrowserWindow({
    ...place,
    minWidth: Math.min(smallest.width, place.width),
    minHeight: Math.min(smallest.height, place.height),
    title: 'Outyard',
    show: false,
    backgroundColor: nativeTheme.shouldUseDarkColors ? paper.dark : paper.light,
    webPreferences: { ...pagePreferences, preload: join(__dirname, 'preload.cjs') },
  });
  window.once('ready-to-show', () => window.show());
  window.webContents.on('context-menu', (_event, about) => {
    if (about.isEditable) Menu.buildFromTemplate([{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }]).popup({ window });
    else if (about.selectionText !== '') Menu.buildFromTemplate([{ role: 'copy' }]).popup({ window });
  });
  void window.loadURL(appStart);
  return window;
}
