import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * No serious or critical fault of access on the page as it stands, on light and on dark paper. Dark paper is the same
 * page in other colours (no script and no rule but colours asks for the scheme), so there the rules about colour are
 * asked again, and those about names, roles and order once.
 */
export async function expectAccessible(page: Page): Promise<void> {
  // What looks at the page alone, in one go, sees all of a page that has no frames in it.
  expect(page.frames()).toHaveLength(1);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const rules = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true);
    const { violations } = await (colorScheme === 'light' ? rules : rules.withRules(['color-contrast', 'link-in-text-block'])).analyze();
    const grave = violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`));
    expect(grave, `on ${colorScheme} paper`).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: null });
}
