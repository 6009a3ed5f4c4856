import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { InlineConfig } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));

export const electronParts = ['main', 'preload', 'keeper', 'planner'] as const;
export type ElectronPart = (typeof electronParts)[number];

/**
 * A release build runs the keeper in Electron's own Node. A trial build can start it with the Node named in
 * `OUTYARD_KEEPER_NODE` instead, for runtimes whose own is too old for SQLite; a release knows nothing of that.
 */
export type ElectronFlavour = 'release' | 'trial';

export function electronFolder(flavour: ElectronFlavour): string {
  return `${root}out/${flavour === 'release' ? 'electron' : 'electron-trial'}`;
}

/** One CommonJS file for each part: main must be that for older runtimes, a sandboxed preload and a forked keeper always. */
export function electronConfig(part: ElectronPart, flavour: ElectronFlavour): InlineConfig {
  return {
    configFile: false,
    root,
    logLevel: 'warn',
    publicDir: false,
    define: { __OUTYARD_EXTERNAL_NODE__: JSON.stringify(flavour === 'trial') },
    ssr: { noExternal: true, external: ['electron', 'better-sqlite3', 'highs'], target: 'node' },
    build: {
      ssr: `${root}electron/${part}/${part}.ts`,
      outDir: electronFolder(flavour),
      emptyOutDir: false,
      target: part === 'keeper' || part === 'planner' ? 'node22' : 'node18',
      minify: false,
      rolldownOptions: {
        external: ['electron', 'better-sqlite3', 'highs', ...builtinModules, /^node:/],
        output: { format: 'cjs', entryFileNames: `${part}.cjs`, codeSplitting: false },
      },
    },
  };
}
