import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runBuilt } from '../built/builtProgram.ts';
import { tempFolder } from '../tempFolder.ts';
import { dailyFile } from './dailyFile.ts';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();
const open = (path: string, waitFor: string, options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor, ...options });

describe('the weather records', () => {
  it('brings a good file in, names what is wrong with a damaged one, and lists the station', async () => {
    const folder = tempFolder();
    const good = join(folder, 'XX000000001.csv');
    const damaged = join(folder, 'XX000000002.csv');
    writeFileSync(good, dailyFile('XX000000001'));
    writeFileSync(damaged, `${dailyFile('XX000000002')}XX000000002,20220101,PRCP,x,,,N,\n`);
    const { page } = await open('weather', 'station-count');
    await page.getByTestId('files').setInputFiles([good, damaged]);
    const lines = page.getByTestId('given-file');
    await expect.poll(() => lines.first().getAttribute('data-state')).toBe('imported');
    await expect.poll(() => lines.nth(1).innerText()).toMatch(/line 1096/);
    await expect.poll(() => page.getByTestId('stations').innerText()).toContain('XX000000001');
    const { stations } = JSON.parse(runBuilt(['weather', 'list', '--json'], running.store).out);
    expect(stations.map(({ id }: { id: string }) => id)).toEqual(['XX000000001', 'demo-invented']);
    await page.context().close();
  });

  it('takes a dropped file too', async () => {
    const { page } = await open('weather', 'station-count');
    const transfer = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'XX000000003.csv', { type: 'text/csv' }));
      return data;
    }, dailyFile('XX000000003'));
    await page.getByTestId('drop').dispatchEvent('drop', { dataTransfer: transfer });
    const line = page.getByTestId('given-file').first();
    await expect.poll(() => line.getAttribute('data-state')).toBe('imported');
    await page.context().close();
  });

  it('shows how complete a record is, and leads back to the question', async () => {
    const { page, complaints } = await open('weather?station=demo-invented', 'worth');
    await expect.poll(() => page.getByTestId('worth').innerText()).toMatch(/1966 to 2026/);
    await page.locator('main svg').first().waitFor();
    await page.screenshot({ path: `${output}weather-station.png`, fullPage: true });
    await page.getByRole('link', { name: 'Use this station' }).click();
    await page.getByTestId('sentence').waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('finds stations by typed place, by keyboard alone', async () => {
    const { page } = await open('weather', 'station-count');
    await page.getByTestId('place').focus();
    await page.keyboard.type('Gallatin, MT');
    await page.keyboard.press('Enter');
    await page.getByTestId('near').waitFor();
    await expect.poll(() => page.url()).toContain('county=Gallatin');
    await page.context().close();
  });
});

describe('the catalogue', () => {
  it('searches, shows an active with every figure marked, and leads to the question', async () => {
    const { page, complaints } = await open('catalogue', 'catalogue-search');
    await page.getByTestId('catalogue-search').fill('imazeth');
    await page
      .getByTestId('index-actives')
      .getByRole('link', { name: /imazethapyr/ })
      .first()
      .click();
    await page.getByTestId('figures').waitFor();
    expect(page.url()).toContain('/catalogue/imazethapyr');
    const figures = await page.getByTestId('figures').innerText();
    expect(figures).toMatch(/75 days/);
    await page.getByTestId('ladder').getByRole('link', { name: 'canola' }).first().click();
    await page.getByTestId('pair-interval').waitFor();
    await expect.poll(() => page.getByTestId('pair-interval').innerText()).toMatch(/40 months/);
    await page.getByTestId('label-says').click();
    await page.getByTestId('sentence').waitFor();
    await expect.poll(() => page.url()).toContain('residual=imazethapyr');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('opens any of its addresses directly, and says when there is nothing', async () => {
    const { page } = await open('catalogue/flumioxazin', 'figures');
    await page.goto(`${running.server.address}catalogue/water`);
    await expect.poll(() => page.locator('main').innerText()).toMatch(/water/);
    expect(await page.locator('main').innerText()).not.toMatch(/Half of it is gone/);
    await page.context().close();
  });
});

describe('for everybody, behind', () => {
  const places = [
    ['weather', 'station-count'],
    ['weather?station=demo-invented', 'worth'],
    ['catalogue', 'catalogue-search'],
    ['catalogue/imazethapyr', 'figures'],
  ] as const;
  for (const [path, waitFor] of places) {
    it(`nothing serious for axe, nothing sideways on any screen: ${path}`, async () => {
      const { page } = await open(path, waitFor);
      await expectGoodOnEveryScreen(page, [output, path.replaceAll(/[/?=]/g, '-')]);
      await page.context().close();
    });
  }
});
