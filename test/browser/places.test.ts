import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();
const open = (path: string, waitFor: string, options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor, ...options });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? '');

describe('from place to place', () => {
  it('leads on by links, with title and focus, back by the browser, and keeps the question', async () => {
    const { page, complaints } = await open('', 'sentence');
    await page.getByTestId('plant-later').click();
    await expect.poll(() => page.url()).toContain('plantOn=2027-05-11');
    const question = page.url();
    const places = page.getByRole('navigation', { name: 'Places' });

    await places.getByRole('link', { name: 'Weather' }).click();
    await expect.poll(() => page.title()).toBe('Weather records · Drywake');
    await expect.poll(() => focused(page)).toBe('Weather records');
    await places.getByRole('link', { name: 'Catalogue' }).click();
    await expect.poll(() => page.title()).toBe('Catalogue · Drywake');
    await expect.poll(() => focused(page)).toBe('Catalogue');
    await expect.poll(() => places.locator('[aria-current=page]').innerText()).toBe('Catalogue');

    await page.goBack();
    await expect.poll(() => page.title()).toBe('Weather records · Drywake');
    await page.goBack();
    await page.getByTestId('sentence').waitFor();
    await expect.poll(() => page.url()).toBe(question);
    await expect.poll(() => page.getByTestId('sentence').innerText()).toContain('May\u00a011');

    await places.getByRole('link', { name: 'Weather' }).click();
    await page.getByTestId('station-count').waitFor();
    await places.getByRole('link', { name: 'The question' }).click();
    await expect.poll(() => page.url()).toBe(question);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('keeps the units from place to place and in the address', async () => {
    const { page } = await open('weather?station=demo-invented', 'worth');
    await expect.poll(() => page.getByTestId('worth').innerText()).toMatch(/ in of rain/);
    await page.getByTestId('units-metric').click();
    await expect.poll(() => page.getByTestId('worth').innerText()).toMatch(/ mm of rain/);
    await expect.poll(() => page.url()).toContain('u=metric');
    const readAt = page.locator('.facts > div').filter({ hasText: 'Rain read at' }).locator('dd');
    await readAt.waitFor({ state: 'attached' });
    await expect.poll(() => readAt.textContent()).toBe('the records do not say at what hour');
    await page.getByRole('link', { name: 'All stations' }).click();
    await page.getByTestId('station-count').waitFor();
    await expect.poll(() => page.url()).toContain('u=metric');
    await page.context().close();
  });

  it('says so where an address leads nowhere', async () => {
    const { page } = await open('', 'sentence');
    await page.goto(`${running.server.address}nowhere`);
    await expect.poll(() => page.locator('h1').innerText()).toBe('There is nothing at /nowhere');
    await page.context().close();
  });
});

describe('the map', () => {
  it('sets the place by a click and by arrow keys', async () => {
    const { page, complaints } = await open('weather', 'station-count');
    const map = page.getByTestId('map');
    await map.locator('path.map-land').waitFor({ state: 'attached' });
    const { width, height } = (await map.boundingBox()) ?? { width: 0, height: 0 };
    await map.click({ position: { x: width * 0.32, y: height * 0.3 } });
    await expect.poll(() => page.url()).toMatch(/at=4\d\.\d\d,-1\d\d\.\d\d/);
    await page.getByTestId('near').waitFor();
    const before = await page.getByTestId('place').inputValue();
    await map.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => page.getByTestId('place').inputValue()).not.toBe(before);
    const [latitude, longitude] = before.split(', ').map(Number);
    expect(await page.getByTestId('place').inputValue()).toBe(
      `${(latitude + 0.5).toFixed(2)}, ${longitude.toFixed(2)}`,
    );
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-testid')))
      .toBe('map');
    await page.screenshot({ path: `${output}weather.png` });
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('offers the counties that a name may mean', async () => {
    const { page } = await open('weather', 'station-count');
    await page.getByTestId('place').fill('Gallatin');
    await page.getByRole('button', { name: 'Find stations' }).click();
    await page.getByRole('button', { name: 'Gallatin, MT' }).click();
    await page.getByTestId('near').waitFor();
    await expect.poll(() => page.getByTestId('near').innerText()).toContain('Gallatin, MT');
    await page.context().close();
  });
});

describe('for everybody, on small screens and wide ones', () => {
  for (const [path, waitFor] of [
    ['weather?at=45.7,-111', 'near'],
    ['catalogue?crop=lentil', 'ladder'],
    ['catalogue/imazamox?crop=canola', 'pair-interval'],
  ] as const) {
    it(`nothing serious for axe, nothing sideways on any screen: ${path}`, async () => {
      const { page } = await open(path, waitFor);
      await expectGoodOnEveryScreen(page, [output, path.replaceAll(/\W/g, '-')]);
      await page.context().close();
    });
  }
});

describe('files on their way in', () => {
  it('stay listed while another place is looked at', async () => {
    const { page } = await open('weather', 'station-count');
    await page.getByTestId('files').setInputFiles({
      name: 'diary.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from('Dear diary,\n'),
    });
    const line = page.getByTestId('given-file');
    await expect.poll(() => line.getAttribute('data-state')).toBe('failed');
    await expect.poll(() => line.innerText()).toContain('diary.txt has no layout that can be read');
    await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Catalogue' }).click();
    await page.getByTestId('catalogue-search').waitFor();
    await page.goBack();
    await expect.poll(() => line.innerText()).toContain('diary.txt');
    await page.getByRole('button', { name: 'Clear the list' }).click();
    await expect.poll(() => line.count()).toBe(0);
    await page.context().close();
  });
});
