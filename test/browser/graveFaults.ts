import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** What axe finds serious or critical on a page, one line each, and how far it runs over sideways. [px] */
export async function graveFaults(page: Page): Promise<{ faults: string[]; sidewaysPx: number }> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  return {
    faults: grave.map(({ id, nodes }) => `${id}: ${nodes[0].html}`),
    sidewaysPx: Math.max(
      0,
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ),
  };
}
