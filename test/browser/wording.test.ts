import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { goToPlace, LOOK_BACK, type Place } from './atPlace.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';
import { unjoined } from './unjoined.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();
const open = (path: string, waitFor: string, options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor, ...options });

const ASKED =
  '?v=1&residual=flumioxazin&appliedOn=2026-08-14&crop=lentil&plantOn=2027-05-10&soilClass=loam&station=demo-invented' +
  '&asOf=2026-09-30&gauge=2026-09-03:11.4&irrigation=2026-09-05:12.7';
const FIELD = 'fields/home-quarter';
/** All places, and what shows when each has its answer. */
const PLACES: readonly Place[] = [
  [ASKED, 'story-chart'],
  LOOK_BACK,
  [`compare${ASKED}`, 'overlay'],
  [`crops${ASKED}`, 'crop-grid'],
  [`region${ASKED}`, 'region-table'],
  [`sheet${ASKED}&interval=4+months`, 'handout'],
  ['bioassay?residual=imazethapyr&crop=lentil', 'guide'],
  ['fields', 'field-row'],
  [FIELD, 'whole-question'],
  [`${FIELD}/record/stubble`, 'application-record'],
  ['labels', 'label-count'],
  ['labels/shed-one', 'keep-state'],
  ['weather?station=demo-invented', 'recent'],
  ['weather?at=47.9,-97.1', 'near'],
  ['catalogue/flumioxazin', 'figures'],
  ['catalogue/flumioxazin?crop=lentil', 'pair-interval'],
];

/** Places whose pictures are kept. */
const PICTURED = new Set(['field', 'sheet', 'weather']);

const MONTH = '(?:January|February|March|April|May|June|July|August|September|October|November|December)';
const SHORT = '(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)';
const FORBIDDEN = {
  iso: [
    new RegExp(`\\b(?:${MONTH}|${SHORT})\\s\\d{1,2}\\b`),
    new RegExp(`(?<!\\d )\\b${SHORT}\\s\\d{4}\\b`),
    new RegExp(`^${SHORT}$`),
    /\d\s(?:in\b(?!\s(?:20|all|wet|dry|each|a)\b)|inch|oz\b|acres?\b|miles?\b|mi\b|ft\b|°F)/,
    /, (?:in|ft|mi|acres)$/,
  ],
  us: [/\d{4}-\d{2}-\d{2}/, /^\d{4}-\d{2}$/, /\d\s(?:mm\b|cm\b|km\b|m\b|ha\b|g\/ha|°C)/, /, (?:mm|m|km|ha)$/],
};

/** Every text but the link that a page shows or speaks below its head, with all that is folded opened. */
async function textsOf(page: Page): Promise<string[]> {
  const texts = await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
    const tables = '.chart-tools button[aria-expanded="false"]';
    for (const button of document.querySelectorAll<HTMLButtonElement>(tables)) button.click();
    const main = document.querySelector('main') as HTMLElement;
    const blocks = new Map<Element, string>();
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const block = node.parentElement?.closest('p,li,td,th,dd,dt,text,label,h1,h2,h3,option') ?? main;
      blocks.set(block, `${blocks.get(block) ?? ''}${node.nodeValue}`);
    }
    const spoken = [...main.querySelectorAll('[aria-label],[aria-valuetext]')].flatMap((element) => [
      element.getAttribute('aria-label') ?? '',
      element.getAttribute('aria-valuetext') ?? '',
    ]);
    const typed = [...main.querySelectorAll<HTMLInputElement>('input:not([readonly]),textarea')].map(
      ({ value }) => value,
    );
    return [...blocks.values(), ...spoken, ...typed]
      .map((text) => text.trim())
      .filter((text) => !text.startsWith('http'));
  });
  return texts.map(unjoined);
}

/** ISO dates that stand on two lines, but for those within an address. */
const brokenDates = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const walker = document.createTreeWalker(
      document.querySelector('main') as HTMLElement,
      NodeFilter.SHOW_TEXT,
    );
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const text = node.nodeValue ?? '';
      if (text.startsWith('http')) continue;
      for (const { index, 0: date } of text.matchAll(/\d{4}-\u2060?\d{2}-\u2060?\d{2}/g)) {
        const range = document.createRange();
        range.setStart(node, index);
        range.setEnd(node, index + date.length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (lines.size > 1) found.push(`${date} in: ${text}`);
      }
    }
    return found;
  });

/** Texts that are not of a style. Publications keep the dates that stand on them: day, month, year. */
const strangeOn = async (page: Page, style: keyof typeof FORBIDDEN) =>
  (await textsOf(page)).flatMap((text) =>
    FORBIDDEN[style].flatMap((pattern) => {
      const found = pattern.exec(text);
      return found === null ? [] : [`${found[0]} in: ${text.slice(0, 160)}`];
    }),
  );

