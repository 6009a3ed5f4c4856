/** Electron's main process: one window over the keeper. It opens no book itself. */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { app, BrowserWindow, dialog, session } from 'electron';
import { booksFolder, dataFolder } from '#electron/folders.ts';
import { createKeeperClient } from '#electron/keeper/keeperClient.ts';
import { logFile } from '#electron/keeper/logFile.ts';
import { program } from '#electron/program.ts';
import { connectBridge } from './bridge.ts';
import { guardPages, guardSession } from './guard.ts';
import { setMenu } from './menu.ts';
import { registerAppScheme, serveApp } from './pages.ts';
import { keeperStarter } from './startKeeper.ts';
import { openWindow } from './windows.ts';

// Electron knows where Windows has moved the documents to; otherwise as in the loopback host.
const documents = app.getPath('documents');
const around = { environment: process.env, platform: process.platform, home: homedir(), documents: existsSync(documents) ? documents : null };
const data = dataFolder(around);
const folder = booksFolder(around);
const log = logFile(data);

process.on('uncaughtException', (error) => {
  const id = randomUUID().slice(0, 8);
  log(`defect ${id} in the main process: ${error.stack ?? error.message}`);
  dialog.showErrorBox('Outyard', `Something in the program went wrong (note ${id} in its log). What was saved is safe; close the program and start it again.`);
});

// Before the lock: one program per data folder.
mkdirSync(data, { recursive: true });
app.setPath('userData', join(data, 'window'));
// As root there is no sandbox to enable, and asking for it ends the program.
if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
registerAppScheme();

if (app.requestSingleInstanceLock()) start();
else app.quit();

function start(): void {
  guardPages();
  const keeper = createKeeperClient(keeperStarter({ folder, data, program }), log);
  app.on('second-instance', () => {
    const [first] = BrowserWindow.getAllWindows();
    if (first?.isMinimized()) first.restore();
    first?.focus();
  });
  app.on('window-all-closed', () => app.quit());
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void keeper.close().then(() => {
      closed = true;
      app.quit();
    });
  });
  app.on('render-process-gone', (_event, contents, details) => {
    if (details.reason === 'clean-exit') return;
    log(`the page stopped: ${details.reason}`);
    contents.reload();
  });
  void app.whenReady().then(() => {
    guardSession(session.defaultSession);
    serveApp(join(__dirname, '..', 'renderer'));
    connectBridge(keeper);
    setMenu(folder);
    openWindow();
  });
}
