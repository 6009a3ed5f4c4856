import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { houseFiles } from '#build/checks/houseFiles.ts';
import { words } from '#renderer/screens/start/words.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (file: string) => readFileSync(join(root, file), 'utf8');
const readme = read('README.md');

test('the README names the demo as the first screen does', () => {
  expect(readme).toContain(`*${words.demoOssar}*`);
});

test("the README's two commands are the first two it shows, and the check script runs the second", () => {
  const blocks = [...readme.matchAll(/^```\n([^`]*)```$/gm)].map(([, block = '']) => block.trim());
  expect(blocks.slice(0, 2)).toEqual(['npm ci && npm start', 'npm ci && npm test']);
  expect(read('.ci/run').trimEnd().split('\n').at(-1)).toBe(blocks[1]);
});

test.each(['core', 'electron'])("the next engineer's book speaks of every folder in %s", (layer) => {
  const developers = read('DEVELOPERS.md');
  const rooms = new Set(houseFiles(root).flatMap((file) => file.match(`^(${layer}/[^/]+/)`)?.[1] ?? []));
  expect(rooms.size).toBeGreaterThan(3);
  expect([...rooms].filter((room) => !developers.includes(`\`${room}`))).toEqual([]);
});

const shown = [...(readme + read('DEVELOPERS.md')).matchAll(/npm run -s outyard -- ([a-z]+)([^\n`]*)/g)].map(
  ([, verb = '', rest = '']) => ({ verb, options: [...rest.matchAll(/--[a-z-]+/g)].map(([option]) => option) }),
);

describe('every command line that the documents show', () => {
  test('there are some', () => expect(shown.length).toBeGreaterThan(4));

  test.each(shown)('$verb $options is known to the program', ({ verb, options }) => {
    const help = spawnSync(process.execPath, [join(root, 'electron', 'command', 'main.ts'), verb, ...(verb === 'help' ? [] : ['--help'])], {
      cwd: root,
      encoding: 'utf8',
      timeout: 60_000,
    });
    expect([help.status, help.stderr]).toEqual([0, '']);
    for (const option of options) expect(help.stdout).toContain(option);
  });
});
