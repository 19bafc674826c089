import { readdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { expectGood } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const running = served();

/** The notebooks of the project: one file each. */
const NAMES = readdirSync(new URL('../../notebooks/', import.meta.url))
  .filter((name) => /^[a-z]+-[a-z]+\.ts$/.test(name))
  .map((name) => name.replace('.ts', ''));

/** A phone, and a desk. [px] */
const WIDTHS = [360, 1280];

/** What a page of a notebook promises and shows at the width it has. */
const lookAt = (page: Page) =>
  page.evaluate(() => {
    const cells = [...document.querySelectorAll<HTMLElement>('[data-cell]')];
    const isDrawn = (cell: HTMLElement) => {
      const { width, height } = cell.getBoundingClientRect();
      if (width === 0 || height === 0) return false;
      if (cell.dataset.cell === 'table') return cell.querySelectorAll('tbody td').length > 0;
      if (cell.dataset.cell === 'words') return (cell.textContent ?? '').trim().length > 0;
      // A drawing has marks of its own, and its figure text stands in the page's font.
      const marks = [...cell.querySelectorAll<SVGGraphicsElement>('svg path, svg text')];
      return marks.filter((mark) => mark.getBoundingClientRect().height > 0).length > 5;
    };
    return {
      promised: Number(document.querySelector<HTMLElement>('#cells')?.dataset.cells),
      cells: cells.length,
      empty: cells.filter((cell) => !isDrawn(cell)).map((cell) => cell.innerText.slice(0, 60)),
      styled: getComputedStyle(document.body).fontFamily.includes('Atkinson'),
      sidewaysPx: document.documentElement.scrollWidth - window.innerWidth,
    };
  });

it('every cell of every notebook is drawn under the server’s own policy', async () => {
  const { browser, server } = running;
  const { page, complaints } = await openPage(browser, server.address, {
    path: 'notebooks/index.html',
    waitFor: 'notebooks',
  });
  const links = await page
    .locator('main a')
    .evaluateAll((all) => all.map((one) => (one as HTMLAnchorElement).href));
  expect(NAMES.length).toBeGreaterThanOrEqual(6);
  expect(links.toSorted()).toEqual(NAMES.map((name) => `${server.address}notebooks/${name}.html`).toSorted());
  for (const link of links) {
    const response = await page.goto(link, { waitUntil: 'load' });
    expect(response?.headers()['content-security-policy'], link).toContain("default-src 'self'");
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 800 });
      const drawn = await lookAt(page);
      expect(drawn.cells, `${link} at ${width} px`).toBe(drawn.promised);
      expect(drawn.cells, `${link} at ${width} px`).toBeGreaterThan(1);
      expect(drawn.empty, `${link} at ${width} px`).toEqual([]);
      expect(drawn.styled, `${link} at ${width} px`).toBe(true);
      expect(drawn.sidewaysPx, `${link} at ${width} px`).toBeLessThanOrEqual(0);
    }
  }
  await page.goto(`${server.address}notebooks/honest-odds.html`);
  await expectGood(page);
  await page.setViewportSize({ width: 390, height: 800 });
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectGood(page);
  expect(complaints).toEqual([]);
  await page.context().close();
});
