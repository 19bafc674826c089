import { mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page, Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import type { Hindcast } from '../../src/schema/hindcast.ts';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { linesApart } from './linesApart.ts';
import { lookAtEach } from './lookAtEach.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();

const { oddsLimit: _limit, asOf: _asOf, ...planned } = demoQuestion;
const ASKED = { ...planned, baseFrom: 1990, baseTo: 2014 };
const addressOf = (change: object) =>
  `?${new URLSearchParams(
    Object.entries({ v: 1, ...ASKED, asOf: '2026-09-30', ...change }).map(([key, value]) => [
      key,
      `${value}`,
    ]),
  )}`;
const open = (path = addressOf({})) => openPage(running.browser, running.server.address, { path });
const figures = (page: Page) => page.getByTestId('look-back-figures');
const plain = (text: string) => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const textOf = async (page: Page, testId: string) => plain(await page.getByTestId(testId).innerText());

/** Every text that the count of years has shown, from now on. */
async function countsShown(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const seen = new Set<string>();
    Object.assign(window, { seenCounts: seen });
    new MutationObserver(() => {
      const count = document.querySelector('[data-testid="look-back-count"]');
      if (count) seen.add(count.textContent ?? '');
    }).observe(document.body, { childList: true, subtree: true, characterData: true });
  });
  return () => page.evaluate(() => [...(window as unknown as { seenCounts: Set<string> }).seenCounts]);
}

async function fromInterface(): Promise<Hindcast> {
  const answer = await fetch(new URL('api/hindcast', running.server.address), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(ASKED),
  });
  return (await answer.json()) as Hindcast;
}

async function saved(page: Page, button: RegExp): Promise<string> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('honest').getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await file.path(), 'utf8');
}

describe('are the odds honest?', () => {
  it('is asked by keyboard alone, with code and figures fetched then; they are those of the interface', async () => {
    const { page, complaints } = await open();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    await page.getByTestId('story-chart').locator('svg').waitFor();
    expect(asked.filter((path) => /hindcast|LookBack/.test(path))).toEqual([]);
    const counts = await countsShown(page);
    await linesApart(page, '/api/hindcast');
    await page.getByTestId('look-back').focus();
    await page.keyboard.press('Enter');
    await figures(page).waitFor();
    expect(
      (await counts()).filter((text) => /^\d+ of 25 past years looked back on\.$/.test(text)).length,
    ).toBeGreaterThan(1);
    expect(asked.filter((path) => path === '/api/hindcast').length).toBe(1);
    const told = await fromInterface();
    expect(await textOf(page, 'look-back-sentence')).toBe(told.sentence);
    expect(await textOf(page, 'look-back-meaning')).toContain('the weather part of the odds only');
    const scores = await textOf(page, 'look-back-scores');
    expect(scores).toContain(`Brier score ${told.overall.brier.toFixed(3)}`);
    expect(scores).toContain(`their skill is ${told.overall.skill?.toFixed(2)}`);
    const leads = page.getByTestId('look-back-leads').locator('tbody tr');
    expect((await leads.allInnerTexts()).map((row) => row.split('\t').slice(1))).toEqual(
      told.leads.map((lead) => [lead.brier.toFixed(3), lead.uncertainty.toFixed(3), lead.skill?.toFixed(2)]),
    );
    const chart = page.getByTestId('reliability');
    await chart.locator('.drawing svg').waitFor();
    await chart.getByRole('button', { name: 'As a table' }).focus();
    await page.keyboard.press('Enter');
    const bands = chart.locator('tbody tr');
    await bands.first().waitFor();
    expect((await bands.allInnerTexts()).map((row) => row.split('\t').slice(1, 3))).toEqual(
      told.overall.bins.map(({ forecasts, years }) => [`${forecasts}`, `${years}`]),
    );
    expect((await saved(page, /rows of this chart as CSV/)).trim().split('\r\n').length).toBe(
      1 + told.overall.bins.length,
    );
    expect(await saved(page, /as SVG/)).toContain('Harm then came, in 20');
    await page.getByText('The 25 years, one by one').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByTestId('look-back-years').locator('tbody tr').count()).toBe(25);
    expect((await saved(page, /past years as CSV/)).split('\r\n')[1]).toContain(
      `${told.years[0].year},${told.years[0].harmed},`,
    );
    expect(await textOf(page, 'field-tally')).toContain('No outcome is recorded');
    expect(complaints).toEqual([]);
    await expectGoodOnEveryScreen(page, [output, 'honest']);
    await page.context().close();
  });

  it('is given up with the question that it was about, and can be stopped', async () => {
    const { page } = await open();
    const held: Route[] = [];
    await page.route('**/api/hindcast', (route) => void held.push(route));
    await page.getByTestId('look-back').click();
    await expect.poll(() => held.length).toBe(1);
    const state = page.getByTestId('look-back-state');
    await page.getByTestId('look-back-stop').click();
    await expect.poll(() => state.getAttribute('data-phase')).toBe('stopped');
    await page.getByTestId('look-back').click();
    await expect.poll(() => held.length).toBe(2);
    await page.getByRole('button', { name: 'One day later' }).click();
    await expect.poll(() => state.getAttribute('data-phase')).toBe('waiting');
    expect(await figures(page).count()).toBe(0);
    await page.unroute('**/api/hindcast');
    await page.getByTestId('look-back').click();
    await figures(page).waitFor();
    await page.getByRole('button', { name: 'One day later' }).click();
    await expect.poll(() => figures(page).getAttribute('data-stale')).toBe('');
    await page.context().close();
  });

  it('says why there is nothing to look back on', async () => {
    const each = [
      [addressOf({ crop: 'radish + pea' }), 'CROP_MIX'],
      [addressOf({ baseTo: 1999 }), 'TOO_FEW_YEARS'],
      [addressOf({ interval: '0 days' }), 'NO_CARRYOVER'],
    ] as const;
    await lookAtEach(running.browser, each, async (page, [path, code]) => {
      await page.goto(`${running.server.address}${path}`);
      await page.getByTestId('look-back').click();
      const refused = page.getByTestId('look-back-refused');
      await refused.waitFor();
      expect(await refused.getAttribute('data-code')).toBe(code);
      expect(plain(await refused.innerText())).toMatch(
        /^(A mix cannot be looked back on as one|Too few years to look back on|No odds to look back on) .+\./,
      );
      expect(await figures(page).count()).toBe(0);
    });
  });
});
