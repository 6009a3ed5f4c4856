import { describe, expect, test } from 'vitest';
import { judgeLength, mostLines } from '#build/checks/fileLength.ts';
import { formTable, withFormTable } from '#build/checks/formTable.ts';
import { houseChecks } from '#build/checks/houseChecks.ts';
import { headings, judgeDocument } from '#build/checks/documents.ts';
import { judgeMachineWords } from '#build/checks/machineWords.ts';
import { judgeShortcuts } from '#build/checks/shortcuts.ts';
import { columns, kinds } from '#shared/entryForms.ts';
import { scratchHouse } from './scratchHouse.ts';

const sentences = (findings: readonly { sentence: string }[]) => findings.map((finding) => finding.sentence);

describe('length of a file', () => {
  const lines = (count: number) => Array.from({ length: count }, (_, n) => `export const a${n} = f(${n});`).join('\n') + '\n';

  test('400 lines are allowed and 401 are not', () => {
    expect(judgeLength('a.ts', lines(mostLines))).toEqual([]);
    expect(sentences(judgeLength('a.ts', lines(mostLines + 1)))).toEqual([expect.stringContaining('has 401 lines')]);
    expect(judgeLength('a.css', 'p { margin: 0; }\n'.repeat(401))).toHaveLength(1);
  });

  test('a table of plain data is not counted, a table of calls is', () => {
    const rows = (cell: string) => Array.from({ length: 500 }, () => `  { day: '2025-04-01', counts: [1, -2, ${cell}] },`).join('\n');
    expect(judgeLength('a.ts', `export const table = [\n${rows('3')}\n] as const;\n`)).toEqual([]);
    expect(judgeLength('a.ts', `const table: Row[] = [\n${rows('null')}\n] satisfies Row[];\n`)).toEqual([]);
    expect(judgeLength('a.ts', `export const table = [\n${rows('f(3)')}\n];\n`)).toHaveLength(1);
    expect(judgeLength('a.ts', `export const table = [\n${rows('3')}\n];\n${lines(mostLines + 1)}`)).toHaveLength(1);
  });
});

describe('shortcuts', () => {
  // Written in parts so that this file does not trip over its own examples.
  const at = (word: string) => `@ts-${word}`;
  test.each([
    [`test.only('a', () => {});`, /\.only leaves tests out/],
    [`describe.skip('a', () => {});`, /\.skip leaves tests out/],
    [`it.concurrent.skip('a', () => {});`, /\.skip leaves tests out/],
    [`test.each([1]).only('a', () => {});`, /\.only leaves tests out/],
    [`it.todo('a');`, /\.todo leaves tests out/],
    [`xit('a', () => {});`, /xit leaves tests out/],
    [`const a: any = 1;`, /any switches the types off/],
    [`const a = [] as Array<any>;`, /any switches the types off/],
    [`// ${at('ignore')}\nconst a = 1;`, /hides faults/],
    [`/* ${at('nocheck')} */\nconst a = 1;`, /hides faults/],
    [`// ${at('expect-error')}\nconst a = 1;`, /without a reason/],
    [`// ${['TO', 'DO'].join('')}: later\nconst a = 1;`, /finish it/],
    [`await page.waitForTimeout(500);`, /waits for a time/],
    [`// oxlint-disable-next-line no-var\nvar a = 1;`, /silenced without a reason/],
  ])('refuses  %s', (text, sentence) => {
    expect(sentences(judgeShortcuts('a.ts', text))).toEqual([expect.stringMatching(sentence)]);
  });

  test.each([
    `test.skipIf(!shell)('a', () => {});`,
    `describe.runIf(shell)('a', () => {});`,
    `const any = rows.only; list.skip(3); many.filter((a) => a.todo);`,
    `// any test.only in a comment\nconst a = 'test.only';`,
    `// ${at('expect-error')} a colony's id is no yard's id\nconst a = 1;`,
    `// oxlint-disable-next-line no-var -- the old engine hoists this one\nvar a = 1;`,
  ])('accepts  %s', (text) => {
    expect(judgeShortcuts('a.ts', text)).toEqual([]);
  });
});

