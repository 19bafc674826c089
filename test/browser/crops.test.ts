import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { runBuilt } from '../built/builtProgram.ts';
import { answerTime } from './answerTime.ts';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { printedPages } from './printedPages.ts';
import { served } from './served.ts';
import { unjoined } from './unjoined.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
const running = served();
const open = (path = 'crops', options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor: 'sentence', ...options });
const plain = (text: string) => unjoined(text).replace(/\s+/g, ' ').trim();
const sentence = async (page: Page) => plain(await page.getByTestId('sentence').innerText());
const ringed = async (page: Page) => plain(await page.getByTestId('ringed').innerText());
const cells = (page: Page, crop: string) =>
  page
    .getByTestId('crop-grid')
    .locator('tr', { has: page.locator('th', { hasText: new RegExp(`^${crop}$`) }) })
    .locator('td button');

/** A question in which the label date of canola falls among the dates: 12 months after spraying. */
const LATE =
  'crops?v=1&station=demo-invented&residual=flumioxazin&crop=canola&appliedOn=2026-08-14&plantOn=2027-08-09&asOf=2026-09-30&soilClass=loam';

describe('crop by date', () => {
  it('opens on the worked question with the numbers of the command line and the asked cell ringed', async () => {
    const { page, complaints } = await open();
    const { out } = runBuilt(
      [
        ...['crops', '--station', 'demo-invented', '--residual', 'flumioxazin', '--soil', 'loam', '--json'],
        ...['--applied', '2026-08-14', '--as-of', '2026-09-30', '--crops', 'lentil'],
        ...['--plant-from', '2027-04-05', '--plant-to', '2027-07-05', '--step', '7'],
      ],
      running.store,
    );
    const [lentil]: { odds: number[] }[] = JSON.parse(out).crops;
    const shown = (await cells(page, 'lentil').allInnerTexts()).map((text) => text.replace(/^[LC]+\s*/, ''));
    expect(shown).toEqual(
      lentil.odds.map((odds) => (odds < 0.025 ? '<1' : odds > 0.975 ? '>19' : `${Math.round(odds * 20)}`)),
    );
    expect(await sentence(page)).toMatch(
      /^After flumioxazin sprayed August 14, 2026, \d+ of \d+ crops fit on May 10, 2027/,
    );
    expect(await ringed(page)).toMatch(/^lentil on May 10, 2027: about \d+ in 20 over all years/);
    await expect.poll(() => page.locator('[data-ringed]').count()).toBe(1);
    await expect.poll(() => page.url()).toMatch(/plantFrom=2027-04-05&plantTo=2027-07-05&stepDays=7/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('bars every date before the label date and marks that date', async () => {
    const { page } = await open(LATE);
    const row = cells(page, 'canola');
    const words = await row.evaluateAll((all) => all.map((cell) => cell.getAttribute('aria-label')));
    const first = words.findIndex((word) => word !== 'not allowed by the label');
    expect(first).toBeGreaterThan(0);
    expect(words[first]).toMatch(/in 20, label date$/);
    expect(words.slice(first + 1).every((word) => /in 20/.test(word ?? ''))).toBe(true);
    expect(
      await page
        .locator('td[data-kind="barred"]')
        .first()
        .evaluate((cell) => getComputedStyle(cell).backgroundImage),
    ).toContain('gradient');
    expect(await page.getByTestId('barred').innerText()).toContain('until February\u00a014, 2028');
    await page.context().close();
  });

  it('tells dry years from wet ones, in grid, sentence and link', async () => {
    const { page } = await open();
    const numbers = async () =>
      (await cells(page, 'lentil').allInnerTexts()).map((text) =>
        Number.parseInt(text.replace(/\D+/, ''), 10),
      );
    const all = await numbers();
    await page.getByTestId('years-dry').click();
    await expect.poll(() => sentence(page)).toContain('in dry years');
    const dry = await numbers();
    await page.getByTestId('years-wet').click();
    await expect.poll(() => sentence(page)).toContain('in wet years');
    const wet = await numbers();
    expect(dry[5]).toBeGreaterThan(all[5]);
    expect(wet[5]).toBeLessThan(all[5]);
    await expect.poll(() => page.url()).toContain('years=wet');
    await page.reload();
    await expect.poll(() => sentence(page)).toContain('in wet years');
    await expect.poll(() => page.getByTestId('years-wet').getAttribute('aria-pressed')).toBe('true');
    await page.context().close();
  });

  it('is gone through by keyboard alone: one stop for the grid, arrows from cell to cell, Enter rings', async () => {
    const { page } = await open();
    await page.getByTestId('years-wet').focus();
    await page.keyboard.press('Tab');
    expect(
      await page.evaluate(() => document.activeElement?.closest('td')?.hasAttribute('data-ringed')),
    ).toBe(true);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => ringed(page)).toMatch(/^flax on May 17, 2027/);
    await expect.poll(() => page.url()).toContain('crop=flax&plantOn=2027-05-17');
    expect(
      await page.evaluate(() => document.activeElement?.closest('td')?.hasAttribute('data-ringed')),
    ).toBe(true);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('The whole answer for it');
    await page.keyboard.press('Enter');
    await expect.poll(() => sentence(page)).toContain('flax planted May 17, 2027');
    await page.context().close();
  });

  it('follows other dates, another step and a choice of crops, and refuses what it cannot read', async () => {
    const { page } = await open();
    await page.getByLabel('Step').fill('14');
    await page.getByLabel('Step').blur();
    await expect.poll(() => cells(page, 'lentil').count()).toBe(7);
    await page.getByTestId('crop-list').fill('lentil, moonwort');
    await page.getByTestId('crop-list').blur();
    await expect.poll(() => page.locator('form').innerText()).toContain('no crop called “moonwort”');
    await page.getByTestId('crop-list').fill('lentil, wheat');
    await page.getByTestId('crop-list').blur();
    await expect
      .poll(() => page.getByTestId('crop-grid').locator('tbody th').allInnerTexts())
      .toEqual(['wheat', 'lentil']);
    await page.getByTestId('plant-to').fill('April 1 2027');
    await page.getByTestId('plant-to').blur();
    await expect.poll(() => page.locator('form').innerText()).toContain('lies before the first');
    await expect.poll(() => page.getByTestId('stale').innerText()).toContain('last complete question');
    await page.context().close();
  });

  it('gives a plain table and a file with all years', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'As a table' }).click();
    await expect.poll(() => page.getByTestId('plain-table').locator('tbody tr').count()).toBeGreaterThan(20);
    expect(await page.getByTestId('plain-table').innerText()).toContain('not allowed');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('drywake-crops-after-flumioxazin-2026-08-14.csv');
    expect(readFileSync(await download.path(), 'utf8')).toContain('2027-05-10, dry third, %');
    await page.context().close();
  });

  it('writes dates as the units have them', async () => {
    const { page } = await open();
    await page.getByTestId('units-metric').click();
    await expect.poll(() => sentence(page)).toContain('fit on 2027-05-10');
    await expect.poll(() => ringed(page)).toContain('lentil on 2027-05-10');
    await expect.poll(() => page.url()).toContain('u=metric');
    await page.context().close();
  });

  it('says when the years are too few, without a number', async () => {
    const { page } = await open(`${LATE}&baseFrom=2010&baseTo=2013`);
    await expect.poll(() => page.locator('main').innerText()).toMatch(/too few years/);
    expect(await page.locator('main').innerText()).not.toMatch(/about \d+ in 20/);
    await page.context().close();
  });

  it('keeps what was typed where the server is gone, and recovers by itself', async () => {
    const { page } = await open();
    await page.route('**/api/crops', (route) => route.abort());
    const date = page.getByTestId('plant-to');
    await date.fill('June 7 2027');
    await date.blur();
    await page.getByTestId('server-gone').waitFor();
    await expect.poll(() => date.inputValue()).toBe('June 7, 2027');
    expect(await cells(page, 'lentil').count()).toBe(14);
    await page.unroute('**/api/crops');
    await expect.poll(() => cells(page, 'lentil').count()).toBe(10);
    await expect.poll(() => page.getByTestId('server-gone').count()).toBe(0);
    await page.context().close();
  });

  it('answers a change soon, and says how soon', async () => {
    const { page } = await open();
    await page.waitForLoadState('networkidle');
    const ms = await answerTime(page, '[data-testid="applied-on"]', 'August 20 2026');
    console.log(`crop by date: a change is answered within ${Math.round(ms)} ms`);
    expect(ms).toBeGreaterThan(0);
    await page.context().close();
  });

  it('prints on letter and A4 with its cautions on the first page', async () => {
    const { page } = await open();
    for (const format of ['Letter', 'A4'] as const) {
      const { pages, widestPx, roomPx, firstPage } = await printedPages(page, format);
      expect(widestPx).toBeLessThanOrEqual(roomPx);
      expect(pages).toBeLessThanOrEqual(2);
      expect(firstPage).toBe(true);
    }
    await page.context().close();
  });
});

/** A crop of each kind: barred throughout and in part, with odds, without carryover. */
const KINDS = `${LATE}&crops=canola~lentil~soybean~chickpea`;

describe('crop by date, for everybody', () => {
  it('nothing serious for axe, nothing sideways on any screen', async () => {
    const { page } = await open(KINDS);
    await expectGoodOnEveryScreen(page, [output, 'crops']);
    await page.context().close();
  });

  it('holds the crops in place while the grid scrolls within itself on a phone', async () => {
    const { page } = await open('crops', { width: 360, height: 780 });
    const room = page.getByTestId('crop-grid').locator('..');
    const name = page.getByTestId('crop-grid').locator('tbody th').first();
    const before = await name.boundingBox();
    await room.evaluate((element) => {
      element.scrollLeft = 300;
    });
    const after = await name.boundingBox();
    expect(Math.abs((after?.x ?? 0) - (before?.x ?? 0))).toBeLessThanOrEqual(1);
    expect(await room.evaluate((element) => element.scrollWidth > element.clientWidth)).toBe(true);
    await page.context().close();
  });
});
