import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { readPdf } from './readPdf.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();

const DEMO =
  'sheet?v=1&residual=flumioxazin&appliedOn=2026-08-14&crop=lentil&plantOn=2027-05-10&soilClass=loam&station=demo-invented&asOf=2026-09-30';
const CONFIRMED = `${DEMO}&interval=4+months`;
/** A question with more to be said than any other: a mix, evidence, irrigation, leaves, a long list of cautions. */
const FULL =
  'sheet?v=1&residual=chlorsulfuron&appliedOn=2026-08-14&rateFraction=0.8&crop=radish+%2B+pea&plantOn=2027-05-10&soilClass=loam&station=demo-invented&interval=9+months&soilPh=8.1&overlapFactor=1.5&canopyFraction=0.3&asOf=2026-09-30&standUse=grazed&irrigation=2026-09-01:20&evidence=soil-test:2026-09-20:share=0.3,bioassay:2026-09-29:hurt&halfLifeDays=60';

const open = (path: string, waitFor: string, options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor, ...options });

/** Waits for the sheet’s drawings: one, and another for paper where the screen is narrow. */
async function drawn(page: Page) {
  const sheet = page.getByTestId('handout');
  await sheet.waitFor();
  await expect
    .poll(async () => {
      const [rooms, drawings] = [sheet.locator('.drawing'), sheet.locator('.drawing svg')];
      return (await rooms.count()) > 0 && (await rooms.count()) === (await drawings.count());
    })
    .toBe(true);
}

/** Prints as a browser does with usual margins, once the drawing is there. */
async function printed(page: Page, format: 'Letter' | 'A4', name: string) {
  const side = '15mm';
  const margin = { top: side, bottom: side, left: side, right: side };
  const file = await page.pdf({ format, margin });
  writeFileSync(`${output}${name}-${format}.pdf`, file);
  const { pages, text } = readPdf(file);
  return { pages, text: text.replace(/\s+/g, ' ') };
}

describe('the sheet for the grower', () => {
  it('does not print before its interval is confirmed, then does with one tap', async () => {
    const { page, complaints } = await open(DEMO, 'unconfirmed');
    const refused = await printed(page, 'Letter', 'sheet-unconfirmed');
    expect(refused.text).toContain('the interval is not confirmed');
    expect(refused.text).not.toContain('in 20 seasons');
    expect(await page.getByTestId('print').count()).toBe(0);
    await page.getByTestId('confirm-sheet').click();
    await drawn(page);
    expect(page.url()).toContain('interval=4+months');
    await expect.poll(() => page.getByTestId('print').isVisible()).toBe(true);
    await page.getByRole('link', { name: 'Back to the field' }).click();
    await page.getByTestId('sentence').waitFor();
    expect(page.url()).toContain('interval=4+months');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('takes a correction, and says what is wrong with one that cannot be read', async () => {
    const { page } = await open(DEMO, 'unconfirmed');
    const blank = page.getByLabel('My label says something else');
    await page.getByRole('button', { name: 'Take it' }).click();
    await expect.poll(() => blank.getAttribute('aria-invalid')).toBe('true');
    await blank.fill('nine moons');
    await page.keyboard.press('Enter');
    await page.getByTestId('problem').waitFor();
    await blank.fill('9 months');
    await page.keyboard.press('Enter');
    await page.getByTestId('handout').waitFor();
    await expect
      .poll(() => page.getByTestId('handout').innerText())
      .toContain('9 months from flumioxazin to lentil');
    await page.context().close();
  });

  for (const format of ['Letter', 'A4'] as const) {
    it(`is one page of ${format}, with all that it must say`, async () => {
      const { page } = await open(CONFIRMED, 'handout');
      await drawn(page);
      const { pages, text } = await printed(page, format, 'sheet');
      expect(pages).toBe(1);
      for (const words of [
        'Invented example',
        'in 20',
        'flumioxazin sprayed August 14, 2026',
        'Not before, by your label',
        'December 14, 2026',
        'Weather known up to September 30, 2026',
        'for rain shortfall and dry soil',
        'The label is the law and the floor',
        'Tillage before planting',
        'Before you act on this',
        'What was entered',
        'version 0.1.0',
      ]) {
        expect(text).toContain(words);
      }
      // The address runs over its lines.
      expect(text.replaceAll(' ', '')).toContain('&plantOn=2027-05-10&');
      expect(text).not.toContain('Print the sheet');
      await page.context().close();
    });
  }

  it.each([1280, 360])('stays one page where much has to be said, from a screen of %i px', async (width) => {
    const { page } = await open(FULL, 'handout', { width });
    await drawn(page);
    const { pages, text } = await printed(page, 'Letter', `sheet-full-${width}`);
    expect(pages).toBe(1);
    expect(text).toContain('A soil test found residue on September 20, 2026');
    expect(text.replaceAll(' ', '')).toContain('&plantOn=2027-05-10&');
    await page.context().close();
  });

  it('prints in light colours from a dark screen', async () => {
    const { page } = await open(CONFIRMED, 'handout', { dark: true });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const ink = await page.getByTestId('handout').evaluate((element) => getComputedStyle(element).color);
    expect(ink).toBe('rgb(35, 39, 31)');
    await page.context().close();
  });
});

describe('the bioassay guide', () => {
  it('prints with its steps, its table to fill in and its sources', async () => {
    const { page, complaints } = await open('bioassay?residual=flumioxazin&crop=lentil', 'guide');
    const { pages, text } = await printed(page, 'Letter', 'bioassay');
    expect(pages).toBeLessThanOrEqual(2);
    for (const words of ['flumioxazin', 'What to sow', 'What it cannot tell', 'To write down', 'Sources']) {
      expect(text).toContain(words);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('says so where the residual is not known', async () => {
    const { page } = await open('bioassay?residual=moonshine&crop=lentil', 'problem');
    expect(await page.getByTestId('problem').innerText()).toContain('moonshine');
    await page.context().close();
  });
});

describe('for everybody', () => {
  for (const [path, waitFor] of [
    [CONFIRMED, 'handout'],
    [DEMO, 'unconfirmed'],
    ['bioassay?residual=flumioxazin&crop=lentil', 'guide'],
  ] as const) {
    it(`nothing serious for axe, nothing sideways on any screen: ${waitFor}`, async () => {
      const { page } = await open(path, waitFor);
      await expectGoodOnEveryScreen(page, [output, waitFor]);
      await page.context().close();
    });
  }
});