describe('units and dates', () => {
  it('are one kind in every place, charts and blanks and all that is folded in', async () => {
    const put = (path: string, record: object) =>
      fetch(`${running.server.address}api/${path}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json', 'if-none-match': '*' },
        body: JSON.stringify(record),
      });
    expect((await put(FIELD, fieldOf())).status).toBe(200);
    expect((await put('labels/shed-one', labelOf())).status).toBe(200);
    const { page, complaints } = await open('', 'sentence');
    for (const [path, ...rest] of PLACES) {
      const name = path.split('?')[0].replaceAll('/', '-') || 'field';
      const metric = `${path}${path.includes('?') ? '&' : '?'}u=metric`;
      await goToPlace(page, running.server.address, [metric, ...rest]);
      await textsOf(page);
      await page.waitForLoadState('networkidle');
      for (const [units, style] of [
        ['metric', 'iso'],
        ['us', 'us'],
      ] as const) {
        if (units === 'us') await page.getByTestId('units-us').click();
        await expect.poll(() => strangeOn(page, style), { message: `${name}, ${units}` }).toEqual([]);
        if (PICTURED.has(name)) {
          await page.screenshot({ path: join(output, `wording-${style}-${name}.png`), fullPage: true });
        }
      }
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('keep an ISO date on one line, however narrow the screen', async () => {
    const { page } = await open(ASKED, 'story-chart', { width: 360 });
    await page.getByTestId('dates-iso').click();
    for (const [path, ...rest] of PLACES) {
      await goToPlace(page, running.server.address, [path, ...rest]);
      await textsOf(page);
      for (const width of [320, 340, 360, 380, 400]) {
        await page.setViewportSize({ width, height: 800 });
        await expect.poll(() => brokenDates(page), { message: `${path} at ${width}` }).toEqual([]);
      }
    }
    await page.context().close();
  });

  it('are those of a refusal too, which names the blank as the page does', async () => {
    const { page } = await open(ASKED.replace('2026-09-03:11.4', '2026-13-40:11.4'), 'problem');
    const note = async () =>
      unjoined(await page.getByTestId('problem').innerText()).replaceAll('\u00a0', ' ');
    const wrong = 'Your own rain gauge, line 1, day: “2026-13-40” is no day of the calendar.';
    await expect.poll(note).toBe(`${wrong}\n\nGive a date such as May 10, 2027.`);
    await page.getByTestId('dates-iso').click();
    await expect.poll(note).toBe(`${wrong}\n\nGive a date such as 2027-05-10.`);
    await page.context().close();
  });

  it('are chosen apart from each other, kept for the next visit, and change no answer and no link', async () => {
    const { page, complaints } = await open(ASKED, 'story-chart');
    const sentence = async () => unjoined(await page.getByTestId('sentence').innerText());
    const link = page.url();
    const worded = await sentence();
    expect(worded).toContain('planted May\u00a010, 2027');
    const saved = async () => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: /as CSV: .*dots/ }).click(),
      ]);
      return readFileSync(await download.path(), 'utf8');
    };
    const file = await saved();
    expect(file).toMatch(/2026-\d\d-\d\d/);

    await page.getByTestId('dates-iso').click();
    await expect.poll(sentence).toContain('planted 2027-05-10');
    expect(await sentence()).toBe(
      worded.replace('August\u00a014, 2026', '2026-08-14').replace('May\u00a010, 2027', '2027-05-10'),
    );
    expect(page.url()).toBe(link);
    await expect.poll(() => page.getByTestId('plant-on').inputValue()).toBe('2027-05-10');
    expect(unjoined(await page.getByTestId('rain').innerText())).toMatch(
      /\d in of rain from spraying to 2026-09-30/,
    );
    expect(await saved()).toBe(file);

    await page.getByTestId('applied-on').fill('9/8/2026');
    await page.getByTestId('applied-on').blur();
    await page.getByText('“9/8/2026” can be read in two ways.').waitFor();
    await page.getByTestId('applied-on').fill('August 20 2026');
    await page.getByTestId('applied-on').blur();
    await expect.poll(sentence).toContain('sprayed 2026-08-20');
    await expect.poll(() => page.getByTestId('applied-on').inputValue()).toBe('2026-08-20');

    await page.goto(link);
    await expect.poll(sentence).toContain('planted 2027-05-10');
    await page.getByTestId('units-metric').click();
    await page.getByTestId('dates-us').click();
    await expect.poll(sentence).toContain('planted May\u00a010, 2027');
    expect(await page.getByTestId('rain').innerText()).toMatch(
      /mm of rain from spraying to September\u00a030/,
    );
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
