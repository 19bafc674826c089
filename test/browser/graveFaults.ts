import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What axe finds serious or critical on a page, one line each, and how far it runs over sideways. [px]
 * The pages hold no frames, so axe need not open a page of its own for them: half the time.
 */
export async function graveFaults(page: Page): Promise<{ faults: string[]; sidewaysPx: number }> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .options({ resultTypes: ['violations'] })
    .analyze();
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  return {
    faults: grave.map(({ id, nodes }) => `${id}: ${nodes[0].html}`),
    sidewaysPx: await sidewaysPx(page),
  };
}

/** How far a page runs over sideways. [px] */
export const sidewaysPx = (page: Page): Promise<number> =>
  page.evaluate(() => Math.max(0, document.documentElement.scrollWidth - window.innerWidth));
