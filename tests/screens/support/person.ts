import type { Page } from 'playwright-core';

/** The rail's screens, by the names people see. */
export type ScreenName = 'Tonight' | 'Yards' | 'Colonies' | 'Family lines' | 'Losses' | 'Honey' | 'Stock and orders' | 'Book';

/** Goes to a screen by the rail. */
export async function goTo(page: Page, screen: ScreenName): Promise<void> {
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: screen }).click();
}

/** Starts an empty book from the start page. */
export async function startBook(page: Page, name: string): Promise<void> {
  const section = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Start a book' }) });
  await section.getByLabel('Name of the operation').fill(name);
  await section.getByRole('button', { name: 'Start the book' }).click();
  await page.getByRole('heading', { name: 'Book', level: 1 }).waitFor();
}

/** The message after saving. */
export function notice(page: Page) {
  return page.locator('.notice-place [role=status]');
}

/** Takes back what the message after saving names. */
export async function undoByNotice(page: Page): Promise<void> {
  await page.locator('.notice-place').getByRole('button', { name: 'Undo' }).click();
}

/** Chooses a file of records on the Book screen and waits for what is found in it. */
export async function chooseRecords(page: Page, file: { name: string; text: string | Buffer } | string): Promise<void> {
  const chosen = typeof file === 'string' ? file : { name: file.name, mimeType: 'text/csv', buffer: Buffer.from(file.text) };
  const picker = page.getByLabel('File of records');
  // As a click on it does, so that the same file can be chosen again.
  await picker.setInputFiles([]);
  await picker.setInputFiles(chosen);
}

/** What a control, or its row, says, with the spaces that do not break read as plain ones. */
export async function words(of: { innerText(): Promise<string> }): Promise<string> {
  return (await of.innerText()).replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim();
}
