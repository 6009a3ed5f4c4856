import { spawn } from 'node:child_process';
import type { Readable } from 'node:stream';

export interface Display {
  /** As in `DISPLAY`. */
  readonly name: string;
  close(): void;
}

/** A screen of its own without a monitor (Xvfb), or null where there is none to be had. */
export async function openDisplay(): Promise<Display | null> {
  // Left to itself it begins anew whenever its last client goes, and throws out whoever is just coming.
  const child = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1400x900x24', '-nolisten', 'tcp', '-noreset'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const number = await new Promise<string | null>((resolve) => {
    child.on('error', () => resolve(null));
    child.on('exit', () => resolve(null));
    (child.stdio[3] as Readable).on('data', (data: Buffer) => resolve(data.toString().trim()));
  });
  return number === null ? null : { name: `:${number}`, close: () => void child.kill() };
}
