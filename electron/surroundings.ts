import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import type { Surroundings } from './folders.ts';

/** The surroundings of this process. */
export function surroundings(): Surroundings {
  const home = homedir();
  const documents = join(home, 'Documents');
  return {
    environment: process.env,
    platform: process.platform,
    home,
    documents: existsSync(documents) ? documents : null,
  };
}
