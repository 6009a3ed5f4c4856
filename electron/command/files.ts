import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { CommandError } from './verb.ts';

/** What one file may hold, as on the screen: 64 MiB. */
const largest = 64 * 1024 * 1024;

/** A path as the person meant it: npm runs scripts in the program's folder and tells where they were. */
export function pathOf(given: string): string {
  const from = process.env['npm_lifecycle_event'] === 'outyard' ? process.env['INIT_CWD'] : undefined;
  return resolve(from ?? process.cwd(), given);
}

/** The file's bytes, or a sentence about why there are none. */
export function readBytes(given: string): Uint8Array<ArrayBuffer> {
  const path = pathOf(given);
  try {
    const about = statSync(path);
    if (about.isDirectory()) throw new CommandError(`${given} is a folder.`, 'Name the CSV file in it.');
    if (about.size > largest) {
      throw new CommandError(`${given} is larger than the 64 MiB that are read at once.`, 'Split it and import the parts one after another.');
    }
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    if (error instanceof CommandError) throw error;
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new CommandError(`There is no file ${given}.`, `Looked for ${path}.`);
    if (code === 'EACCES' || code === 'EPERM') throw new CommandError(`${given} may not be read.`, 'Give yourself the right to read it.');
    throw new CommandError(`${given} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}
