import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { batchSchema } from '../../src/schema/batch.ts';
import { expectGood } from './everyScreen.ts';
import { linesApart } from './linesApart.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const running = served();
const HEAD = 'field,acres,station,residual,crop,applied_on,plant_on';
const row = (name: string, acres: number, station = 'demo-invented') =>
  `${name},${acres},${station},flumioxazin,lentil,2026-08-14,2027-05-10`;

describe('a list of fields on the page', () => {
  it('is answered and ranked, names rows at fault, and is saved as CSV and JSON', async () => {
    const { page, complaints } = await openPage(running.browser, running.server.address, {
      path: 'fields',
      waitFor: 'field-count',
    });
    await page.getByText('A list of fields, answered and ranked').click();
    await page.getByTestId('list-template').waitFor();
    const give = (text: string) =>
      page
        .getByTestId('list-in')
        .setInputFiles({ name: 'mine.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

    await give('field,crop\nNorth,lentil\n');
    await page.getByTestId('problem').waitFor();
    expect(await page.getByTestId('problem').innerText()).toContain('mine.csv lacks the columns station');

    await give([HEAD, row('Small', 10), row('Large', 400), row('Far', 90, 'nowhere')].join('\n'));
    await page.getByTestId('list-answers').waitFor();
    const rows = page.getByTestId('list-row');
    await expect.poll(() => rows.count()).toBe(2);
    await expect
      .poll(() => rows.first().innerText())
      .toMatch(/Large[\s\S]*400 acres[\s\S]*not from your label/);
    expect(await page.getByTestId('list-refused').innerText()).toMatch(/^Line 4 \(Far\): /);
    for (const width of [360, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      await expectGood(page);
    }

    const saved = async (testId: string) => {
      const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId(testId).click()]);
      return readFileSync(await download.path(), 'utf8');
    };
    expect(await saved('list-csv')).toMatch(
      /^\uFEFFfield,acres,.*,rank,odds_at_planting,[\s\S]*\nLarge,400,/,
    );
    expect(await saved('list-csv')).toMatch(/,asked,model\n[\s\S]*,drywake residual persistence \d/);
    const { answered, refused } = batchSchema.parse(JSON.parse(await saved('list-json')));
    expect([answered, refused]).toEqual([2, 1]);
    expect(complaints.filter((one) => !one.includes('422'))).toEqual([]);
    await page.context().close();
  });

  it('tells how far a long list is and stops when asked', async () => {
    const { page } = await openPage(running.browser, running.server.address, {
      path: 'fields',
      waitFor: 'field-count',
    });
    await page.getByText('A list of fields, answered and ranked').click();
    await linesApart(page, '/api/batch', 2);
    const long = Array.from({ length: 2000 }, (_, index) => row(`F${index}`, 1 + (index % 90)));
    await page.getByTestId('list-in').setInputFiles({
      name: 'long.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from([HEAD, ...long].join('\n')),
    });
    await expect
      .poll(() => page.getByTestId('list-progress').innerText())
      .toMatch(/^[1-9][\d,]* of 2,000 rows/);
    await page.getByTestId('list-stop').click();
    await page.getByTestId('list-stopped').waitFor();
    await page.context().close();
  });
});
