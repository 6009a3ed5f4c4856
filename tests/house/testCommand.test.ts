import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readConfigureGlobal } from 'fast-check';
import { describe, expect, inject, onTestFinished, test } from 'vitest';
import { nodeSentence } from '#build/nodeGuard.js';
import { browserPlaces, findBrowser } from '#build/testing/findBrowser.ts';
import { seedFrom } from '#build/testing/seed.ts';
import { closingLines, isGreen } from '#build/testing/tally.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('Node', () => {
  test.each(['22.18.0', '22.19.1', '23.6.0', '24.21.0', '26.0.0'])('%s serves', (version) => expect(nodeSentence(version)).toBeNull());
  test.each(['18.20.4', '20.20.2', '22.17.9'])('%s is refused in a sentence', (version) => {
    expect(nodeSentence(version)).toContain(`this is Node ${version}`);
  });
});

describe('browser for the screen tests', () => {
  test('the named one is taken', () => {
    expect(findBrowser({ platform: 'linux', env: { OUTYARD_CHROMIUM: '/opt/mine' }, serves: (path) => path === '/opt/mine' })).toBe('/opt/mine');
  });

  test('a named one that does not start is a fault, not passed over', () => {
    expect(() => findBrowser({ platform: 'linux', env: { OUTYARD_CHROMIUM: '/opt/gone' }, serves: (path) => path === '/usr/bin/chromium' })).toThrow(
      'OUTYARD_CHROMIUM names /opt/gone, which cannot be started',
    );
  });

  test.each([
    ['linux', { PATH: '/opt/bin' }, '/usr/bin/chromium'],
    ['linux', { PATH: '/opt/bin' }, '/usr/bin/google-chrome'],
    ['linux', { PATH: '/opt/bin' }, '/opt/bin/chromium-browser'],
    ['darwin', {}, '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
    ['win32', { ProgramFiles: 'C:\\Program Files' }, 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
    ['win32', { 'ProgramFiles(x86)': 'D:\\P' }, 'D:\\P\\Microsoft\\Edge\\Application\\msedge.exe'],
  ] as const)('on %s with %o it is found at %s', (platform, env, path) => {
    expect(browserPlaces({ platform, env })).toContain(path);
    expect(findBrowser({ platform, env, serves: (place) => place === path })).toBe(path);
  });

  test('none is null', () => {
    expect(findBrowser({ platform: 'linux', env: {}, serves: () => false })).toBeNull();
  });
});

describe('seed', () => {
  test('the usual one, a given one, a fresh one', () => {
    expect(seedFrom(undefined, () => 0.5)).toBe(seedFrom('', () => 0.1));
    expect(seedFrom('77', () => 0.5)).toBe(77);
    expect(seedFrom('random', () => 0.5)).not.toBe(seedFrom('random', () => 0.1));
    expect(() => seedFrom('soon', () => 0.5)).toThrow('OUTYARD_SEED is "soon"');
  });

  test('every property test of this run uses the one that was printed', () => {
    expect(readConfigureGlobal().seed).toBe(inject('seed'));
  });
});

describe('the closing lines', () => {
  const lint = { name: 'lint', passed: true, seconds: 1.24 };
  const types = { name: 'types', passed: false, seconds: 3 };
  const tally = { passed: 40, failed: 0, notRun: ['tests/shell/a.test.ts > opens'] };

  test('steps and tests are counted together in the last line, and what was not run is named', () => {
    expect(closingLines([lint], tally)).toEqual([
      'passed  lint  1.2 s',
      'passed  tests  40 passed, 0 failed, 1 not run here',
      '        not run here: tests/shell/a.test.ts > opens',
      '41 passed, 0 failed',
    ]);
    expect(isGreen([lint], tally)).toBe(true);
  });

  test('a failed step, failed tests, no tests at all and a broken run are each a failure', () => {
    expect(closingLines([lint, types], tally).at(-1)).toBe('41 passed, 1 failed');
    expect(isGreen([lint, types], tally)).toBe(false);
    expect(closingLines([lint], { ...tally, failed: 2 }).at(-1)).toBe('41 passed, 2 failed');
    expect(isGreen([lint], { ...tally, failed: 2 })).toBe(false);
    expect(isGreen([lint], { passed: 0, failed: 0, notRun: [] })).toBe(false);
    expect(closingLines([lint], null).at(-1)).toBe('1 passed, 1 failed');
    expect(isGreen([lint], null)).toBe(false);
  });
});

test('the tally counts what passed, failed, was not run, and files that do not load', () => {
  // Inside the house, because the scratch suite needs its packages; out/ is never committed.
  mkdirSync(join(root, 'out'), { recursive: true });
  const folder = mkdtempSync(join(root, 'out', 'tally-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const reporter = join(root, 'build', 'testing', 'tallyReporter.ts');
  writeFileSync(
    join(folder, 'vitest.config.ts'),
    `import { TallyReporter } from ${JSON.stringify(reporter)};\nexport default { test: { include: ['*.test.ts'], reporters: [new TallyReporter('tally.json')] } };\n`,
  );
  writeFileSync(
    join(folder, 'mixed.test.ts'),
    `import { expect, test } from 'vitest';\ntest('one', () => expect(1).toBe(1));\ntest('two', () => expect(2).toBe(2));\ntest('three', () => expect(3).toBe(4));\ntest.skipIf(true)('four', () => expect(4).toBe(4));\n`,
  );
  writeFileSync(join(folder, 'broken.test.ts'), `import './gone.ts';\n`);
  const run = spawnSync(process.execPath, [join(root, 'node_modules', 'vitest', 'vitest.mjs'), 'run', '--root', folder], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 60_000,
    env: { ...process.env, OUTYARD_TALLY: '' },
  });
  expect(run.status).toBe(1);
  expect(JSON.parse(readFileSync(join(folder, 'tally.json'), 'utf8'))).toEqual({ passed: 2, failed: 2, notRun: ['mixed.test.ts > four'] });
});

test('the bench command says what there is and refuses what there is not', () => {
  const bench = (...names: string[]) => spawnSync(process.execPath, [join(root, 'build', 'bench.ts'), ...names], { encoding: 'utf8', timeout: 60_000 });
  expect(bench().status).toBe(0);
  expect(bench().stdout).toContain('npm run -s bench -- NAME');
  const none = bench('../../build/test');
  expect([none.status, none.stderr]).toEqual([2, expect.stringContaining('There is no bench called ../../build/test')]);
});
