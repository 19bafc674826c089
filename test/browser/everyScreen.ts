import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { graveFaults, sidewaysPx } from './graveFaults.ts';

/** Desk, tablet and phone in both themes. */
const SCREENS = [
  [1280, false],
  [1280, true],
  [768, true],
  [768, false],
  [360, false],
  [360, true],
] as const;

/** The narrowest screen: nothing may run over its side. [px] */
const NARROWEST_PX = 320;

/** What a value that is not there leaves in a text that forgot to ask. */
const UNSAID = /\bundefined\b|\bNaN\b|\[object |\bnull\b/;

/** Expects that axe finds nothing serious on an open page and that nothing runs over sideways, once it has come to rest. */
export async function expectGood(page: Page, message = page.url()): Promise<void> {
  await expect
    .poll(() => graveFaults(page), { timeout: 60_000, interval: 300, message })
    .toEqual({ faults: [], sidewaysPx: 0 });
}

/**
 * Expects that axe finds nothing serious on an open page and that nothing runs over sideways, on each screen in turn.
 * @param picture folder and beginning of the name under which each screen is kept as a picture
 */
export async function expectGoodOnEveryScreen(page: Page, picture: readonly [string, string]): Promise<void> {
  const [folder, name] = picture;
  for (const [width, dark] of SCREENS) {
    const screen = `${width}-${dark ? 'dark' : 'light'}`;
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light' });
    await page.waitForLoadState('networkidle');
    await expectGood(page, `${name}, ${screen}`);
    expect(await page.locator('body').innerText(), `${name}, ${screen}`).not.toMatch(UNSAID);
    await page.screenshot({ path: join(folder, `${name}-${screen}.png`), fullPage: true });
  }
  await page.setViewportSize({ width: NARROWEST_PX, height: 800 });
  await expect.poll(() => sidewaysPx(page), { message: `${name}, ${NARROWEST_PX} px` }).toBe(0);
}
