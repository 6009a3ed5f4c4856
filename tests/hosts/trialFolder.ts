import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A fresh folder for books and everything else of one run; `remove` takes it away. */
export function trialFolder(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'outyard-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
