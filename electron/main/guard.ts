import { app, type Session } from 'electron';
import { isAppAddress } from '#electron/pages/appAddress.ts';

/** Holds every page, of whatever window, inside the program: no other address, no second window, no embedded page. */
export function guardPages(): void {
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event, address) => {
      if (!isAppAddress(address)) event.preventDefault();
    });
    contents.on('will-redirect', (event, address) => {
      if (!isAppAddress(address)) event.preventDefault();
    });
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
}

/** Refuses every permission and every request that leaves the program; lets only the page's own exports be saved. */
export function guardSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((details, decide) => {
    decide({ cancel: !isOwnRequest(details.url) });
  });
  session.on('will-download', (event, item) => {
    if (!isOwnRequest(item.getURL())) event.preventDefault();
  });
}

function isOwnRequest(address: string): boolean {
  if (isAppAddress(address)) return true;
  if (address.startsWith('blob:')) return isAppAddress(address.slice('blob:'.length));
  return address.startsWith('data:') || address.startsWith('devtools:');
}
