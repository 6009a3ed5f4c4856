import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startLoopback, type Loopback } from '#electron/loopback/loopback.ts';
import { bodyLimit } from '#electron/loopback/readJson.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { httpAsk, openSession } from './httpAsk.ts';

/** What reached the desk; these tests are about what must not. */
const reached: { name: string; input: unknown }[] = [];
const answerOf = (name: string, input: unknown): Promise<Answer<unknown>> => {
  reached.push({ name, input });
  return name === 'broken.call' ? Promise.reject(new Error('secret inside')) : Promise.resolve({ ok: true, value: { name, input } });
};

let outer = '';
let loopback: Loopback;
let session: { port: number; origin: string; cookie: string };
const logged: string[] = [];

beforeAll(async () => {
  outer = mkdtempSync(join(tmpdir(), 'outyard-loopback-'));
  const pages = join(outer, 'renderer');
  mkdirSync(join(pages, 'assets'), { recursive: true });
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>Outyard</title>');
  writeFileSync(join(pages, 'assets', 'a.js'), 'export {};');
  writeFileSync(join(outer, 'package.json'), '{"secret":1}');
  loopback = await startLoopback({ pages, call: answerOf, log: (line) => logged.push(line) });
  session = await openSession(loopback.openingAddress('often'));
});
beforeEach(() => reached.splice(0));
afterAll(async () => {
  await loopback.close();
  rmSync(outer, { recursive: true, force: true });
});

const get = (path: string, more: Record<string, string> = {}) => httpAsk(session.port, 'GET', path, { cookie: session.cookie, ...more });
const post = (path: string, body: string | Uint8Array, more: Record<string, string> = {}) =>
  httpAsk(session.port, 'POST', path, { cookie: session.cookie, origin: session.origin, 'content-type': 'application/json', ...more }, body);
const faultOf = (text: string) => JSON.parse(text) as Fault;