describe('words of one machine', () => {
  const folder = (name: string) => `/${name}/somebody/outyard`;
  test.each(['tmp', 'root', 'work'])('refuses a path below /%s', (name) => {
    expect(sentences(judgeMachineWords('a.md', `see ${folder(name)}`))).toEqual([expect.stringContaining('one machine')]);
    expect(judgeMachineWords('a.ts', `const a = '${folder(name)}';`)).toHaveLength(1);
  });

  test('refuses the address of a package shop, in the lock too', () => {
    const shop = ['registry', 'npmjs', 'org'].join('.');
    expect(sentences(judgeMachineWords('package-lock.json', `"resolved": "https://${shop}/a.tgz"`))).toEqual([
      expect.stringContaining('package shop'),
    ]);
    expect(judgeMachineWords('.ci/run', `echo deb http://${['deb', 'debian', 'org'].join('.')}/debian`)).toHaveLength(1);
  });

  test('refuses what looks like a secret', () => {
    expect(sentences(judgeMachineWords('a.ts', `const key = '${'ghp'}_${'a1'.repeat(18)}';`))).toEqual([expect.stringContaining('secret')]);
  });

  test('accepts paths of the house and of the system', () => {
    expect(judgeMachineWords('a.ts', `import '../../core/work/hours.ts'; const a = '/usr/bin/chromium'; // see tests/tmp/a`)).toEqual([]);
  });
});

describe('documents', () => {
  const house = { files: new Set(['README.md', 'LICENSE', 'core/losses/rate.ts', 'build/pictures/a.png']), scripts: new Set(['start', 'test']) };
  const judge = (text: string) => sentences(judgeDocument('README.md', text, house, () => headings('# Outyard\n\n## What it does\n')));

  test('accepts what is there', () => {
    expect(
      judge('[licence](LICENSE) ![picture](build/pictures/a.png) [above](#what-it-does) `core/losses/` `npm ci && npm start` `npm test` [out](https://example.org)'),
    ).toEqual([]);
  });

  test.each([
    ['[more](docs/MORE.md)', /leads to docs\/MORE.md/],
    ['![picture](build/pictures/b.png)', /leads to build\/pictures\/b.png/],
    ['[above](#how-it-does)', /no such heading/],
    ['the room `core/gone/` does', /speaks of core\/gone\//],
    ['run `npm run -s outyard`', /no script outyard/],
    ['run npm run check', /no script check/],
  ])('refuses  %s', (text, sentence) => {
    expect(judge(text)).toEqual([expect.stringMatching(sentence)]);
  });
});

test('all of it together finds each fault once, in order, and nothing in a sound house', () => {
  expect(houseChecks(scratchHouse())).toEqual([]);
  const root = scratchHouse({
    'README.md': '# House\n\n[gone](GONE.md)\n',
    'core/losses/bad.ts': `import { app } from 'electron';\nexport const bad: any = app;\n`,
    'tests/losses/bad.test.ts': `import { rate } from '#core/losses/rate.ts';\ntest.${'only'}('a', () => rate(1, 2));\n`,
  });
  expect(houseChecks(root).map(({ file, line }) => `${file}:${line}`)).toEqual([
    'README.md:3', 'core/losses/bad.ts:1', 'core/losses/bad.ts:2', 'tests/losses/bad.test.ts:2',
  ]);
});

describe('the tables of the exchange form in the README', () => {
  test('name every kind and column, and a stale table is a finding', () => {
    const table = formTable();
    for (const word of [...kinds, ...columns]) expect(table).toContain(`| \`${word}\` |`);
    const fresh = `# House\n\n<!-- form -->\n${table}\n<!-- /form -->\n`;
    expect(houseChecks(scratchHouse({ 'README.md': fresh }))).toEqual([]);
    expect(sentences(houseChecks(scratchHouse({ 'README.md': fresh.replace('`queen_cells`', '`cells`') })))).toEqual([
      expect.stringContaining('run node build/formTable.ts'),
    ]);
  });

  test('are made anew between the marks and nowhere else', () => {
    expect(withFormTable('a\n<!-- form -->\nold\n<!-- /form -->\nb\n')).toBe(`a\n<!-- form -->\n${formTable()}\n<!-- /form -->\nb\n`);
    expect(withFormTable('a text without the place')).toBeNull();
  });
});
