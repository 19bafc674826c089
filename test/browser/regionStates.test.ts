import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { generateStore } from '../bench/generatedStore.ts';
import { type BuiltServer, startBuilt } from '../built/builtProgram.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

/** More stations than are gone through without being told to, each of too few years for odds. */
const STATIONS = 160;
const YEARS = 4;
const ASKED =
  'region?v=1&station=demo-invented&residual=flumioxazin&crop=lentil&appliedOn=2025-08-14&plantOn=2026-05-10';

const running = served();
let store: string;
let many: BuiltServer;
beforeAll(async () => {
  store = mkdtempSync(join(tmpdir(), 'drywake-many-'));
  await generateStore(store, STATIONS, YEARS);
  many = await startBuilt(store);
});
afterAll(async () => {
  await many?.stop();
  rmSync(store, { recursive: true, force: true });
});

describe('a region of the invented record alone', () => {
  it('answers for it, says that it is invented and why the map is empty', async () => {
    const { page, complaints } = await openPage(running.browser, running.server.address, {
      path: 'region',
      waitFor: 'region-table',
    });
    await expect
      .poll(() => page.getByTestId('sentence').innerText())
      .toContain('the one station that answers');
    const row = page.getByTestId('region-table').locator('tbody tr');
    await expect.poll(() => row.count()).toBe(1);
    await expect.poll(() => row.innerText()).toContain('invented');
    const empty = page.getByTestId('map-empty');
    await expect.poll(() => empty.innerText()).toContain('the invented one lies nowhere');
    await empty.getByRole('link', { name: 'under Weather' }).click();
    await page.getByTestId('station-count').waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('a region of many stations, most of too few years', () => {
  it('waits to be told, hatches those that cannot answer, names why and reads them out', async () => {
    const asked: string[] = [];
    const { page } = await openPage(running.browser, many.address, {
      path: ASKED,
      waitFor: 'region-begin',
    });
    page.on('request', (request) => request.url().includes('/api/region') && asked.push(request.url()));
    expect(await page.getByTestId('region-progress').innerText()).toContain(
      `${STATIONS + 1} stations are here`,
    );
    await page.getByTestId('plant-on').fill('May 12 2026');
    await page.getByTestId('plant-on').press('Enter');
    await expect.poll(() => page.url()).toContain('plantOn=2026-05-12');
    expect(asked).toEqual([]);
    await page.getByTestId('region-begin').focus();
    await page.keyboard.press('Enter');
    await page.getByTestId('region-progress').waitFor({ state: 'detached' });
    expect(asked.length).toBe(1);

    const map = page.getByTestId('region-map');
    const hatched = map.locator('path[data-shape="hatched"]');
    await expect.poll(() => hatched.getAttribute('fill')).toBe('url(#hatch)');
    const marks = async () => ((await hatched.getAttribute('d'))?.split('M').length ?? 0) - 1;
    await expect.poll(marks).toBe(STATIONS);
    await expect
      .poll(() => page.getByTestId('silent').innerText())
      .toContain(`Too few usable years (${STATIONS})`);
    await map.focus();
    await page.keyboard.press('ArrowDown');
    await expect
      .poll(() => page.getByTestId('station-numbers').innerText())
      .toMatch(/usable years?.*at least 10/s);
    await page.context().close();
  });
});
