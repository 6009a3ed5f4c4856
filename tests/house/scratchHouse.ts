import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

const packageFile = JSON.stringify({
  imports: { '#core/*': './core/*', '#shared/*': './shared/*', '#electron/*': './electron/*', '#tests/*': './tests/*' },
  dependencies: { zod: '1.0.0', 'better-sqlite3': '1.0.0', kysely: '1.0.0' },
  devDependencies: { react: '1.0.0', electron: '1.0.0', vite: '1.0.0' },
  scripts: { test: 'true', start: 'true', check: 'true' },
});

/** A small sound house that the faults are planted into: one file in every layer and kind of room. */
const soundFiles: Readonly<Record<string, string>> = {
  'package.json': packageFile,
  'shared/days.ts': `import { z } from 'zod';\nexport const day = z.string();\n`,
  'core/losses/rate.ts': `import { day } from '#shared/days.ts';\nexport const rate = (lost: number, of: number) => [lost / of, day];\n`,
  'core/losses/words.ts': `import { rate } from './rate.ts';\nexport const words = () => String(Math.round(Number(rate(1, 2)[0])));\n`,
  'core/book/store.ts': `import { readFileSync } from 'node:fs';\nimport type { Kysely } from 'kysely';\nimport Database from 'better-sqlite3';\nexport const open = (file: string, at = Date.now()) => [readFileSync(file), new Database(file), at as unknown as Kysely<object>];\n`,
  'core/desk/desk.ts': `import { open } from '../book/store.ts';\nimport { rate } from '#core/losses/rate.ts';\nexport const desk = () => [open, rate, process.pid];\n`,
  'electron/main/main.ts': `import { app } from 'electron';\nimport { join } from 'node:path';\nimport { desk } from '#core/desk/desk.ts';\nexport const start = () => [app, join, desk];\n`,
  'electron/preload/preload.ts': `import { contextBridge } from 'electron';\nimport { day } from '#shared/days.ts';\nexport const bridge = [contextBridge, day];\n`,
  'renderer/screens/Losses.tsx': `import { useState } from 'react';\nimport { day } from '#shared/days.ts';\nimport './losses.css';\nexport const Losses = () => <p>{String(useState(day))}</p>;\n`,
  'renderer/screens/losses.css': `p { margin: 0; }\n`,
  'tests/losses/rate.test.ts': `import { rate } from '#core/losses/rate.ts';\nimport { open } from '#core/book/store.ts';\nimport { Losses } from '../../renderer/screens/Losses.tsx';\nimport { readFileSync } from 'node:fs';\nexport const all = [rate, open, Losses, readFileSync, Date.now(), Math.random()];\n`,
  'build/start.ts': `import { build } from 'vite';\nimport { start } from '#electron/main/main.ts';\nexport const run = () => [build, start, import(String(start))];\n`,
};

/** Writes the sound house, with the given files laid over it, into a scratch folder that goes when the test ends. */
export function scratchHouse(files: Readonly<Record<string, string>> = {}): string {
  const root = mkdtempSync(join(tmpdir(), 'outyard-house-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const [file, text] of Object.entries({ ...soundFiles, ...files })) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  }
  return root;
}
