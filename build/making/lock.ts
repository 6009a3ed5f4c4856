import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** Runs `work` while no other process of this machine does so under the same file. A lock whose owner is gone is taken over. */
export async function withLock<Result>(file: string, work: () => Promise<Result>): Promise<Result> {
  mkdirSync(dirname(file), { recursive: true });
  while (!take(file)) await wait(100);
  try {
    return await work();
  } finally {
    rmSync(file, { force: true });
  }
}

function take(file: string): boolean {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    if (ownerIsGone(file)) rmSync(file, { force: true });
    return false;
  }
}

function ownerIsGone(file: string): boolean {
  try {
    const owner = Number(readFileSync(file, 'utf8'));
    // Empty for an instant between being made and being written.
    if (!Number.isInteger(owner) || owner <= 0) return false;
    process.kill(owner, 0);
    return false;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ESRCH';
  }
}
