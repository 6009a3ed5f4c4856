import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Long enough for some 120 MB on a country line; a refused or missing network ends it within seconds by itself. */
const fetchLimit = 300_000;

/** Electron's binary if it lies on this machine: in the folder that `ELECTRON_OVERRIDE_DIST_PATH` names, or fetched earlier. */
export function installedElectron(root: string, environment: Readonly<Record<string, string | undefined>>): string | null {
  const package_ = join(root, 'node_modules', 'electron');
  const named = existsSync(join(package_, 'path.txt')) ? readFileSync(join(package_, 'path.txt'), 'utf8') : null;
  const override = environment['ELECTRON_OVERRIDE_DIST_PATH'];
  const usual = process.platform === 'win32' ? 'electron.exe' : process.platform === 'darwin' ? 'Electron.app/Contents/MacOS/Electron' : 'electron';
  const file = override ? join(override, named ?? usual) : named === null ? null : join(package_, 'dist', named);
  return file !== null && existsSync(file) ? file : null;
}

/** Has Electron's own installer fetch the binary, once. True if it is there afterwards; quiet about why it is not. */
export async function fetchElectron(root: string): Promise<boolean> {
  const installer = join(root, 'node_modules', 'electron', 'install.js');
  if (!existsSync(installer)) return false;
  const child = spawn(process.execPath, [installer], { stdio: 'ignore', timeout: fetchLimit, killSignal: 'SIGKILL' });
  return new Promise((resolve) => {
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0));
  });
}
