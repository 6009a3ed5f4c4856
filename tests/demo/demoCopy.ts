import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';

type Which = Parameters<typeof demoBook>[0];
const made = new Map<Which, Promise<string>>();

/**
 * Puts the demo's book into a folder, so that asking for it there opens it: a copy of one that the desk's own maker made
 * once in this process. How it is made is tested in `tests/demo/overTheDesk.test.ts` and `tests/desk/desk.test.ts`.
 */
export async function placeDemo(which: Which, folder: string): Promise<void> {
  if (!made.has(which)) made.set(which, make(which));
  const file = await (made.get(which) as Promise<string>);
  const place = join(folder, basename(file));
  // One that is there may be open, and holds what the test did to it.
  if (!existsSync(place)) copyFileSync(file, place);
}

async function make(which: Which): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'outyard-demo-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const demo = demoBook(which, folder);
  await (await openDemo(demo)).store.close();
  return demo.path;
}
