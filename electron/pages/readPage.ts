import { readFile, realpath } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { pageFile } from './pageFile.ts';

export interface Page {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The page's bytes, or null when the path names no file inside the folder (links that lead out of it included). */
export async function readPage(folder: string, path: string): Promise<Page | null> {
  const found = pageFile(path);
  if (found === null) return null;
  try {
    const root = await realpath(folder);
    const file = await realpath(join(root, ...found.parts));
    if (!file.startsWith(root + sep)) return null;
    return { type: found.type, bytes: new Uint8Array(await readFile(file)) };
  } catch (error) {
    if (isAbsence(error)) return null;
    throw error;
  }
}

function isAbsence(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR';
}
