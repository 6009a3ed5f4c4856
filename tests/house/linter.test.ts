import { spawnSync } from 'node:child_process';
import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { scratchHouse } from './scratchHouse.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const linter = join(root, 'node_modules', 'oxlint', 'bin', 'oxlint');

/** Rules broken, as `file rule`, when the house's own settings read the given files. */
function lint(files: Readonly<Record<string, string>>): string[] {
  const folder = scratchHouse(files);
  copyFileSync(join(root, '.oxlintrc.json'), join(folder, '.oxlintrc.json'));
  const run = spawnSync(process.execPath, [linter, '--format', 'json', ...Object.keys(files)], { cwd: folder, encoding: 'utf8', timeout: 60_000 });
  const { diagnostics } = JSON.parse(run.stdout) as { diagnostics: { code: string; filename: string }[] };
  return diagnostics.map(({ filename, code }) => `${filename.replaceAll('\\', '/')} ${code.replace(/^.*\(|\)$/g, '')}`).sort();
}

test('the settings see each planted fault', () => {
  expect(
    lint({
      'core/losses/clock.ts': `export const at = () => Date.now();\n`,
      'core/losses/chance.ts': `export const chance = () => Math.random();\n`,
      'core/losses/files.ts': `import { readFileSync } from 'node:fs';\nexport const read = readFileSync;\n`,
      'core/losses/words.ts': `export const say = () => console.log('a');\n`,
      'shared/database.ts': `import Database from 'better-sqlite3';\nexport const open = Database;\n`,
      'renderer/reach.ts': `import { rate } from '#core/losses/rate.ts';\nexport const reach = rate;\n`,
      'electron/main/any.ts': `export const a = (b: ${'any'}) => b === 1;\n`,
      'core/losses/nameless.ts': `export default 1;\n`,
      'tests/losses/focus.test.ts': `import { expect, test } from 'vitest';\ntest.${'only'}('a', () => expect(1).toBe(1));\n`,
    }),
  ).toEqual([
    'core/losses/chance.ts no-restricted-properties',
    'core/losses/clock.ts no-restricted-globals',
    'core/losses/files.ts no-restricted-imports',
    'core/losses/nameless.ts no-default-export',
    'core/losses/words.ts no-console',
    'electron/main/any.ts no-explicit-any',
    'renderer/reach.ts no-restricted-imports',
    'shared/database.ts no-restricted-imports',
    'tests/losses/focus.test.ts no-focused-tests',
  ]);
});

test('the rooms that touch the file may', () => {
  expect(lint({ 'core/book/time.ts': `import { statSync } from 'node:fs';\nexport const age = (file: string) => Date.now() - statSync(file).mtimeMs;\n` })).toEqual([]);
});

test('the lint command passes a sound house and fails for the linter and for the house checks alike', () => {
  const code = (files: Readonly<Record<string, string>>) => {
    const folder = scratchHouse(files);
    copyFileSync(join(root, '.oxlintrc.json'), join(folder, '.oxlintrc.json'));
    const run = spawnSync(process.execPath, [join(root, 'build', 'lint.ts'), folder], { encoding: 'utf8', timeout: 60_000 });
    return [run.status, run.stdout.includes('nothing to mend'), run.stderr.trim()];
  };
  expect(code({})).toEqual([0, true, '']);
  expect(code({ 'electron/main/loose.ts': `export const same = (a: string) => a == 'b';\n` })).toEqual([1, true, '']);
  expect(code({ 'core/losses/bad.ts': `import { gone } from './gone.ts';\nexport const bad = gone;\n` })).toEqual([
    1, false, 'core/losses/bad.ts:1  imports ./gone.ts, but there is no core/losses/gone.ts',
  ]);
});
