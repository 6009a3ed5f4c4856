import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A digest of the names, sizes and times of all files below the given places: it changes when anything there does. */
export function digestOf(root: string, places: readonly string[]): string {
  const hash = createHash('sha256');
  const visit = (place: string) => {
    const about = statSync(join(root, place), { throwIfNoEntry: false });
    if (about === undefined) return;
    if (about.isDirectory()) {
      for (const name of readdirSync(join(root, place)).toSorted()) visit(`${place}/${name}`);
    } else {
      hash.update(`${place} ${about.size} ${about.mtimeMs}\n`);
    }
  };
  for (const place of places) visit(place);
  return hash.digest('hex');
}

/** Whether what was made still stands and was made from inputs of this digest. */
export function isFresh(stamp: string, made: readonly string[], digest: string): boolean {
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === digest && made.every((file) => existsSync(file));
}

export function keepStamp(stamp: string, digest: string): void {
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, digest);
}
