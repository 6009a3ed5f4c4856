import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'golden-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const command = fileURLToPath(new URL('../../build/golden.ts', import.meta.url));
const proportion = { id: 'p', method: 'proportion', input: { x: 0, n: 0 }, expected: { rate: null } };

function run(file: string, ...rest: readonly string[]): { readonly code: number | null; readonly out: string; readonly err: string } {
  const { npm_lifecycle_event: _, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, file, ...rest], { cwd: folder, env, encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

function write(name: string, text: string): string {
  writeFileSync(join(folder, name), text);
  return name;
}

test('all agree: says so and exits 0; what is not covered is named and not counted', () => {
  const file = write('good.json', JSON.stringify({ cases: [proportion, { ...proportion, method: 'unheard of' }] }));
  expect(run(file)).toMatchObject({ code: 0, out: 'not covered: unheard of (1 case)\n1 passed, 0 failed\n' });
});

test('one differs: names case, field, got and wanted, and exits 1', () => {
  const file = write('bad.json', JSON.stringify({ cases: [proportion, { ...proportion, id: 'q', expected: { rate: 0 } }] }));
  expect(run(file)).toMatchObject({ code: 1, out: 'FAILED q at rate: got null, want 0\n1 passed, 1 failed\n' });
  expect(run(file, '--method', 'km')).toMatchObject({ code: 1, out: '0 passed, 0 failed\n' });
});

test('a file that cannot be used gets a sentence and exit 2', () => {
  expect(run('missing.json')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('cannot be read') });
  expect(run(write('text.json', 'not json'))).toMatchObject({ code: 2, err: expect.stringContaining('not JSON') });
  expect(run(write('form.json', '{}'))).toMatchObject({ code: 2, err: expect.stringContaining('form of a golden file') });
  expect(readFileSync(join(folder, 'text.json'), 'utf8')).toBe('not json');
});
