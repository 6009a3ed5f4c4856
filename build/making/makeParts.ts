import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { electronConfig, electronFolder, electronParts, type ElectronFlavour } from '../vite.electron.ts';
import rendererConfig from '../vite.renderer.ts';
import { digestOf, isFresh, keepStamp } from './inputs.ts';
import { withLock } from './lock.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url));
/** Where the built pages lie. */
export const pagesFolder = join(root, 'out', 'renderer');

/** What can be made: the pages, the program that ships, and the one for trying it on older runtimes. */
export const parts = ['renderer', 'electron', 'electron-trial'] as const;
export type Part = (typeof parts)[number];

const common = ['package.json', 'package-lock.json', 'shared', 'build/making', 'build/vite.renderer.ts', 'build/vite.electron.ts'];
const inputs: Readonly<Record<Part, readonly string[]>> = {
  renderer: [...common, 'renderer'],
  electron: [...common, 'core', 'electron'],
  'electron-trial': [...common, 'core', 'electron'],
};

/** Makes the parts that are not up to date with the sources, or with `always` all that are named. Two processes may ask at once. */
export async function makeParts(wanted: readonly Part[], options: { always?: boolean; say?: (line: string) => void } = {}): Promise<void> {
  await withLock(join(root, 'out', '.making'), async () => {
    for (const part of wanted) {
      const stamp = join(root, 'out', `.made-${part}`);
      // Taken before the work, so that what is changed meanwhile counts as new.
      const digest = digestOf(root, inputs[part]);
      if (!options.always && isFresh(stamp, madeBy(part), digest)) continue;
      options.say?.(`Making ${part} …`);
      rmSync(stamp, { force: true });
      await asProduction(() => makePart(part));
      keepStamp(stamp, digest);
    }
  });
}

async function makePart(part: Part): Promise<void> {
  if (part === 'renderer') await build({ ...rendererConfig, configFile: false, logLevel: 'warn' });
  else await makeElectron(part === 'electron' ? 'release' : 'trial');
}

/** Whoever asks (a test runner says "test" there), what is made is what ships: React's development build is not. */
async function asProduction(work: () => Promise<void>): Promise<void> {
  const kept = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    await work();
  } finally {
    if (kept === undefined) delete process.env['NODE_ENV'];
    else process.env['NODE_ENV'] = kept;
  }
}

async function makeElectron(flavour: ElectronFlavour): Promise<void> {
  rmSync(electronFolder(flavour), { recursive: true, force: true });
  for (const part of electronParts) await build(electronConfig(part, flavour));
}

function madeBy(part: Part): string[] {
  if (part === 'renderer') return [join(pagesFolder, 'index.html')];
  return electronParts.map((name) => join(root, 'out', part, `${name}.cjs`));
}
