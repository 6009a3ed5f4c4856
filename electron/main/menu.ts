import { app, BrowserWindow, Menu, shell, type MenuItemConstructorOptions } from 'electron';
import { nextZoom } from './zoom.ts';

/** The plain menu. Books are opened, made and exported on the Book screen, so File has only what the window itself does. */
export function setMenu(booksFolder: string): void {
  const onWindow = (act: (window: BrowserWindow) => void) => () => {
    const window = BrowserWindow.getFocusedWindow() ?? BrowserWindow.getAllWindows()[0];
    if (window !== undefined) act(window);
  };
  const zoom = (direction: 1 | -1) =>
    onWindow(({ webContents }) => webContents.setZoomFactor(nextZoom(webContents.getZoomFactor(), direction)));
  const file: MenuItemConstructorOptions[] = [
    { label: '&Print …', accelerator: 'CmdOrCtrl+P', click: onWindow((window) => void window.webContents.executeJavaScript('window.print()')) },
    { type: 'separator' },
    process.platform === 'darwin' ? { role: 'close' } : { role: 'quit' },
  ];
  const template: MenuItemConstructorOptions[] = [
    ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    { label: '&File', submenu: file },
    { role: 'editMenu' },
    {
      label: '&View',
      submenu: [
        { label: 'Reload', accelerator: 'F5', click: onWindow((window) => window.webContents.reload()) },
        { type: 'separator' },
        { label: 'Larger', accelerator: 'CmdOrCtrl+Plus', click: zoom(1) },
        // The same key without Shift.
        { label: 'Larger', accelerator: 'CmdOrCtrl+=', click: zoom(1), visible: false },
        { label: 'Smaller', accelerator: 'CmdOrCtrl+-', click: zoom(-1) },
        { label: 'Usual size', accelerator: 'CmdOrCtrl+0', click: onWindow((window) => window.webContents.setZoomFactor(1)) },
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
    {
      role: 'help',
      label: '&Help',
      submenu: [
        { label: 'Show the folder of books', click: () => void shell.openPath(booksFolder) },
        { label: 'About Outyard', click: () => app.showAboutPanel() },
      ],
    },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
