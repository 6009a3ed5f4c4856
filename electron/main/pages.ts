import { protocol } from 'electron';
import { appScheme, isAppAddress } from '#electron/pages/appAddress.ts';
import { pageHeaders } from '#electron/pages/pageHeaders.ts';
import { readPage } from '#electron/pages/readPage.ts';

/** Must run before the app is ready. */
export function registerAppScheme(): void {
  protocol.registerSchemesAsPrivileged([{ scheme: appScheme, privileges: { standard: true, secure: true } }]);
}

/** Serves the built pages at `app://ui/`: GET only, files of the folder only. */
export function serveApp(folder: string): void {
  protocol.handle(appScheme, async (request) => {
    const headers = pageHeaders('bridge');
    if (request.method !== 'GET') return new Response('Pages can only be fetched.', { status: 405, headers });
    const page = isAppAddress(request.url) ? await readPage(folder, new URL(request.url).pathname) : null;
    if (page === null) return new Response('There is no such page.', { status: 404, headers });
    return new Response(page.bytes, { headers: { ...headers, 'content-type': page.type } });
  });
}
