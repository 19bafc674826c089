import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { generateStore } from '../bench/generatedStore.ts';
import { type BuiltServer, startBuilt } from '../built/builtProgram.ts';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { launchBrowser, openPage } from './openPage.ts';
import { printedPages } from './printedPages.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });

/** Generated stations, with the invented one of the demo beside them. */
const STATIONS = 60;
const ASKED =
  'region?v=1&residual=flumioxazin&crop=lentil&appliedOn=2025-08-14&plantOn=2026-05-10&asOf=2025-09-30';

let store: string;
let server: BuiltServer;
let browser: Browser;
beforeAll(async () => {
  store = mkdtempSync(join(tmpdir(), 'drywake-region-'));
  await generateStore(store, STATIONS, 25);
  server = await startBuilt(store);
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(store, { recursive: true, force: true });
});

const open = (path = ASKED, waitFor = 'region-table') => openPage(browser, server.address, { path, waitFor });
const rowsOf = (page: Page) => page.getByTestId('region-table').locator('tbody tr');
const ended = (page: Page) => page.getByTestId('region-progress').waitFor({ state: 'detached' });

/** The text of a file that a button saves. */
async function saved(page: Page, testId: string): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByTestId(testId).click()]);
  return readFileSync(await file.path(), 'utf8');
}

