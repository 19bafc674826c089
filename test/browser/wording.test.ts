import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

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
const PLACES = [
  [ASKED, 'story-chart'],
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
] as const;

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

/** Every text that a page shows or speaks below its head, with all that is folded opened. */
async function textsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
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
    return [...blocks.values(), ...spoken, ...typed].map((text) => text.trim());
  });
}

/** Texts that are not of a style; publications and own words of labels keep the dates they were printed with. */
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
    const strange: string[] = [];
    for (const [path, shows] of PLACES) {
      const name = path.split('?')[0].replaceAll('/', '-') || 'field';
      await page.goto(`${running.server.address}${path}${path.includes('?') ? '&' : '?'}u=metric`);
      await page.getByTestId(shows).first().waitFor();
      for (const [units, style] of [
        ['metric', 'iso'],
        ['us', 'us'],
      ] as const) {
        if (units === 'us') await page.getByTestId('units-us').click();
        let left: string[] = [];
        for (let tries = 0; tries < 8; tries++) {
          left = await strangeOn(page, style);
          if (left.length === 0 && tries > 0) break;
          await page.waitForTimeout(250);
        }
        strange.push(...left.map((text) => `${style} ${name}: ${text}`));
        await page.screenshot({ path: join(output, `wording-${style}-${name}.png`), fullPage: true });
      }
    }
    console.log([...new Set(strange)].join('\n'));
    expect(strange).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});
