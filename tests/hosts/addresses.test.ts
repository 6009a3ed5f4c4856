import { describe, expect, test } from 'vitest';
import { isAppAddress, isTrustedFrame } from '#electron/pages/appAddress.ts';
import { refusedCaller } from '#electron/pages/callers.ts';
import { cookieValue, newSecret, sameSecret } from '#electron/loopback/secrets.ts';

const strange = [
  'app://ui.example/', 'app://uix/', 'app://ui:8080/', 'app://user@ui/', 'app://ui@other/', 'app://:pw@ui/', 'app:ui', 'app:/ui', 'app:///ui/',
  'app://', 'apps://ui/', 'app+x://ui/', 'http://ui/', 'https://app://ui/', 'http://127.0.0.1/', 'file:///index.html', 'javascript:alert(1)',
  'data:text/html,x', 'about:blank', 'blob:app://ui/1-2', 'view-source:app://ui/', 'chrome://settings', 'devtools://devtools/', '//ui/', 'ui', '',
  'app://u\ti@x/', 'app://ui\\@other/', 'app://other/app://ui/', 'app://ui%2f.other/', 'app://%75i/',
];

describe('addresses inside the program', () => {
  test.each(['app://ui/', 'app://ui', 'app://ui/index.html', 'app://ui/#/losses', 'app://ui/?x=app://other/', 'APP://ui/'])('%s is', (address) => {
    expect(isAppAddress(address)).toBe(true);
  });
  test.each(strange)('%j is not', (address) => {
    expect(isAppAddress(address)).toBe(false);
  });

  test('only the top frame of our own page is trusted', () => {
    expect(isTrustedFrame({ url: 'app://ui/#/tonight', parent: null })).toBe(true);
    expect(isTrustedFrame({ url: 'app://ui/', parent: {} })).toBe(false);
    expect(isTrustedFrame({ url: 'app://other/', parent: null })).toBe(false);
    expect(isTrustedFrame(null)).toBe(false);
    expect(isTrustedFrame(undefined)).toBe(false);
  });
});

describe('callers of the loopback host', () => {
  const caller = { host: '127.0.0.1:4100', origin: 'http://127.0.0.1:4100', fetchSite: 'same-origin' };
  test.each([
    ['our own page posts', caller, 'POST'],
    ['our own page fetches', { ...caller, origin: undefined }, 'GET'],
    ['a person opens the address', { ...caller, origin: undefined, fetchSite: 'none' }, 'GET'],
    ['a program that sends no fetch site', { ...caller, fetchSite: undefined }, 'POST'],
  ])('%s', (_what, headers, method) => {
    expect(refusedCaller(headers, 4100, method)).toBeNull();
  });

  test.each([
    ['a name that points here', { ...caller, host: 'rebound.example:4100' }, 'GET'],
    ['localhost by name', { ...caller, host: 'localhost:4100' }, 'GET'],
    ['another port', { ...caller, host: '127.0.0.1:4101' }, 'GET'],
    ['no port', { ...caller, host: '127.0.0.1' }, 'GET'],
    ['no host', { ...caller, host: undefined }, 'GET'],
    ['a user part', { ...caller, host: 'x@127.0.0.1:4100' }, 'GET'],
    ['another site', { ...caller, origin: 'https://other.example' }, 'POST'],
    ['another program on this machine', { ...caller, origin: 'http://127.0.0.1:4101' }, 'POST'],
    ['another scheme', { ...caller, origin: 'https://127.0.0.1:4100' }, 'POST'],
    ['a page without origin', { ...caller, origin: 'null' }, 'POST'],
    ['another site that fetches', { ...caller, origin: 'https://other.example' }, 'GET'],
    ['a post without origin', { ...caller, origin: undefined }, 'POST'],
    ['a put without origin', { ...caller, origin: undefined }, 'PUT'],
    ['a link on another site', { ...caller, origin: undefined, fetchSite: 'cross-site' }, 'GET'],
    ['another port in the same browser', { ...caller, origin: undefined, fetchSite: 'same-site' }, 'GET'],
  ])('turned away: %s', (_what, headers, method) => {
    expect(refusedCaller(headers, 4100, method)).toMatch(/\.$/);
  });
});

describe('secrets', () => {
  test('are long, fresh and safe in an address', () => {
    const many = new Set(Array.from({ length: 50 }, newSecret));
    expect(many.size).toBe(50);
    for (const one of many) expect(one).toMatch(/^[A-Za-z0-9_-]{43}$/);
  });

  test('are compared whole', () => {
    const secret = newSecret();
    expect(sameSecret(secret, secret)).toBe(true);
    for (const other of ['', secret.slice(1), `${secret}x`, newSecret()]) expect(sameSecret(other, secret)).toBe(false);
  });

  test.each([
    ['outyard-1=a', 'a'],
    ['other=x; outyard-1=a; more=y', 'a'],
    ['outyard-1=a=b', 'a=b'],
    ['outyard-11=a', null],
    ['x-outyard-1=a', null],
    ['outyard-1', null],
    [undefined, null],
  ])('cookie header %j', (header, value) => {
    expect(cookieValue(header, 'outyard-1')).toBe(value);
  });
});
