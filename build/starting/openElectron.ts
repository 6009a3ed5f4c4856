import { spawn } from 'node:child_process';
import { rootFlags } from './windowChoice.ts';

/** A window that fails does so at once (a library missing, no display); one that has stood this long was really there. */
const failsWithin = 8000;

/**
 * Runs the program in Electron until its window is closed. False if it failed at the start, so that another way can
 * be tried.
 */
export function runElectron(electron: string, root: string): Promise<boolean> {
  const started = Date.now();
  const child = spawn(electron, [root, ...rootFlags(process.getuid?.())], { stdio: 'inherit' });
  return new Promise((resolve) => {
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0 || Date.now() - started > failsWithin));
  });
}
