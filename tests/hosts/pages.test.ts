import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pageFile } from '#electron/pages/pageFile.ts';
import { contentPolicy, pageHeaders } from '#electron/pages/pageHeaders.ts';
import { readPage } from '#electron/pages/readPage.ts';

describe('which built file a path names', () => {
  test.each([
    ['/', ['index.html'], 'text/html; charset=utf-8'],
    ['/index.html', ['index.html'], 'text/html; charset=utf-8'],
    ['/assets/index-Bx_2.js', ['assets', 'index-Bx_2.js'], 'text/javascript; charset=utf-8'],
    ['/assets/a.b.css', ['assets', 'a.b.css'], 'text/css; charset=utf-8'],
    ['/assets/serif.woff2', ['assets', 'serif.woff2'], 'font/woff2'],
  ])('%s', (path, parts, type) => {
    expect(pageFile(path)).toEqual({ parts, type });
  });

  test.each([
    '', 'index.html', '//', '//index.html', '/.', '/..', '/../package.json', '/assets/../../package.json', '/%2e%2e/package.json',
    '/%2E%2E%2fpackage.json', '/..%2fpackage.json', '/%5c..%5cpackage.json', '/..\\package.json', '/assets\\..\\..\\package.json',
    '/assets%00.js', '/index.html\0.js', '/index.html%00', '/.env.js', '/assets/.hidden.js', '/assets/', '/assets', '/index',
    '/C:/windows/win.ini', '/C:%5cwin.js', '/notes.txt', '/keeper.cjs', '/book.outyard', '/a.constructor', '/a.__proto__',
    '/index.html?x', '/index.html#x', '/ä.js', '/a b.js', '/\u2025/a.js', `/${'a'.repeat(400)}.js`, '/index.html/', 'http://other/index.html',
  ])('refuses %j', (path) => {
    expect(pageFile(path)).toBeNull();
  });
});

describe('reading from a folder', () => {
  let outer = '';
  let folder = '';
  beforeAll(() => {
    outer = mkdtempSync(join(tmpdir(), 'outyard-pages-'));
    folder = join(outer, 'renderer');
    mkdirSync(join(folder, 'assets.js'), { recursive: true });
    writeFileSync(join(folder, 'index.html'), '<!doctype html>');
    writeFileSync(join(outer, 'secret.js'), 'secret');
    symlinkSync(join(outer, 'secret.js'), join(folder, 'link.js'));
    symlinkSync(outer, join(folder, 'outside'));
  });
  afterAll(() => rmSync(outer, { recursive: true, force: true }));

  test('a file of the folder', async () => {
    const page = await readPage(folder, '/');
    expect(page?.type).toBe('text/html; charset=utf-8');
    expect(new TextDecoder().decode(page?.bytes)).toBe('<!doctype html>');
  });

  test.each(['/absent.js', '/assets.js', '/index.html/index.html', '/link.js', '/outside/secret.js', '/../secret.js'])('nothing for %s', async (path) => {
    expect(await readPage(folder, path)).toBeNull();
  });

  test('a folder reached by a link is served', async () => {
    symlinkSync(folder, join(outer, 'linked'));
    expect((await readPage(join(outer, 'linked'), '/'))?.bytes.length).toBe(15);
  });
});

describe('the content policy', () => {
  test.each(['bridge', 'loopback'] as const)('%s: nothing but our own files, no script in the page, no eval', (wall) => {
    const policy = new Map(contentPolicy(wall).split('; ').map((part) => [part.split(' ')[0], part.split(' ').slice(1)]));
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('script-src')).toEqual(["'self'"]);
    expect(policy.get('style-src')).toEqual(["'self'", "'unsafe-inline'"]);
    expect(policy.get('font-src')).toEqual(["'self'"]);
    expect(policy.get('img-src')).toEqual(["'self'", 'data:']);
    for (const none of ['frame-src', 'object-src', 'base-uri', 'form-action', 'frame-ancestors']) expect(policy.get(none)).toEqual(["'none'"]);
    expect(policy.get('connect-src')).toEqual([wall === 'bridge' ? "'none'" : "'self'"]);
    expect(pageHeaders(wall)['content-security-policy']).toBe(contentPolicy(wall));
    expect(pageHeaders(wall)['x-content-type-options']).toBe('nosniff');
  });
});
