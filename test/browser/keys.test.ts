import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const running = served();
const open = (path: string, waitFor: string) =>
  openPage(running.browser, running.server.address, { path, waitFor });
const plain = (text: string) => text.replace(/\s+/g, ' ').trim();
const sentence = async (page: Page) => plain(await page.getByTestId('sentence').innerText());

/** Stops of the Tab key after which a thing counts as out of reach. */
const FAR = 120;

/** Goes on by the Tab key until what matches a selector has the focus; the focus must be seen at every stop. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let stop = 0; stop < FAR; stop++) {
    await page.keyboard.press('Tab');
    const { there, seen, name } = await page.evaluate((wanted) => {
      const at = document.activeElement as HTMLElement;
      const box = at.getBoundingClientRect();
      // A blank’s frame bears the ring for what it holds.
      const style = getComputedStyle(at.closest('.frame') ?? at);
      return {
        name: at.outerHTML.slice(0, 120),
        there: at.matches(wanted),
        // The slider draws the ring around its grip.
        seen:
          at === document.body ||
          at.matches('.strip-slider') ||
          (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2 && box.width > 0),
      };
    }, selector);
    expect(seen, `the focus on ${name}, on the way to ${selector}`).toBe(true);
    if (there) return;
  }
  throw new Error(`${selector} is out of reach of the Tab key.`);
}

/** Types into the blank that has the focus, in place of what stood there, and takes it over. */
async function write(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

describe('by keyboard alone', () => {
  it('residuals are set side by side, sorted, ticked, laid over each other and followed', async () => {
    const { page, complaints } = await open('compare', 'compare-table');
    await tabTo(page, '[data-testid="plant-on"]');
    await write(page, 'June 1 2027');
    await expect.poll(() => sentence(page)).toContain('before lentil planted June 1, 2027');
    await tabTo(page, 'th[aria-sort] .sorter, th:nth-child(4) .sorter');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toContain('sort=weeks');
    const boxes = 'input[type="checkbox"][aria-label^="Season of"], .compare-table input[type="checkbox"]';
    await tabTo(page, boxes);
    const name = await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
    const was = await page.evaluate(() => (document.activeElement as HTMLInputElement).checked);
    await page.keyboard.press('Space');
    await expect.poll(() => page.getByLabel(name, { exact: true }).isChecked()).toBe(!was);
    await expect.poll(() => page.url()).toContain('over=');
    await tabTo(page, '.compare-table tbody th a');
    const residual = await page.evaluate(() => document.activeElement?.textContent ?? '');
    await page.keyboard.press('Enter');
    await expect.poll(() => sentence(page)).toContain(`${residual} sprayed August 14, 2026`);
    expect(await sentence(page)).toContain('June 1, 2027');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('a region is asked, looked at in another way, gone through and left for one of its stations', async () => {
    const { page, complaints } = await open('region', 'region-table');
    await tabTo(page, '[data-testid="plant-on"]');
    await write(page, 'June 1 2027');
    await expect.poll(() => sentence(page)).toContain('planted June 1, 2027');
    await page.getByTestId('region-progress').waitFor({ state: 'detached' });
    await tabTo(page, '[data-testid="show-warm"]');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toContain('show=warm');
    await tabTo(page, '[data-testid="region-map"]');
    await page.keyboard.press('ArrowDown');
    await tabTo(page, '[data-testid="region-table"] tbody button');
    await page.keyboard.press('Enter');
    await page.getByTestId('station-numbers').waitFor();
    for (let back = 0; back < FAR; back++) {
      await page.keyboard.press('Shift+Tab');
      if (await page.evaluate(() => document.activeElement?.matches('[data-testid="station-numbers"] a')))
        break;
    }
    await page.keyboard.press('Enter');
    await expect.poll(() => sentence(page)).toContain('lentil planted June 1');
    expect(new URL(page.url()).pathname).toBe('/');
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
