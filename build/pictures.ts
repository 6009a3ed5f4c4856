import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { goTo, type ScreenName } from '#tests/screens/support/person.ts';
import { quitBrowser } from '#tests/screens/support/browser.ts';
import { openWindow } from '#tests/screens/support/window.ts';
import { root } from './making/makeParts.ts';

// Takes the documents' pictures from the real program with the demo book: node build/pictures.ts [FOLDER]
// Without a folder they go where the documents look for them.
const folder = process.argv[2] ?? join(root, 'build', 'pictures');

interface Picture {
  readonly file: string;
  readonly screen: ScreenName;
  readonly scheme: 'light' | 'dark';
  /** What a person would do there first. */
  readonly first?: (page: Page) => Promise<unknown>;
}

const pictures: readonly Picture[] = [
  {
    file: 'losses.png',
    screen: 'Losses',
    scheme: 'light',
    first: async (page) => {
      await page.locator('label', { hasText: /^Season/ }).locator('select').selectOption({ label: '2025–26' });
      await page.getByRole('button', { name: 'What was lost' }).click();
      await page.getByRole('heading', { name: 'Winter loss by yard' }).waitFor();
      await page.getByRole('button', { name: 'What was lost' }).click();
    },
  },
];

mkdirSync(folder, { recursive: true });
for (const { file, screen, scheme, first } of pictures) {
  const window = await openWindow({ scheme, first: async (desk) => void (await desk('book.demo', { which: 'ossar' })) });
  await goTo(window.page, screen);
  await first?.(window.page);
  await window.page.waitForLoadState('networkidle');
  await window.page.evaluate(() => document.fonts.ready.then(() => undefined));
  await window.page.screenshot({ path: join(folder, file) });
  await window.close();
}
await quitBrowser();
