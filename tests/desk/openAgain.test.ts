import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import { day } from '#shared/days.ts';

let folder: string;
let desk: Desk;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'outyard-open-'));
  desk = createDesk({ folder, program: 'Outyard (tests)', now: () => ({ day: day('2026-11-25'), stamp: '2026-11-25 20:00' }), log: () => undefined });
});
afterEach(async () => {
  await desk.close();
  rmSync(folder, { recursive: true });
});

test('the demo that is open is opened again', async () => {
  expect(await desk.call('book.demo', { which: 'tiny' })).toMatchObject({ ok: true });
  expect(await desk.call('book.demo', { which: 'tiny' })).toMatchObject({ ok: true, value: { book: { name: 'Home Yard' } } });
});

test('a book that is open is opened again by another spelling of its path', async () => {
  expect(await desk.call('book.create', { name: 'Ossar Valley' })).toMatchObject({ ok: true });
  const other = join(folder, 'elsewhere');
  symlinkSync(folder, other);
  expect(await desk.call('book.open', { path: join(other, 'Ossar Valley.outyard') })).toMatchObject({ ok: true, value: { book: { name: 'Ossar Valley' } } });
  expect(await desk.call('book.open', { path: './Ossar Valley.outyard' })).toMatchObject({ ok: true });
});
