import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { makeParts, pagesFolder, root } from '#build/making/makeParts.ts';

beforeAll(() => makeParts(['renderer', 'electron', 'electron-trial']));

const bundle = (flavour: 'electron' | 'electron-trial', part: string) => readFileSync(join(root, 'out', flavour, `${part}.cjs`), 'utf8');
const required = (text: string) => [...new Set([...text.matchAll(/\brequire\("([^"]+)"\)/g)].map((found) => found[1] ?? ''))];
const isNode = (name: string) => name.startsWith('node:') || builtinModules.includes(name);

describe('the program that ships', () => {
  test('knows no other Node than Electron’s own', () => {
    for (const part of ['main', 'preload', 'keeper']) {
      expect(bundle('electron', part)).not.toContain('OUTYARD_KEEPER_NODE');
      expect(bundle('electron', part)).not.toContain('__OUTYARD_EXTERNAL_NODE__');
    }
    expect(bundle('electron', 'main')).not.toContain('child_process');
    expect(bundle('electron', 'main')).toContain('utilityProcess.fork');
  });

  test('and the trial build does, so that the check above can fail', () => {
    expect(bundle('electron-trial', 'main')).toContain('OUTYARD_KEEPER_NODE');
    expect(bundle('electron-trial', 'main')).toContain('child_process');
  });

  test.each(['electron', 'electron-trial'] as const)('%s: main holds no database, the preload nothing but Electron, the keeper no window', (flavour) => {
    expect(required(bundle(flavour, 'main')).filter((name) => !isNode(name))).toEqual(['electron']);
    expect(required(bundle(flavour, 'preload'))).toEqual(['electron']);
    expect(required(bundle(flavour, 'keeper')).filter((name) => !isNode(name))).toEqual(['better-sqlite3', 'highs']);
  });

  test('opens nothing outside itself, and runs no words as program', () => {
    const main = bundle('electron', 'main');
    expect(main).not.toContain('openExternal');
    expect(main).not.toContain('webviewTag: true');
    expect(bundle('electron', 'preload').match(/ipcRenderer\.\w+/g)).toEqual(['ipcRenderer.invoke']);
  });

  test('carries no path of the machine that made it', () => {
    for (const part of ['main', 'preload', 'keeper']) expect(bundle('electron', part)).not.toContain(root);
  });

  // On a fresh clone it was made just now by this very process, where NODE_ENV says "test".
  test('the page is the production build, whoever made it', () => {
    const scripts = readdirSync(join(pagesFolder, 'assets')).filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(0);
    for (const name of scripts) expect(readFileSync(join(pagesFolder, 'assets', name), 'utf8').includes('unrecognized in this browser'), name).toBe(false);
  });

  test('the page has its script and style as files and nothing in itself', () => {
    const page = readFileSync(join(pagesFolder, 'index.html'), 'utf8');
    expect(page).toMatch(/<script type="module"[^>]* src="\.\/assets\/[\w.-]+\.js"><\/script>/);
    expect(page).not.toMatch(/<script(?![^>]* src=)/);
    expect(page).not.toMatch(/ on\w+=/);
    expect(page).not.toMatch(/https?:/);
  });
});
