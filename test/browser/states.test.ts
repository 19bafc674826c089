import type { Page, Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lookAtEach } from './lookAtEach.ts';
import { served } from './served.ts';

const running = served();
/** Time that all places together may take on a busy machine. [ms] */
const ALL_PLACES_MS = 90_000;
const poll = <T>(read: () => T | Promise<T>) => expect.poll(read, { timeout: 30_000 });

/** Each place by its address, with what stands there once the server has answered. */
const PLACES = [
  ['', 'sentence'],
  ['compare', 'overlay'],
  ['crops', 'sentence'],
  ['fields', 'demo-field'],
  ['labels', 'label-count'],
  ['weather', 'station-count'],
  ['weather?station=demo-invented', 'worth'],
  ['catalogue/imazamox?crop=canola', 'pair-interval'],
] as const;

const main = (page: Page) => page.locator('main').first();
const gone = (page: Page) => page.getByTestId('server-gone').first();

describe('every place', () => {
  it(
    'says that it waits, that no server answers, and fills itself once one does',
    async () => {
      await lookAtEach(running.browser, PLACES, async (page, [path, waitFor]) => {
        const waiting: Route[] = [];
        await page.route('**/api/**', (route) => void waiting.push(route));
        await page.goto(`${running.server.address}${path}`);
        await poll(() => waiting.length).toBeGreaterThan(0);
        await poll(async () => (await main(page).innerText()).trim().length).toBeGreaterThan(10);
        expect(await page.getByTestId('server-gone').count(), `${path} waits`).toBe(0);

        await page.route('**/api/**', (route) => route.abort());
        await Promise.all(waiting.map((route) => route.abort()));
        await gone(page).waitFor();
        expect(await page.getByRole('navigation', { name: 'Places' }).count(), path).toBe(1);
        expect(await main(page).innerText(), path).not.toMatch(/\d+ in 20|NaN|undefined|\[object/);

        await page.unrouteAll();
        await page.getByTestId(waitFor).first().waitFor();
        await poll(() => page.getByTestId('server-gone').count()).toBe(0);
      });
    },
    ALL_PLACES_MS,
  );

  it(
    'gives the reason of a server that refuses, or says that it does not answer as it should',
    async () => {
      await lookAtEach(running.browser, PLACES, async (page, [path]) => {
        await page.route('**/api/**', (route) =>
          route.fulfill({
            status: 500,
            json: { code: 'INTERNAL', message: 'The store cannot be read.', hint: 'See the log.' },
          }),
        );
        await page.goto(`${running.server.address}${path}`);
        await poll(() => main(page).innerText()).toMatch(
          /The store cannot be read\.|The program behind this page does not answer\./,
        );
        expect(await main(page).innerText(), path).not.toMatch(/\d+ in 20|NaN|undefined|\[object/);
      });
    },
    ALL_PLACES_MS,
  );
});

describe('the question without a network', () => {
  it('keeps the last answer and what was typed, says so, and answers when the network is back', async () => {
    await lookAtEach(running.browser, [['']], async (page) => {
      const sentence = page.getByTestId('sentence');
      const date = page.getByTestId('plant-date');
      await page.goto(running.server.address);
      await sentence.waitFor();
      await poll(() => main(page).innerText()).toContain('invented');
      const before = await sentence.innerText();

      await page.context().setOffline(true);
      await date.fill('June 20 2027');
      await date.blur();
      await gone(page).waitFor();
      await poll(() => page.getByTestId('stale').innerText()).toContain('last answer');
      expect(await sentence.innerText()).toBe(before);
      expect(await date.inputValue()).toBe('June 20, 2027');

      await page.context().setOffline(false);
      await poll(() => sentence.innerText()).toContain('June\u00a020, 2027');
      await poll(() => page.getByTestId('server-gone').count()).toBe(0);
    });
  });
});
