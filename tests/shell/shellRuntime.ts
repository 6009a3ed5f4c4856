import { accessSync, constants, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '#build/making/makeParts.ts';
import { installedElectron } from '#build/starting/findElectron.ts';
import packageJson from '../../package.json' with { type: 'json' };

/** An Electron that the shell can be tried in. */
export interface ShellRuntime {
  readonly electron: string;
  readonly version: string;
  /** `trial`: an older one, whose keeper runs in this Node; `release`: the pinned one, as it ships. */
  readonly flavour: 'trial' | 'release';
  /** Makes it find the built program, and gives the arguments that start it. */
  install(): string[];
  /** Leaves the runtime as it was. */
  remove(): void;
}

/** The folder that `OUTYARD_TRIAL_ELECTRON` names, else the pinned Electron if its binary is here, else null. */
export function shellRuntime(): ShellRuntime | null {
  const folder = process.env['OUTYARD_TRIAL_ELECTRON'];
  if (folder) {
    const electron = join(folder, 'electron');
    if (!canRun(electron)) throw new Error('OUTYARD_TRIAL_ELECTRON names a folder without a program “electron” in it; correct it or leave it out.');
    const version = existsSync(join(folder, 'version')) ? readFileSync(join(folder, 'version'), 'utf8').trim() : 'unknown';
    const app = join(folder, 'resources', 'app');
    return { electron, version, flavour: 'trial', install: () => installInto(app), remove: () => rmSync(app, { recursive: true, force: true }) };
  }
  const electron = installedElectron(root, process.env);
  return electron === null
    ? null
    : { electron, version: packageJson.devDependencies.electron, flavour: 'release', install: () => [root], remove: () => undefined };
}

function canRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The trial runtime has no program of its own and starts what lies in resources/app. */
function installInto(app: string): string[] {
  rmSync(app, { recursive: true, force: true });
  mkdirSync(app, { recursive: true });
  writeFileSync(join(app, 'package.json'), JSON.stringify({ name: 'outyard', version: packageJson.version, main: 'electron/main.cjs' }));
  symlinkSync(join(root, 'out', 'electron-trial'), join(app, 'electron'));
  return [];
}
