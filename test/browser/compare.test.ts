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
const open = (path = 'compare', options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor: 'sentence', ...options });
const plain = (text: string) => unjoined(text).replace(/\s+/g, ' ').trim();
const sentence = async (page: Page) => plain(await page.getByTestId('sentence').innerText());
const names = (page: Page) => page.getByTestId('compare-table').locator('tbody th a').allInnerTexts();

describe('side by side', () => {
  it('opens on the worked question with both charts and the numbers of the command line', async () => {
    const { page, complaints } = await open();
    await page.getByTestId('control-chart').locator('svg path').first().waitFor();
    await page.getByTestId('overlay').locator('.drawing svg').waitFor();
    await expect.poll(() => page.url()).toContain('crop=lentil');
    const { out } = runBuilt(
      [
        ...['compare', '--station', 'demo-invented', '--crop', 'lentil', '--soil', 'loam', '--json'],
        ...['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30'],
      ],
      running.store,
    );
    const told: {
      residual: string;
      oddsAtPlanting: number | null;
      withinLimit: boolean;
      labelAllows: boolean;
    }[] = JSON.parse(out).residuals;
    const judged = told.filter(({ oddsAtPlanting }) => oddsAtPlanting !== null);
    const fit = judged.filter(({ withinLimit }) => withinLimit);
    expect(await sentence(page)).toMatch(
      new RegExp(`^${fit.length} of ${judged.length} soil residuals fit before lentil`),
    );
    expect((await names(page)).toSorted()).toEqual(
      told
        .filter(({ labelAllows }) => labelAllows)
        .map(({ residual }) => residual)
        .toSorted(),
    );
    const flumioxazin = told.find(({ residual }) => residual === 'flumioxazin');
    const line = page.getByRole('row', { name: /flumioxazin/ });
    expect(plain(await line.innerText())).toContain(
      `${Math.round((flumioxazin?.oddsAtPlanting ?? 0) * 100)} %`,
    );
    expect(await line.innerText()).toContain('from memory');
    await page.getByTestId('show-all').click();
    await expect.poll(async () => (await names(page)).length).toBe(told.length);
    await expect.poll(() => page.url()).toContain('all=1');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('is led to from the field with its question, and leads back to it', async () => {
    const { page } = await open(
      '?v=1&station=demo-invented&residual=dicamba&crop=flax&appliedOn=2026-08-20&plantOn=2027-05-22&asOf=2026-09-30',
    );
    await page.getByRole('link', { name: 'Other residuals before flax, side by side' }).click();
    await expect.poll(() => page.title()).toBe('Residuals before flax · Drywake');
    await page.getByTestId('compare-table').waitFor();
    expect(await sentence(page)).toContain('before flax planted May 22, 2027');
    await expect.poll(() => page.url()).toContain('residual=dicamba');
    await page.getByTestId('compare-table').getByRole('link', { name: 'dicamba' }).click();
    await expect.poll(() => sentence(page)).toContain('dicamba sprayed August 20, 2026');
    await expect.poll(() => page.url()).toContain('crop=flax');
    await page.goBack();
    await page.getByTestId('compare-table').waitFor();
    await page.context().close();
  });

  it('sorts by keyboard, says how to those who hear it, and keeps the order in the link', async () => {
    const { page } = await open();
    const head = page.getByRole('columnheader', { name: 'Weeks of control' });
    await head.getByRole('button').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => head.getAttribute('aria-sort')).toBe('ascending');
    await page.keyboard.press('Enter');
    await expect.poll(() => head.getAttribute('aria-sort')).toBe('descending');
    const sorted = await names(page);
    await expect.poll(() => page.url()).toContain('sort=-weeks');
    await page.reload();
    await page.getByTestId('compare-table').waitFor();
    await expect.poll(() => names(page)).toEqual(sorted);
    await page.keyboard.press('Tab');
    await page.context().close();
  });

  it('lays three seasons over each other, three at most, each by its own mark', async () => {
    const { page } = await open();
    const box = (name: string) => page.getByRole('checkbox', { name: `Season of ${name}`, exact: true });
    await page.getByTestId('overlay').waitFor();
    await expect.poll(() => box('dicamba').isDisabled()).toBe(true);
    await box('imazamox').focus();
    await page.keyboard.press('Space');
    await box('dicamba').check();
    await expect.poll(() => page.url()).toContain('over=');
    const caption = page.getByTestId('overlay').locator('figcaption');
    await expect.poll(() => caption.innerText()).toContain('dicamba');
    expect(await caption.innerText()).not.toContain('imazamox');
    await page.getByTestId('overlay').getByRole('button', { name: 'As a table' }).click();
    await expect
      .poll(() => page.getByTestId('overlay').locator('th').allInnerTexts())
      .toContain('dicamba, odds in 20');
    for (const name of ['flumioxazin', 'thifensulfuron-methyl', 'dicamba']) await box(name).uncheck();
    await page.getByTestId('overlay-empty').waitFor();
    await page.context().close();
  });

  it('gives a mark’s numbers where it is pressed', async () => {
    const { page } = await open();
    const mark = page.getByTestId('control-chart').locator('.mark-symbol path[fill^="var(--odds"]').first();
    await mark.waitFor();
    const pressed = page.getByTestId('pressed');
    // A chart that is drawn anew meanwhile has not been pressed.
    await expect
      .poll(
        async () => {
          if (!/in 20/.test(await pressed.innerText())) await mark.click({ force: true });
          return pressed.innerText();
        },
        { interval: 1000 },
      )
      .toMatch(/in 20.*dry years.*week/);
    await page.context().close();
  });

  it('shows its assumptions, follows a change of them, and both units', async () => {
    const { page } = await open();
    const taken = page.getByTestId('taken');
    expect(await taken.innerText()).toMatch(/25 % of the dose.*0\.51 in of water within 14 days/s);
    const line = page.getByRole('row', { name: /flumioxazin/ });
    const before = await line.innerText();
    await page.getByLabel('Dose left when weed control ends').fill('10');
    await page.getByLabel('Dose left when weed control ends').blur();
    await expect.poll(() => taken.innerText()).toContain('10 % of the dose');
    await expect.poll(() => line.innerText()).not.toBe(before);
    await expect.poll(() => page.url()).toContain('assume.controlFractionLeft=0.1');
    await page.getByTestId('units-metric').click();
    await expect.poll(() => taken.innerText()).toContain('13 mm of water');
    await expect.poll(() => sentence(page)).toContain('planted 2027-05-10');
    await expect.poll(async () => plain(await line.innerText())).toContain('2026-12-14');
    await page.context().close();
  });

  it('saves table, answer and drawing under telling names', async () => {
    const { page } = await open();
    await page.getByTestId('control-chart').locator('svg').first().waitFor();
    const saved = async (press: () => Promise<void>) => {
      const [download] = await Promise.all([page.waitForEvent('download'), press()]);
      return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
    };
    const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
    const csv = await saved(() => button('Table as CSV').click());
    expect(csv.name).toBe('drywake-residuals-before-lentil-2027-05-10.csv');
    expect(csv.text.split('\r\n')[0]).toContain('Weeks of control');
    const json = await saved(() => button('Answer as JSON').click());
    expect(JSON.parse(json.text).crop).toBe('lentil');
    const svg = await saved(() => button(/^Save this chart as SVG/).click());
    expect(svg.name).toMatch(/\.svg$/);
    expect(svg.text).toMatch(/^<svg[\s\S]*Weeks of weed control[\s\S]*Invented example/);
    expect(svg.text).toContain('\nAsked: /compare?');
    expect(svg.text).not.toMatch(/var\(--|NaN|undefined/);
    await page.context().close();
  });

  it('says when the years are too few, and when a crop is not known', async () => {
    const base = 'compare?v=1&station=demo-invented&residual=dicamba&appliedOn=2026-08-14&plantOn=2027-05-10';
    const { page } = await open(`${base}&crop=lentil&baseFrom=2010&baseTo=2013`, {});
    await expect.poll(() => page.locator('main').innerText()).toMatch(/4 usable years.*at least 10/s);
    expect(await page.locator('main').innerText()).not.toMatch(/\d+ in 20/);
    await page.goto(`${running.server.address}${base}&crop=moonwort`);
    await expect.poll(() => page.locator('main').innerText()).toContain('moonwort');
    await page.context().close();
  });

  it('keeps what was typed where the server is gone, and recovers', async () => {
    const { page } = await open();
    await page.route('**/api/compare', (route) => route.abort());
    const date = page.getByTestId('plant-on');
    await date.fill('June 20 2027');
    await date.blur();
    await page.getByTestId('server-gone').waitFor();
    await expect.poll(() => date.inputValue()).toBe('June 20, 2027');
    await expect.poll(() => page.getByTestId('stale').innerText()).toContain('last answer');
    expect(await sentence(page)).toContain('May 10, 2027');
    await page.unroute('**/api/compare');
    await page.getByRole('button', { name: 'Ask again now' }).click();
    await expect.poll(() => sentence(page)).toContain('June 20, 2027');
    await page.context().close();
  });

  it('never lets a late answer take the place of a newer one', async () => {
    const { page } = await open();
    let held: (() => void) | null = null;
    await page.route('**/api/compare', async (route) => {
      if (route.request().postData()?.includes('2027-06-01')) await new Promise<void>((go) => (held = go));
      await route.continue().catch(() => undefined);
    });
    const date = page.getByTestId('plant-on');
    await date.fill('June 1 2027');
    await date.blur();
    await expect.poll(() => held !== null).toBe(true);
    await date.fill('July 1 2027');
    await date.blur();
    await expect.poll(() => sentence(page)).toContain('July 1, 2027');
    (held as unknown as () => void)();
    await page.waitForTimeout(300);
    expect(await sentence(page)).toContain('July 1, 2027');
    await page.context().close();
  });

  it('asks for the seasons of a changed question only once its comparison is there', async () => {
    const { page } = await open();
    await page.getByTestId('overlay').locator('.drawing svg').waitFor();
    await page.waitForLoadState('networkidle');
    const told: string[] = [];
    const note = (way: string) => (message: { url(): string }) => {
      const path = new URL(message.url()).pathname;
      if (path === '/api/compare' || path === '/api/odds') told.push(`${path} ${way}`);
    };
    page.on('request', note('asked'));
    page.on('response', note('came'));
    await page.getByTestId('plant-on').fill('June 5 2027');
    await page.getByTestId('plant-on').blur();
    await expect.poll(() => told.filter((one) => one === '/api/odds came').length).toBe(3);
    expect(told.slice(0, 3)).toEqual(['/api/compare asked', '/api/compare came', '/api/odds asked']);
    expect(told.filter((one) => one === '/api/odds asked').length).toBe(3);
    await page.context().close();
  });

  it('answers a change soon, and says how soon', async () => {
    const { page } = await open();
    await page.waitForLoadState('networkidle');
    const ms = await answerTime(page, '[data-testid="plant-on"]', 'June 5 2027');
    console.log(`side by side: a change is answered within ${Math.round(ms)} ms`);
    expect(ms).toBeGreaterThan(0);
    await page.context().close();
  });

  it('prints on letter and A4 with its cautions on the first page', async () => {
    const { page } = await open();
    await page.getByTestId('overlay').locator('.drawing svg').waitFor();
    for (const format of ['Letter', 'A4'] as const) {
      const { pages, widestPx, roomPx, firstPage } = await printedPages(page, format);
      expect(widestPx).toBeLessThanOrEqual(roomPx);
      expect(pages).toBeLessThanOrEqual(4);
      expect(firstPage).toBe(true);
    }
    await page.context().close();
  });
});

describe('side by side, for everybody', () => {
  it('nothing serious for axe, nothing sideways on any screen', async () => {
    const { page } = await open('compare?');
    await page.getByTestId('overlay').locator('.drawing svg').waitFor();
    await expectGoodOnEveryScreen(page, [output, 'compare']);
    await page.context().close();
  });
});
