import type { Locator, Page } from 'playwright-core';
import { describe, expect, it, vi } from 'vitest';
import { openPage } from './openPage.ts';
import { served } from './served.ts';
import { unjoined } from './unjoined.ts';

const running = served();
const open = (path: string, waitFor: string) =>
  openPage(running.browser, running.server.address, { path, waitFor });
const plain = (text: string) => unjoined(text).replace(/\s+/g, ' ').trim();

/** The numbers under a chart, each after its name, once they are there. */
async function readout(figure: Locator): Promise<string[]> {
  const parts = figure.getByTestId('readout').locator('span');
  await parts.first().waitFor();
  return (await parts.allInnerTexts()).map(plain);
}

/**
 * Points at a place of a chart's drawing, in shares of its width and height, and gives the numbers under it.
 * A chart may be drawn anew meanwhile; then it is pointed at again.
 */
async function pointAt(page: Page, figure: Locator, x: number, y: number): Promise<string[]> {
  const drawn = figure.locator('.drawing svg');
  const parts = figure.getByTestId('readout').locator('span');
  await page.mouse.move(2, 2);
  await expect.poll(() => parts.count()).toBe(0);
  let told: string[] = [];
  await expect
    .poll(async () => {
      const box = await drawn.boundingBox();
      if (box === null) return 0;
      await drawn.hover({ position: { x: box.width * x, y: box.height * y }, force: true });
      told = (await parts.allInnerTexts()).map(plain);
      return told.length;
    })
    .toBeGreaterThan(0);
  return told;
}

/** Points at a mark until what is shown for it fits; a chart that is drawn anew meanwhile is pointed at again. */
const pointUntil = (page: Page, mark: Locator, shown: () => Promise<string>) =>
  expect.poll(
    async () => {
      await page.mouse.move(2, 2);
      await mark.hover({ force: true });
      return shown();
    },
    { interval: 500 },
  );

/** The rows of a chart's table, worded as the numbers under it. */
async function rowsOfTable(figure: Locator): Promise<string[][]> {
  await figure.getByRole('button', { name: 'As a table' }).click();
  const heads = (await figure.locator('thead th').allInnerTexts()).map(plain);
  const rows = await figure
    .locator('tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
  await figure.getByRole('button', { name: 'Hide the table' }).click();
  return rows.map((row) =>
    heads.map((head, index) => plain(`${head} ${row[index]}`)).filter((_, index) => row[index] !== ''),
  );
}

/** Expects that the numbers under a chart are those of a row of its table, which a drawing follows a moment later. */
const expectRowOfTable = (page: Page, figure: Locator, x: number, y: number): Promise<string[]> =>
  vi.waitFor(
    async () => {
      const told = await pointAt(page, figure, x, y);
      expect(await rowsOfTable(figure)).toContainEqual(told);
      return told;
    },
    { timeout: 60_000 },
  );

describe('a chart that is pointed at', () => {
  it('gives the numbers of its table: the question', async () => {
    const { page, complaints } = await open('', 'sentence');
    // ISO dates stand in the order of their texts.
    await page.getByTestId('dates-iso').click();
    const figure = (name: string) => page.getByTestId(name);
    await figure('story-chart').locator('.drawing svg').waitFor();
    const early = await expectRowOfTable(page, figure('year-lines'), 0.2, 0.5);
    const late = await expectRowOfTable(page, figure('year-lines'), 0.8, 0.5);
    const dayOf = (told: readonly string[]) => Date.parse(told[0].replace('Date ', ''));
    expect(dayOf(early)).toBeLessThan(dayOf(late));
    expect(late.map((part) => part.replace(/^Date .*/, 'Date').replace(/ [\d.]+$/, ''))).toEqual([
      'Date',
      'Odds, in 20',
      'Dry years, in 20',
      'Middle years, in 20',
      'Wet years, in 20',
    ]);
    await expectRowOfTable(page, figure('dots'), 0.6, 0.7);
    expect((await expectRowOfTable(page, figure('rain'), 0.5, 0.5)).join()).toMatch(/Normal, in \d/);
    expect(await expectRowOfTable(page, figure('why-chart'), 0.5, 0.4)).toContainEqual(
      'Reason Rain and soil moisture',
    );
    await expectRowOfTable(page, figure('story-chart'), 0.7, 0.5);

    const year = figure('years').locator('.mark-symbol path').first();
    await pointUntil(page, year, async () =>
      (await figure('years').getByTestId('readout').locator('span').allInnerTexts()).map(plain).join(),
    ).toMatch(/Year \d{4},Third \w+,Warm rain, in [\d.]+/);
    await page.mouse.move(2, 2);
    await figure('years').getByTestId('readout').locator('span').first().waitFor({ state: 'detached' });
    await figure('years').getByLabel('Follow one year').selectOption('1988');
    await expect.poll(async () => (await readout(figure('years')))[0]).toBe('Year 1988');
    expect((await expectRowOfTable(page, figure('year-lines'), 0.5, 0.5)).join()).toMatch(
      /1988, in 20 [\d.]/,
    );
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('gives what a tap gives: side by side and crop by date', async () => {
    const { page, complaints } = await open('compare', 'overlay');
    const mark = page.getByTestId('control-chart').locator('.mark-symbol path[fill^="var(--odds"]').first();
    const pressed = page.getByTestId('pressed');
    await mark.waitFor();
    await pointUntil(page, mark, () => pressed.innerText()).toMatch(/in 20.*dry years.*week/);
    const pointed = await pressed.innerText();
    await page.mouse.move(2, 2);
    await expect.poll(() => pressed.innerText()).toContain('Point at a mark');
    await expect
      .poll(
        async () => {
          if ((await pressed.innerText()) !== pointed) await mark.click({ force: true });
          await page.mouse.move(2, 2);
          return pressed.innerText();
        },
        { interval: 1000 },
      )
      .toBe(pointed);
    await expectRowOfTable(page, page.getByTestId('overlay'), 0.6, 0.5);

    await page
      .getByRole('navigation', { name: 'Places' })
      .getByRole('link', { name: 'Crop by date' })
      .click();
    const cell = page.locator('[data-cell="2:3"]');
    const read = page.getByTestId('ringed');
    await cell.waitFor();
    const before = await read.innerText();
    await cell.hover();
    await expect.poll(() => read.innerText()).not.toBe(before);
    const words = await read.innerText();
    await page.mouse.move(2, 2);
    await expect.poll(() => read.innerText()).toBe(before);
    await cell.click();
    await page.mouse.move(2, 2);
    await expect.poll(() => read.innerText()).toBe(words);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('gives the numbers of its table: a station', async () => {
    const { page, complaints } = await open('weather?station=demo-invented', 'worth');
    const figure = (name: string) => page.getByTestId(name);
    await figure('recent').locator('.drawing svg').waitFor();
    expect((await expectRowOfTable(page, figure('recent'), 0.3, 0.5)).join()).toMatch(
      /Month .*Percent of normal/,
    );
    await figure('completeness').locator('.drawing svg').waitFor();
    expect((await expectRowOfTable(page, figure('completeness'), 0.5, 0.6)).join()).toMatch(
      /Year \d{4},Month \d+,Days there \d+/,
    );
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
