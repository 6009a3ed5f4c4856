import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readClock } from './clock.ts';

const full = 1_000_000;

/**
 * A writer of lines to `outyard.log` in the folder: defects with their ids and slow operations by name, never what
 * the records say. One older file is kept. A log that cannot be written goes to the error stream; it never stops work.
 */
export function logFile(folder: string): (line: string) => void {
  const file = join(folder, 'outyard.log');
  return (line) => {
    const text = `${readClock().stamp} ${line}\n`;
    try {
      mkdirSync(folder, { recursive: true });
      if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > full) renameSync(file, `${file}.1`);
      appendFileSync(file, text);
    } catch {
      process.stderr.write(text);
    }
  };
}
