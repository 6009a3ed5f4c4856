import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions, run } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const aboutColour = ['color-contrast', 'link-in-text-block'];

/**
 * No serious or critical fault of access on the page as it stands, on light and on dark paper. Dark paper is the same
 * page in other colours (no script and no rule but colours asks for the scheme), so there the rules about colour are
 * asked again, and those about names, roles and order once.
 */
export async function expectAccessible(page: Page): Promise<void> {
  // What looks at the page alone sees all of a page that has no frames in it.
  expect(page.frames()).toHaveLength(1);
  // What still waits for its answer is paler than what is to be read.
  await page.locator('[aria-busy=true]').first().waitFor({ state: 'detached' });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await faultsOf(page, colorScheme === 'light' ? {} : { runOnly: { type: 'rule', values: aboutColour } });
    const grave = violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`));
    expect(grave, `on ${colorScheme} paper`).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: null });
}

/** The checker is put into a page once; putting it there takes nearly as long as a look. */
async function faultsOf(page: Page, options: RunOptions): Promise<Pick<AxeResults, 'violations'>> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return page.evaluate(async (asked) => {
    const { axe } = window as unknown as { axe: { run: typeof run } };
    const { violations } = await axe.run(document, asked);
    return { violations };
  }, { ...options, resultTypes: ['violations'] } satisfies RunOptions);
}
