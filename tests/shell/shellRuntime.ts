import { accessSync, constants, copyFileSync, existsSync, linkSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '#build/making/makeParts.ts';
import { installedElectron } from '#build/starting/findElectron.ts';
import packageJson from '../../package.json' with { type: 'json' };

/** An Electron that the shell can be tried in. */
export interface ShellRuntime {
  readonly version: string;
  /** `trial`: an older one, whose keeper runs in this Node; `release`: the pinned one, as it ships. */
  readonly flavour: 'trial' | 'release';
  /** Makes it find the built program. Answers what to start, with which arguments, and how to put it away. */
  install(): InstalledShell;
}

export interface InstalledShell {
  readonly electron: string;
  readonly args: readonly string[];
  remove(): void;
}

/** The folder that `OUTYARD_TRIAL_ELECTRON` names, else the pinned Electron if its binary is here, else null. */
export function shellRuntime(): ShellRuntime | null {
  const folder = process.env['OUTYARD_TRIAL_ELECTRON'];
  if (folder) {
    const electron = join(folder, 'electron');
    if (!canRun(electron)) throw new Error('OUTYARD_TRIAL_ELECTRON names a folder without a program “electron” in it; correct it or leave it out.');
    const version = existsSync(join(folder, 'version')) ? readFileSync(join(folder, 'version'), 'utf8').trim() : 'unknown';
    return { version, flavour: 'trial', install: () => ownRuntime(folder) };
  }
  const electron = installedElectron(root, process.env);
  return electron === null
    ? null
    : { version: packageJson.devDependencies.electron, flavour: 'release', install: () => ({ electron, args: [root], remove: () => undefined }) };
}

function canRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The trial runtime starts what lies in its own resources/app, and the folder that was named may serve several runs at
 * once. A program that is missing or changes at that moment leaves Electron standing behind a dialog for ever; so each
 * run has a runtime of its own: the program file under a name of its own (where a file is really linked, that name is
 * the place it looks from), everything else by links.
 */
function ownRuntime(folder: string): InstalledShell {
  const own = mkdtempSync(join(tmpdir(), 'outyard-electron-'));
  const electron = join(own, 'electron');
  for (const name of readdirSync(folder)) if (name !== 'electron' && name !== 'resources') symlinkSync(join(folder, name), join(own, name));
  try {
    linkSync(join(folder, 'electron'), electron);
  } catch {
    // On another disk.
    copyFileSync(join(folder, 'electron'), electron);
  }
  const app = join(own, 'resources', 'app');
  mkdirSync(app, { recursive: true });
  writeFileSync(join(app, 'package.json'), JSON.stringify({ name: 'outyard', version: packageJson.version, main: 'electron/main.cjs' }));
  symlinkSync(join(root, 'out', 'electron-trial'), join(app, 'electron'));
  return { electron, args: [], remove: () => rmSync(own, { recursive: true, force: true }) };
}
