import type { Page, Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { emptyField, emptyTreatment } from '../../web/src/fields/emptyField.ts';
import { dailyFile } from './dailyFile.ts';
import { lookAtEach } from './lookAtEach.ts';
import { served } from './served.ts';

const running = served();

/** Each place by its address, with what stands there once the server has answered. */
const PLACES = [
  ['', 'sentence'],
  ['compare', 'overlay'],
  ['crops', 'sentence'],
  ['fields', 'demo-field'],
  ['labels', 'label-count'],
  ['weather', 'station-count'],
  ['region', 'region-table'],
  ['weather?station=demo-invented', 'worth'],
  ['catalogue', 'catalogue-search'],
  ['catalogue/imazamox?crop=canola', 'pair-interval'],
] as const;

const main = (page: Page) => page.locator('main').first();
const gone = (page: Page) => page.getByTestId('server-gone').first();

describe('every place', () => {
  it('says that it waits, that no server answers, and fills itself once one does', async () => {
    await lookAtEach(running.browser, PLACES, async (page, [path, waitFor]) => {
      const waiting: Route[] = [];
      await page.route('**/api/**', (route) => void waiting.push(route));
      await page.goto(`${running.server.address}${path}`);
      await expect.poll(() => waiting.length).toBeGreaterThan(0);
      await expect.poll(async () => (await main(page).innerText()).trim().length).toBeGreaterThan(10);
      expect(await page.getByTestId('server-gone').count(), `${path} waits`).toBe(0);

      await page.route('**/api/**', (route) => route.abort());
      await Promise.all(waiting.map((route) => route.abort()));
      await gone(page).waitFor();
      expect(await page.getByRole('navigation', { name: 'Places' }).count(), path).toBe(1);
      expect(await main(page).innerText(), path).not.toMatch(/\d+ in 20|NaN|undefined|\[object/);

      await page.unrouteAll();
      await page.getByTestId(waitFor).first().waitFor();
      await expect.poll(() => page.getByTestId('server-gone').count()).toBe(0);
    });
  });

  it('gives the reason of a server that refuses, or says that it does not answer as it should', async () => {
    await lookAtEach(running.browser, PLACES, async (page, [path]) => {
      await page.route('**/api/**', (route) =>
        route.fulfill({
          status: 500,
          json: { code: 'INTERNAL', message: 'The store cannot be read.', hint: 'See the log.' },
        }),
      );
      await page.goto(`${running.server.address}${path}`);
      await expect
        .poll(() => main(page).innerText())
        .toMatch(/The store cannot be read\.|The program behind this page does not answer\./);
      expect(await main(page).innerText(), path).not.toMatch(/\d+ in 20|NaN|undefined|\[object/);
    });
  });
});

/** What a person does next at each place, typing where there is something to type, and what then stands there. */
const NEXT: readonly (readonly [path: string, blank: string, typed: string, shows: string])[] = [
  ['', 'plant-date', 'June 20, 2027', 'lentil planted June 20'],
  ['compare', 'plant-on', 'June 20, 2027', 'lentil planted June 20'],
  ['crops', 'applied-on', 'August 20, 2026', 'sprayed August 20, 2026'],
  ['region', 'applied-on', 'August 20, 2026', 'sprayed August 20, 2026'],
  ['weather', 'place', '45.70, -111.00', 'No station with a known position'],
];

describe('a place whose network is gone', () => {
  it('keeps what stood there and what was typed, says so, and answers when the network is back', async () => {
    await lookAtEach(running.browser, NEXT, async (page, [path, blank, typed, shows]) => {
      await page.goto(`${running.server.address}${path}`);
      const field = page.getByTestId(blank);
      await field.waitFor();
      await expect.poll(() => main(page).innerText()).toContain('invented');
      await page.waitForLoadState('networkidle');
      await page.context().setOffline(true);
      await field.fill(typed);
      await field.press('Enter');
      await field.blur();
      await gone(page).waitFor();
      expect(await field.inputValue(), path).toBe(typed);
      expect((await main(page).innerText()).replaceAll('\u00a0', ' '), path).not.toContain(shows);

      await page.context().setOffline(false);
      await expect
        .poll(async () => (await main(page).innerText()).replaceAll('\u00a0', ' '))
        .toContain(shows);
      await expect.poll(() => page.getByTestId('server-gone').count()).toBe(0);
      expect(await field.inputValue(), path).toBe(typed);
    });
  });

  it('is gone to without its code, says so, and fills itself once it comes', async () => {
    await lookAtEach(running.browser, [['fields'], ['catalogue'], ['labels']], async (page, [path]) => {
      await page.goto(`${running.server.address}weather`);
      await page.getByTestId('station-count').waitFor();
      await page.waitForLoadState('networkidle');
      await page.context().setOffline(true);
      await page.evaluate((address) => {
        history.pushState(null, '', address);
        dispatchEvent(new PopStateEvent('popstate'));
      }, `/${path}`);
      await gone(page).waitFor();
      await expect.poll(() => page.locator('h1').innerText()).toBe('This part of the page has not come yet');
      await page.context().setOffline(false);
      await expect.poll(() => page.locator('h1').innerText()).not.toContain('not come yet');
      await expect.poll(() => page.getByTestId('server-gone').count()).toBe(0);
    });
  });
});

describe('a place with nothing to show', () => {
  it('says what is missing and what would fill it', async () => {
    const asked = 'v=1&station=demo-invented&appliedOn=2026-08-14&plantOn=2027-05-10&soilClass=loam';
    const empty = [
      ['?v=1&station=demo-invented&appliedOn=2026-08-14', 'The question is not complete'],
      [`compare?${asked}`, 'The question is not complete'],
      [`crops?${asked}&crop=lentil`, 'The question is not complete'],
      ['fields', 'No field is kept yet'],
      ['labels', 'None is entered yet'],
      [`region?${asked}&residual=flumioxazin&crop=lentil`, 'No station here has a place on the map'],
      ['weather', 'Only the invented record of the worked example is here'],
      ['catalogue/moonwort', 'moonwort'],
      ['sheet', 'A sheet needs a question'],
      ['bioassay', 'Which residual, before which crop?'],
    ] as const;
    await lookAtEach(running.browser, empty, async (page, [path, words]) => {
      await page.goto(`${running.server.address}${path}`);
      await expect.poll(() => main(page).innerText()).toContain(words);
      expect(await main(page).innerText(), path).not.toMatch(/NaN|undefined|\[object/);
    });
  });
});

describe('a record of too few years', () => {
  const FEW = 'XX000000009';

  it('gives no odds at any place, and says why', async () => {
    const sent = await fetch(`${running.server.address}api/weather/import?name=${FEW}.csv`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: dailyFile(FEW, 4),
    });
    expect(await sent.text()).toContain(FEW);
    const made = await fetch(`${running.server.address}api/fields/few-years`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-none-match': '*' },
      body: JSON.stringify({
        ...emptyField('few-years', 'Few years', 'Invented farm'),
        ...{ station: FEW, soilClass: 'loam', place: { latitudeDeg: 47, longitudeDeg: -110 } },
        treatments: [{ ...emptyTreatment('one', '2026-08-14'), residual: 'flumioxazin' }],
        plans: [{ id: 'lentil', crop: 'lentil', plantOn: '2027-05-10', oddsLimit: 0.1 }],
      }),
    });
    expect(made.status, await made.text()).toBe(200);
    const asked = `v=1&station=${FEW}&residual=flumioxazin&crop=lentil&appliedOn=2026-08-14&plantOn=2027-05-10&soilClass=loam&latitudeDeg=47`;
    const few = [
      [`?${asked}`],
      [`compare?${asked}`],
      [`crops?${asked}`],
      [`sheet?${asked}`],
      ['fields'],
      ['fields/few-years'],
      [`weather?station=${FEW}`],
    ] as const;
    await lookAtEach(running.browser, few, async (page, [path]) => {
      await page.goto(`${running.server.address}${path}`);
      await expect.poll(() => main(page).innerText()).toMatch(/usable years|too few years/i);
      expect(await main(page).innerText(), path).not.toMatch(/about\s\d+\sin\s20/);
    });
  });
});

describe('a link that is not whole', () => {
  it('leaves the page standing, names what is missing or wrong, and never a figure', async () => {
    const asked = 'v=1&station=demo-invented&residual=flumioxazin&crop=lentil&soilClass=loam';
    const broken = [
      ['?v=1&residual=x', 'fill in the weather record'],
      [`?${asked}&appliedOn=2026-08-14&plantOn=someday`, '“someday”, is no date'],
      ['compare?v=1&residual=x', 'fill in the weather record'],
      [`compare?${asked}&appliedOn=soon&plantOn=2027-05-10`, '“soon”, is no date'],
      [`crops?${asked}&appliedOn=2026-08-14`, 'fill in the planting date'],
      [`region?${asked}`, 'fill in the date of spraying'],
      [`sheet?${asked}`, 'fill in the date of spraying'],
      [
        `?${asked}&appliedOn=2026-08-14&plantOn=2027-05-10&gauge=x:y&also=z&zone=1&evidence=x`,
        'is no day of the calendar',
      ],
      ['fields/%E0%A4%A', 'small letters, digits and hyphens'],
      ['labels/%E0%A4%A', 'small letters, digits and hyphens'],
      ['catalogue/%E0%A4%A', 'The catalogue has no residual'],
      ['weather?at=x,y&station=', 'Stations here'],
    ] as const;
    await lookAtEach(running.browser, broken, async (page, [path, words]) => {
      await page.goto(`${running.server.address}${path}`);
      await expect.poll(() => main(page).innerText()).toContain(words);
      expect(await page.getByRole('navigation', { name: 'Places' }).count(), path).toBe(1);
      expect(await main(page).innerText(), path).not.toMatch(/about\s\d+\sin\s20|NaN|undefined\b|\[object/);
    });
  });

  it('holds a fault of the page itself to its place, says so and leads on', async () => {
    await lookAtEach(running.browser, [['fields']], async (page, [path]) => {
      await page.route('**/api/fields', (route) => route.fulfill({ json: { fields: [{}], removed: [] } }));
      await page.goto(`${running.server.address}${path}`);
      await page.getByTestId('caught').waitFor();
      await page.getByTestId('caught').getByRole('link', { name: 'begin from the question' }).click();
      await page.getByTestId('sentence').waitFor();
    });
  });
});