describe('opening', () => {
  test('gives a cookie that scripts and other sites never see, and leads to the page', async () => {
    const address = new URL(loopback.openingAddress('often'));
    const answer = await httpAsk(session.port, 'GET', address.pathname + address.search);
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/');
    expect(answer.headers['set-cookie']?.[0]).toMatch(/^outyard-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
    // The cookie is another secret than the one in the address.
    expect(answer.headers['set-cookie']?.[0]).not.toContain(address.searchParams.get('token'));
    expect(answer.text).toBe('');
  });

  test('an address for one use works once, one for a person as often as it is opened', async () => {
    const once = new URL(loopback.openingAddress('once'));
    const statuses = [];
    for (let time = 0; time < 2; time += 1) statuses.push((await httpAsk(session.port, 'GET', once.pathname + once.search)).status);
    const often = new URL(loopback.openingAddress('often'));
    for (let time = 0; time < 2; time += 1) statuses.push((await httpAsk(session.port, 'GET', often.pathname + often.search)).status);
    expect(statuses).toEqual([303, 403, 303, 303]);
  });

  test.each(['/open', '/open?token=', '/open?token=wrong', '/open?other=x', '/open?token=%00'])('%s is turned away', async (path) => {
    const answer = await httpAsk(session.port, 'GET', path);
    expect(answer.status).toBe(403);
    expect(answer.headers['set-cookie']).toBeUndefined();
  });

  test('it listens on this machine alone', () => {
    expect(new URL(loopback.origin).hostname).toBe('127.0.0.1');
    expect(session.port).toBeGreaterThan(1023);
  });
});

describe('pages', () => {
  test('the page and its files, under the policy and never kept', async () => {
    const page = await get('/');
    expect([page.status, page.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8']);
    expect(page.text).toContain('<title>Outyard</title>');
    expect(page.headers['content-security-policy']).toContain("script-src 'self';");
    expect(page.headers['cache-control']).toBe('no-store');
    expect((await get('/assets/a.js')).headers['content-type']).toBe('text/javascript; charset=utf-8');
  });

  test.each(['/../package.json', '/%2e%2e/package.json', '/..%5cpackage.json', '/assets/..%2f..%2fpackage.json', '/assets\\..\\..\\package.json', '/index.html%00', '/package.json', '//etc/passwd'])(
    'nothing at %s',
    async (path) => {
      const answer = await get(path);
      expect(answer.status).toBe(404);
      expect(answer.text).not.toContain('secret');
    },
  );

  test('a NUL and raw line ends in the request line are not even understood', async () => {
    for (const target of ['/index.html\0', '/x\r\ny']) expect(await rawStatus(`GET ${target} HTTP/1.1\r\nHost: 127.0.0.1:${session.port}\r\n\r\n`)).toBe(400);
  });

  test.each([{}, { cookie: 'outyard-1=x' }, { cookie: 'a=b' }])('not without the cookie: %j', async (headers: Record<string, string>) => {
    for (const path of ['/', '/assets/a.js', '/nothing']) {
      const answer = await httpAsk(session.port, 'GET', path, headers);
      expect(answer.status).toBe(403);
      expect(answer.text).not.toContain('<title>');
    }
  });

  test.each(['HEAD', 'PUT', 'DELETE', 'OPTIONS', 'POST', 'PATCH'])('not by %s', async (method) => {
    expect((await httpAsk(session.port, method, '/', { cookie: session.cookie, origin: session.origin })).status).toBe(405);
  });
});

describe('calls', () => {
  test('reach the desk with what was sent and bring its answer back', async () => {
    const input = { name: 'Larch Bend, ½ day’s work', list: [1, null, 'ä'] };
    const answer = await post('/desk/book.create', JSON.stringify(input), { 'content-type': 'application/json; charset=utf-8' });
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
    expect(JSON.parse(answer.text)).toEqual({ ok: true, value: { name: 'book.create', input } });
    expect(reached).toEqual([{ name: 'book.create', input }]);
  });

  test.each([
    ['a wrong cookie', { cookie: 'outyard-1=x' }, 403],
    ['no cookie', { cookie: '' }, 403],
    ['a name that points here', { host: 'rebound.example' }, 403],
    ['another site', { origin: 'https://other.example' }, 403],
    ['a page without origin', { origin: 'null' }, 403],
    ['another port', { origin: 'http://127.0.0.1:1' }, 403],
    ['a cross-site fetch', { 'sec-fetch-site': 'cross-site' }, 403],
    ['a form', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
    ['plain text, which another site could send without asking', { 'content-type': 'text/plain' }, 415],
    ['no content type', { 'content-type': '' }, 415],
    ['something like JSON', { 'content-type': 'application/jsonp' }, 415],
  ])('are refused from %s', async (_what, headers: Record<string, string>, status) => {
    const answer = await post('/desk/book.status', '{}', headers);
    expect(answer.status).toBe(status);
    expect(faultOf(answer.text)).toMatchObject({ ok: false, sentence: expect.stringMatching(/\.$/) });
    expect(reached).toEqual([]);
  });

  test('are refused without an origin', async () => {
    const answer = await httpAsk(session.port, 'POST', '/desk/book.status', { cookie: session.cookie, 'content-type': 'application/json' }, '{}');
    expect([answer.status, reached]).toEqual([403, []]);
  });

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS'])('are refused by %s', async (method) => {
    const answer = await httpAsk(session.port, method, '/desk/book.status', { cookie: session.cookie, origin: session.origin });
    expect([answer.status, reached]).toEqual([405, []]);
  });

  test.each(['/desk/', '/desk/nothing', '/desk/book.status/', '/desk/book.status.x', '/desk/../desk/book.status', '/desk/book%2estatus', '/desk/__proto__', '/desk'])(
    'of no known form: %s',
    async (path) => {
      const answer = await post(path, '{}');
      expect(answer.status).toBe(path === '/desk' ? 405 : 404);
      expect([faultOf(answer.text).ok, reached]).toEqual([false, []]);
    },
  );

  test.each(['', '{', 'undefined', "{'a':1}", '\u0000', '{"a":1}}'])('that are no JSON: %j', async (body) => {
    const answer = await post('/desk/book.status', body);
    expect([answer.status, faultOf(answer.text).code, reached]).toEqual([400, 'bad-input', []]);
  });

  test('that are no UTF-8', async () => {
    const answer = await post('/desk/book.status', Uint8Array.of(0x22, 0xff, 0x22));
    expect([answer.status, reached]).toEqual([400, []]);
  });

  test('that say they are too large are answered before they arrive', async () => {
    const answer = await rawStatus(
      `POST /desk/import.preview HTTP/1.1\r\nHost: 127.0.0.1:${session.port}\r\nOrigin: ${session.origin}\r\nCookie: ${session.cookie}\r\n` +
        `Content-Type: application/json\r\nContent-Length: ${bodyLimit + 1}\r\n\r\n`,
    );
    expect([answer, reached]).toEqual([413, []]);
  });

  test('that turn out too large on the way', async () => {
    const answer = await post('/desk/import.preview', new Uint8Array(bodyLimit + 1).fill(0x20), { 'transfer-encoding': 'chunked' });
    expect([answer.status, faultOf(answer.text).code, reached]).toEqual([413, 'bad-input', []]);
    expect(faultOf(answer.text).sentence).toContain('96 MiB');
  });

  test('that are just small enough arrive', async () => {
    const text = 'a'.repeat(bodyLimit - 2);
    const answer = await post('/desk/import.preview', `"${text}"`);
    expect(answer.status).toBe(200);
    expect(reached.map(({ input }) => typeof input === 'string' && input.length)).toEqual([text.length]);
  });

  test('that meet a defect are answered without its inside, which is in the log', async () => {
    const answer = await post('/desk/broken.call', '{}');
    expect([answer.status, faultOf(answer.text).code]).toEqual([500, 'defect']);
    expect(answer.text).not.toContain('secret inside');
    expect(logged.join('\n')).toContain('secret inside');
  });
});

test('after closing nothing answers', async () => {
  const other = await startLoopback({ pages: outer, call: answerOf, log: () => undefined });
  const { port } = new URL(other.origin);
  expect((await httpAsk(Number(port), 'GET', '/')).status).toBe(403);
  await other.close();
  await expect(httpAsk(Number(port), 'GET', '/')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
});

/** The status of the answer to bytes as they are. */
function rawStatus(bytes: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const socket = connect(session.port, '127.0.0.1', () => socket.write(bytes));
    socket.once('data', (data) => {
      resolve(Number(/^HTTP\/1\.1 (\d{3})/.exec(data.toString('latin1'))?.[1]));
      socket.destroy();
    });
    socket.on('error', reject);
  });
}