describe('the region', () => {
  it('answers every station in a sentence, on a map and in a table, and complains of nothing', async () => {
    const { page, complaints } = await open();
    await ended(page);
    await expect.poll(() => page.getByTestId('sentence').innerText()).toMatch(/station/);
    await expect.poll(() => rowsOf(page).count()).toBeGreaterThan(10);
    await page.getByTestId('region-map').locator('svg path[data-shape]').first().waitFor();
    const label = await page.getByTestId('region-map').getAttribute('aria-label');
    expect(label).toMatch(/^Map\. .+The table below has every station\.$/);
    await page.screenshot({ path: join(output, 'region.png'), fullPage: true });
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('gives the numbers that the interface gives', async () => {
    const { page } = await open();
    await ended(page);
    const geo = JSON.parse(await saved(page, 'region-geojson'));
    expect(geo.type).toBe('FeatureCollection');
    expect(geo.features.length).toBe(STATIONS + 1);
    const answer = await fetch(new URL('api/region', server.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        ...{ residual: 'flumioxazin', crop: 'lentil', soilClass: 'loam' },
        ...{ appliedOn: '2025-08-14', plantOn: '2026-05-10', asOf: '2025-09-30' },
      }),
    });
    const rows = (await answer.text())
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
      .flatMap((event) => (event.step === 'rows' ? event.rows : []));
    const byStation = new Map(rows.map((row) => [row.station, row]));
    for (const { properties } of geo.features) {
      expect(properties.oddsNow).toBe(byStation.get(properties.station).oddsNow);
    }
    const csv = await saved(page, 'region-csv');
    expect(csv.trim().split('\n').length).toBeGreaterThan(STATIONS);
    expect(csv.split('\n')[1]).toMatch(/Drywake \d.*\/region\?/);
    expect(await saved(page, 'region-svg')).toMatch(
      /<svg[^>]*xmlns=[^>]*><metadata>[^<]+\nAsked: \/region\?/,
    );
    expect(geo.about).toMatchObject({
      model: { name: 'drywake residual persistence' },
      question: { asOf: '2025-09-30' },
    });
    await page.context().close();
  });

  it('keeps what is shown and picked in its address, by keyboard alone', async () => {
    const { page } = await open();
    await ended(page);
    const pick = rowsOf(page).first().getByRole('button').first();
    await pick.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toContain('pick=');
    await page.getByTestId('station-numbers').waitFor();
    const said = await page.getByTestId('station-numbers').innerText();
    await page.reload();
    await expect.poll(() => page.getByTestId('station-numbers').innerText()).toBe(said);
    await page.getByTestId('region-map').focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.url()).toContain('pick=GEN');
    await page.getByTestId('region-map').locator('[data-kind="picked"]').waitFor({ state: 'attached' });
    await page.getByTestId('show-summer').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toContain('show=summer');
    await expect
      .poll(() => page.getByTestId('region-figure').locator('figcaption').innerText())
      .toMatch(/^June to August/);
    await page.getByTestId('states').focus();
    await page.keyboard.type('MT');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toContain('states=MT');
    await page.context().close();
  });

  it('gives a station’s numbers where it is pointed at, the same that a press gives', async () => {
    const { page } = await open();
    await ended(page);
    const map = page.getByTestId('region-map');
    await map.focus();
    await page.keyboard.press('ArrowDown');
    const numbers = page.getByTestId('station-numbers');
    await numbers.waitFor();
    const ring = map.locator('[data-kind="picked"]');
    const card = page.getByTestId('map-card');
    // The map may be drawn anew, and moved by the numbers above it.
    await expect
      .poll(async () => {
        await ring.hover({ force: true });
        return card.count();
      })
      .toBe(1);
    const said = await card.innerText();
    await ring.click({ force: true });
    await expect.poll(() => numbers.innerText()).toContain(said);
    await page.mouse.move(2, 2);
    await card.waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('takes a soil for each station, shows it, keeps it in the link and refuses what is no soil', async () => {
    const { page } = await open();
    await ended(page);
    await page.getByText('A soil for each station').click();
    const blank = page.getByTestId('soils');
    await blank.fill('station, soil\nGEN00000001, clay\nGEN00000002; Sand');
    await blank.blur();
    await expect.poll(() => page.url()).toContain('soils=GEN00000001,clay');
    await expect.poll(() => page.getByTestId('region-table').locator('thead').innerText()).toContain('Soil');
    await page.getByLabel('Find a station').fill('GEN00000001');
    await expect.poll(() => rowsOf(page).first().locator('td').first().innerText()).toBe('clay');
    await page.getByLabel('Find a station').fill('GEN00000002');
    await expect.poll(() => rowsOf(page).first().locator('td').first().innerText()).toBe('sand');
    await blank.fill('GEN00000001, mud');
    await blank.blur();
    await expect.poll(() => blank.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => blank.inputValue()).toBe('GEN00000001, mud');
    await page.context().close();
  });

  it('says what is wrong with an address and with a crop, and asks nothing of it', async () => {
    const { page } = await open(
      'region?v=1&residual=flumioxazin&crop=moonshine&appliedOn=2025-08-14&plantOn=2026-05-10',
      'problem',
    );
    await expect.poll(() => page.getByTestId('problem').innerText()).toContain('moonshine');
    await page.context().close();
  });

  it('says so where no station lies in the region, while it is stopped, and while the server is gone', async () => {
    const { page } = await open(`${ASKED}&states=HI`, 'problem');
    await expect.poll(() => page.getByTestId('problem').innerText()).toContain('None of the 61 stations');
    await page.route('**/api/region', () => undefined);
    await page.getByTestId('states').fill('');
    await page.getByTestId('states').blur();
    await page.getByTestId('region-stop').click();
    await page.getByTestId('region-stopped').waitFor();
    await page.unroute('**/api/region');
    await page.route('**/api/region', (route) => route.abort());
    await page.getByTestId('region-begin').click();
    await page.getByTestId('server-gone').waitFor();
    await page.unroute('**/api/region');
    await expect.poll(() => rowsOf(page).count()).toBe(STATIONS + 1);
    await page.getByTestId('server-gone').waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('prints on letter and A4', async () => {
    const { page } = await open();
    await ended(page);
    for (const format of ['Letter', 'A4'] as const) {
      const { widestPx, roomPx } = await printedPages(page, format);
      expect(widestPx).toBeLessThanOrEqual(roomPx);
    }
    await page.context().close();
  });

  it('nothing serious for axe, nothing sideways on any screen', async () => {
    const { page } = await open();
    await ended(page);
    await expectGoodOnEveryScreen(page, [output, 'region']);
    await page.context().close();
  });
});
