import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';

type Which = Parameters<typeof demoBook>[0];
interface Made {
  readonly name: string;
  readonly bytes: Buffer;
}
const made = new Map<Which, Promise<Made>>();

/**
 * Puts the demo's book into a folder, so that asking for it there opens it: a copy of one that the desk's own maker made
 * once in this process. How it is made is tested in `tests/demo/overTheDesk.test.ts` and `tests/desk/desk.test.ts`.
 */
export async function placeDemo(which: Which, folder: string): Promise<void> {
  if (!made.has(which)) made.set(which, make(which));
  const { name, bytes } = await (made.get(which) as Promise<Made>);
  const place = join(folder, name);
  // One that is there may be open, and holds what the test did to it.
  if (!existsSync(place)) writeFileSync(place, bytes);
}

async function make(which: Which): Promise<Made> {
  const folder = mkdtempSync(join(tmpdir(), 'outyard-demo-'));
  try {
    const demo = demoBook(which, folder);
    await (await openDemo(demo)).store.close();
    return { name: basename(demo.path), bytes: readFileSync(demo.path) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
