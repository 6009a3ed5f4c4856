import { makeParts, pagesFolder } from '../../build/making/makeParts.ts';
import { findBrowser } from '../../build/testing/findBrowser.ts';

let made: Promise<void> | undefined;

/** Folder of the pages, made from the sources as they are when the first window of a file asks. */
export async function builtPages(): Promise<string> {
  await (made ??= makeParts(['renderer']));
  return pagesFolder;
}

/** The browser's program. Throws with a sentence when there is none: a screen test is never left out in silence. */
export function browserProgram(): string {
  const found = findBrowser();
  if (found === null) throw new Error('There is no Chromium-family browser here. Install one, or name it in OUTYARD_CHROMIUM.');
  return found;
}
