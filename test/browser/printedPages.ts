import type { Page } from 'playwright-core';

/** Room inside margins of 15 mm. [mm] */
const ROOM = { Letter: { width: 185.9, height: 249.4 }, A4: { width: 180, height: 267 } } as const;
const PX_PER_MM = 96 / 25.4;

/** What a page comes to on paper. */
export interface Printed {
  readonly pages: number;
  /** Right end of the widest thing, against the room that there is. [px] */
  readonly widestPx: number;
  readonly roomPx: number;
  /** Whether the cautions end on the first page. */
  readonly firstPage: boolean;
}

/** Prints a page and measures it in its print style at the width of the paper. */
export async function printedPages(page: Page, format: 'Letter' | 'A4'): Promise<Printed> {
  const size = page.viewportSize();
  const { width, height } = ROOM[format];
  const margin = { top: '15mm', bottom: '15mm', left: '15mm', right: '15mm' };
  const pdf = await page.pdf({ format, margin, printBackground: false });
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({
    width: Math.floor(width * PX_PER_MM),
    height: Math.floor(height * PX_PER_MM),
  });
  const measured = await page.evaluate((pagePx) => {
    const boxes = [...document.querySelectorAll('main *')]
      .filter((element) => !element.closest('.unseen, svg'))
      .map((element) => element.getBoundingClientRect().right);
    const cautions = document.querySelector('[data-testid="cautions"]') as HTMLElement;
    return {
      widestPx: Math.floor(Math.max(...boxes)),
      roomPx: window.innerWidth,
      firstPage: cautions.getBoundingClientRect().bottom + window.scrollY <= pagePx,
    };
  }, height * PX_PER_MM);
  await page.emulateMedia({ media: null });
  if (size) await page.setViewportSize(size);
  return { pages: pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0, ...measured };
}

/** What stands out beyond the right margin of a page on paper, the first few by tag and class. */
export async function beyondPaper(page: Page, format: 'Letter' | 'A4'): Promise<string[]> {
  const size = page.viewportSize();
  const { width, height } = ROOM[format];
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({
    width: Math.floor(width * PX_PER_MM),
    height: Math.floor(height * PX_PER_MM),
  });
  const over = await page.evaluate(() =>
    [...document.querySelectorAll('body *')]
      .filter((element) => !element.closest('.unseen, svg'))
      .filter((element) => Math.floor(element.getBoundingClientRect().right) > window.innerWidth)
      .map(({ tagName, className }) => `${tagName.toLowerCase()}.${className}`),
  );
  await page.emulateMedia({ media: null });
  if (size) await page.setViewportSize(size);
  return over.slice(0, 5);
}
