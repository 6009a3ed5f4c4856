import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

const leftOut = new Set(['node_modules', 'out', '.git']);

/**
 * Every file of the house that is or would be committed, as sorted paths from the root with `/`.
 * Git says which they are; a folder that is no clone (an unpacked archive, a test's scratch folder) is walked instead.
 */
export function houseFiles(root: string): string[] {
  if (!existsSync(join(root, '.git'))) return walk(root, '').sort();
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  const files = listed.split('\0').filter((file) => file !== '' && existsSync(join(root, file)));
  return [...new Set(files)].sort();
}

function walk(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((item) => {
    if (leftOut.has(item.name)) return [];
    const path = folder === '' ? item.name : `${folder}/${item.name}`;
    return item.isDirectory() ? walk(root, path) : [path];
  });
}

const codeEnding = /\.(?:ts|tsx|cts|mts|js|cjs|mjs)$/;

export function isCode(file: string): boolean {
  return codeEnding.test(file);
}
