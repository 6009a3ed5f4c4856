/**
 * The same desk over HTTP on this machine alone, for a machine without Electron and for tests in a browser. It binds
 * 127.0.0.1 on a free port. The opening address carries a key that is good for getting a cookie (HttpOnly, SameSite
 * strict); pages and calls need the cookie, and `Host` and `Origin` must be ours, so that neither another site in the
 * same browser nor a name that points here reaches the book.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { refuse, type Answer, type FaultCode } from '#shared/faults.ts';
import { refusedCaller } from '#electron/pages/callers.ts';
import { pageHeaders } from '#electron/pages/pageHeaders.ts';
import { readPage } from '#electron/pages/readPage.ts';
import { readJson } from './readJson.ts';
import { cookieValue, newSecret, sameSecret } from './secrets.ts';

export interface LoopbackOptions {
  /** Folder of the built pages. */
  readonly pages: string;
  readonly call: (name: string, input: unknown) => Promise<Answer<unknown>>;
  readonly log: (line: string) => void;
}

export interface Loopback {
  /** `http://127.0.0.1:PORT` */
  readonly origin: string;
  /**
   * A new address where a browser starts; one given out before is no longer good. `once` is for a browser of our own,
   * whose command line other users may see; an address printed for a person works as often as it is opened.
   */
  openingAddress(use: 'once' | 'often'): string;
  close(): Promise<void>;
}

const operationPath = /^\/desk\/([A-Za-z]+\.[A-Za-z]+)$/;

export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const secret = newSecret();
  let key: { readonly text: string; readonly use: 'once' | 'often' } | null = null;
  let port = 0;

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const method = request.method ?? '';
    const target = request.url ?? '';
    const cut = target.indexOf('?');
    const path = cut < 0 ? target : target.slice(0, cut);
    const refused = refusedCaller(
      {
        host: request.headers.host,
        origin: request.headers.origin,
        fetchSite: request.headers['sec-fetch-site']?.toString(),
      },
      port,
      method,
    );
    if (refused !== null) return fault(response, 403, 'refused', refused);

    const cookie = `outyard-${port}`;
    if (path === '/open' && method === 'GET') {
      const given = new URLSearchParams(target.slice(cut + 1)).get('token') ?? '';
      if (cut < 0 || key === null || !sameSecret(given, key.text)) return turnAway(response);
      if (key.use === 'once') key = null;
      response.writeHead(303, {
        ...pageHeaders('loopback'),
        location: '/',
        'set-cookie': `${cookie}=${secret}; Path=/; HttpOnly; SameSite=Strict`,
      });
      response.end();
      return;
    }
    if (!sameSecret(cookieValue(request.headers.cookie, cookie) ?? '', secret)) {
      return path.startsWith('/desk/')
        ? fault(response, 403, 'refused', 'This page is not one that the running program opened. Open it again from the program.')
        : turnAway(response);
    }
    if (path.startsWith('/desk/')) return answerCall(request, response, method, path);
    if (method !== 'GET') return fault(response, 405, 'refused', 'Pages can only be fetched.');
    const page = await readPage(options.pages, path);
    if (page === null) return plain(response, 404, 'There is no such page.');
    response.writeHead(200, { ...pageHeaders('loopback'), 'content-type': page.type, 'content-length': page.bytes.length });
    response.end(page.bytes);
  }

  async function answerCall(request: IncomingMessage, response: ServerResponse, method: string, path: string): Promise<void> {
    if (method !== 'POST') return fault(response, 405, 'refused', 'The desk is asked by POST.');
    const name = operationPath.exec(path)?.[1];
    if (name === undefined) return fault(response, 404, 'unknown', 'The desk has no such operation.');
    const body = await readJson(request);
    if ('status' in body) return fault(response, body.status, 'bad-input', body.sentence);
    json(response, 200, await options.call(name, body.value));
  }

  const server = createServer((request, response) => {
    serve(request, response).then(
      // What is left of a body that was not wanted is read and forgotten, else the other side never sees the answer.
      () => request.resume(),
      (error: unknown) => {
        options.log(`defect in the loopback host: ${error instanceof Error ? error.stack : String(error)}`);
        if (response.headersSent) response.destroy();
        else fault(response, 500, 'defect', 'Something in the program went wrong. The book is as it was.');
      },
    );
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  port = (server.address() as AddressInfo).port;
  const origin = `http://127.0.0.1:${port}`;
  return {
    origin,
    openingAddress: (use) => {
      key = { text: newSecret(), use };
      return `${origin}/open?token=${key.text}`;
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function json(response: ServerResponse, status: number, answer: Answer<unknown>): void {
  response.writeHead(status, { ...pageHeaders('loopback'), 'content-type': 'application/json; charset=utf-8' });
  response.end(JSON.stringify(answer));
}

function fault(response: ServerResponse, status: number, code: FaultCode, sentence: string): void {
  json(response, status, refuse(code, sentence));
}

function plain(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { ...pageHeaders('loopback'), 'content-type': 'text/plain; charset=utf-8' });
  response.end(`${sentence}\n`);
}

function turnAway(response: ServerResponse): void {
  plain(response, 403, 'Outyard is running here, but this is not its opening address. Open the whole address that the program printed.');
}
