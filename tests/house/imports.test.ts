import { expect, test } from 'vitest';
import { checkImports } from '#build/checks/imports.ts';
import { layers, mayImport } from '#build/checks/layerRules.ts';
import { scratchHouse } from './scratchHouse.ts';

test('a sound house has nothing to mend', () => {
  expect(checkImports(scratchHouse())).toEqual([]);
});

test('shared knows nobody, core knows shared, the two hosts never meet', () => {
  expect(mayImport.shared).toEqual(['shared']);
  expect(mayImport.core).toEqual(['shared', 'core']);
  expect(mayImport.electron).toEqual(['shared', 'core', 'electron']);
  expect(mayImport.renderer).toEqual(['shared', 'renderer']);
  expect([mayImport.tests, mayImport.build]).toEqual([layers, layers]);
});

const planted: readonly (readonly [file: string, text: string, sentence: RegExp])[] = [
  // who may import whom
  ['shared/bad.ts', `import { rate } from '#core/losses/rate.ts';\nexport const bad = rate;`, /shared may import shared only/],
  ['shared/bad.ts', `import type { rate } from '#core/losses/rate.ts';\nexport type Bad = typeof rate;`, /shared may import shared only/],
  ['core/losses/bad.ts', `import { start } from '#electron/main/main.ts';\nexport const bad = start;`, /core may import shared, core only/],
  ['core/book/bad.ts', `import { start } from '#electron/main/main.ts';\nexport const bad = start;`, /core may import shared, core only/],
  ['core/losses/bad.ts', `import { all } from '#tests/losses/rate.test.ts';\nexport const bad = all;`, /core may import shared, core only/],
  ['electron/main/bad.ts', `import { Losses } from '../../renderer/screens/Losses.tsx';\nexport const bad = Losses;`, /electron may import shared, core, electron only/],
  ['renderer/bad.ts', `import { rate } from '#core/losses/rate.ts';\nexport const bad = rate;`, /renderer may import shared, renderer only/],
  ['renderer/bad.ts', `import { start } from '#electron/main/main.ts';\nexport const bad = start;`, /renderer may import shared, renderer only/],
  ['renderer/bad.ts', `export const bad = () => import('../core/losses/rate.ts');`, /renderer may import shared, renderer only/],
  ['renderer/bad.ts', `export type Bad = import('../core/losses/rate.ts').Rate;`, /renderer may import shared, renderer only/],
  ['electron/preload/bad.ts', `import { desk } from '#core/desk/desk.ts';\nexport const bad = desk;`, /preload script sees shared/],
  ['core/losses/bad.ts', `import { open } from '#core/book/store.ts';\nexport const bad = open;`, /a pure room may not reach/],
  ['core/losses/bad.ts', `import { desk } from '../desk/desk.ts';\nexport const bad = desk;`, /a pure room may not reach/],
  // what a room may know of the machine
  ['core/losses/bad.ts', `import { readFileSync } from 'node:fs';\nexport const bad = readFileSync;`, /pure code does not know Node/],
  ['core/losses/bad.ts', `import { readFileSync } from 'fs';\nexport const bad = readFileSync;`, /pure code does not know Node/],
  ['core/losses/bad.cjs', `const { readFileSync } = require('fs/promises');\nmodule.exports = readFileSync;`, /pure code does not know Node/],
  ['core/losses/bad.ts', `export const bad = await import('node:os');`, /pure code does not know Node/],
  ['shared/bad.ts', `import 'node:fs';\nexport const bad = 1;`, /pure code does not know Node/],
  ['core/losses/bad.ts', `import Database from 'better-sqlite3';\nexport const bad = Database;`, /only core\/book and core\/desk know the database/],
  ['core/losses/bad.ts', `import type { Kysely } from 'kysely';\nexport type Bad = Kysely<object>;`, /only core\/book and core\/desk know the database/],
  ['electron/main/bad.ts', `import Database from 'better-sqlite3';\nexport const bad = Database;`, /only core\/book and core\/desk know the database/],
  ['renderer/bad.ts', `import Database from 'better-sqlite3';\nexport const bad = Database;`, /only core\/book and core\/desk know the database/],
  ['core/losses/bad.ts', `import { app } from 'electron';\nexport const bad = app;`, /does not know the shell/],
  ['core/book/bad.ts', `import { app } from 'electron';\nexport const bad = app;`, /does not know the shell/],
  ['renderer/bad.ts', `import { ipcRenderer } from 'electron';\nexport const bad = ipcRenderer;`, /does not know the shell/],
  ['core/losses/bad.ts', `import { useState } from 'react';\nexport const bad = useState;`, /only renderer draws/],
  ['electron/main/bad.ts', `import { useState } from 'react';\nexport const bad = useState;`, /only renderer draws/],
  ['renderer/bad.ts', `import { readFileSync } from 'node:fs';\nexport const bad = readFileSync;`, /renderer does not know Node/],
  ['electron/preload/bad.ts', `import { readFileSync } from 'node:fs';\nexport const bad = readFileSync;`, /electron does not know Node/],
  ['electron/main/second.ts', `import { app, ipcMain } from 'electron';\nexport const bad = [app, ipcMain];`, /only electron\/main\/bridge.ts does/],
  ['electron/main/bridge.ts', `import { ipcRenderer } from 'electron';\nexport const bad = ipcRenderer;`, /only electron\/preload\/ does/],
  // clock, chance and surroundings in pure code
  ['core/losses/bad.ts', `export const bad = () => Date.now();`, /uses Date:/],
  ['core/losses/bad.ts', `export const bad = () => new Date();`, /uses Date:/],
  ['core/losses/bad.ts', `export const bad = (at: Date) => at;`, /uses Date:/],
  ['shared/bad.ts', `export const bad = () => new Date();`, /uses Date:/],
  ['core/losses/bad.ts', `export const bad = () => Math.random();`, /uses Math.random/],
  ['core/losses/bad.ts', `export const bad = () => Math['random']();`, /uses Math.random/],
  ['core/losses/bad.ts', `const { random } = Math;\nexport const bad = random;`, /uses Math passed on whole/],
  ['core/losses/bad.ts', `export const bad = () => performance.now();`, /uses performance/],
  ['core/losses/bad.ts', `import { z as Temporal } from 'zod';\nexport const bad = Temporal.Now.plainDateISO();`, /uses Temporal.Now/],
  ['core/losses/bad.ts', `export const bad = (window: string) => [window, document];`, /uses document/],
  ['core/losses/bad.ts', `export const bad = { at: process.pid };`, /uses process/],
  ['core/losses/bad.ts', `export const bad = globalThis['Date'];`, /uses globalThis/],
  // how an import is written
  ['core/losses/bad.ts', `import { gone } from './gone.ts';\nexport const bad = gone;`, /there is no core\/losses\/gone.ts/],
  ['core/losses/bad.ts', `import { gone } from '#shared/gone.ts';\nexport const bad = gone;`, /there is no shared\/gone.ts/],
  ['core/losses/bad.ts', `import { day } from '#shared/Days.ts';\nexport const bad = day;`, /there is no shared\/Days.ts/],
  ['core/losses/bad.ts', `import { day } from '#shared/days';\nexport const bad = day;`, /write the ending, #shared\/days.ts/],
  ['core/losses/bad.ts', `import { day } from '#common/days.ts';\nexport const bad = day;`, /package.json knows no such subpath/],
  ['core/losses/bad.ts', `import { day } from '../../shared/days.ts';\nexport const bad = day;`, /from another layer use a subpath/],
  ['core/losses/winter/deep/bad.ts', `import { rate } from '../../../losses/rate.ts';\nexport const bad = rate;`, /too far up/],
  ['tests/a/b/bad.test.ts', `import { rate } from '../../../core/losses/rate.ts';\nexport const bad = rate;`, /too far up/],
  ['core/losses/bad.ts', `export const bad = (name: string) => import(name);`, /computed name/],
  ['core/losses/bad.ts', `import { stray } from 'unlisted';\nexport const bad = stray;`, /package.json does not list/],
  ['tests/bad.test.ts', `import { stray } from 'unlisted';\nexport const bad = stray;`, /package.json does not list/],
  ['core/losses/bad.ts', `import { build } from 'vite';\nexport const bad = build;`, /lists as a tool only/],
  ['core/losses/bad.ts', `import * as elsewhere from 'https://example.org/a.js';\nexport const bad = elsewhere;`, /an address is no import/],
  // files that hold nothing of their own, or lie nowhere
  ['core/losses/index.ts', `export const bad = 1;`, /is named index/],
  ['core/losses/bad.ts', `export * from './rate.ts';\nexport const own = 1;`, /passes on a whole module/],
  ['core/losses/bad.ts', `export * as rates from './rate.ts';\nexport const own = 1;`, /passes on a whole module/],
  ['core/losses/bad.ts', `export { rate } from './rate.ts';`, /only passes on/],
  ['helpers/bad.ts', `export const bad = 1;`, /lies in no layer/],
  ['core/losses/bad.ts', `export const bad = (;`, /cannot be read/],
];

test.each(planted)('in %s it refuses  %s', (file, text, sentence) => {
  const findings = checkImports(scratchHouse({ [file]: text })).filter((finding) => finding.file === file);
  expect(findings.map((finding) => finding.sentence)).toEqual([expect.stringMatching(sentence)]);
});

test('the line is the one the import stands on', () => {
  const text = `// a head\n\nexport const one = 1;\nimport { app } from 'electron';\nexport const bad = app;\n`;
  expect(checkImports(scratchHouse({ 'core/losses/bad.ts': text })).map((finding) => finding.line)).toEqual([4]);
});

const accepted: readonly (readonly [file: string, text: string])[] = [
  ['core/losses/good.ts', `// import fs from 'node:fs'\nexport const good = "import { app } from 'electron'";`],
  ['core/losses/good.ts', `export interface Plan { Date: string; process(): void }\nexport const good = (plan: Plan) => plan.Date;`],
  ['core/losses/good.ts', `export const good = { performance: 1, Date: 'a', process() { return Math.max(1, 2); } }.performance;`],
  ['core/losses/good.ts', `export const good = (window: { process: string }, { document: [fetch] = [''] }) => [window.process, fetch];`],
  ['core/losses/good.ts', `const window = [1];\nexport const good = window.map((Date) => Date);`],
  ['core/losses/good.ts', `import { rate } from './rate.ts';\nexport { words } from './words.ts';\nexport const good = rate;`],
  ['core/losses/values.d.cts', `export * from 'zod';`],
  ['core/book/good.ts', `import { createHash } from 'node:crypto';\nexport const good = [createHash, new Date(), Math.random()];`],
  ['electron/main/bridge.ts', `import { ipcMain } from 'electron';\nexport const good = ipcMain;`],
  ['renderer/good.ts', `import address from './screens/losses.css?url';\nexport const good = address;`],
  ['renderer/good.ts', `import { useState } from 'react';\nexport const good = () => [useState, performance.now()];`],
  ['core/losses/good.ts', `import type { Plugin } from 'vite';\nexport type Good = Plugin;`],
];

test.each(accepted)('in %s it accepts  %s', (file, text) => {
  expect(checkImports(scratchHouse({ [file]: text }))).toEqual([]);
});
