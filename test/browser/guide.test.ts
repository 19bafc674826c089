import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { namedFiles } from '../built/documents/fences.ts';
import { expectGood } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { inventRegion } from './regionOfStations.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
const pictures = fileURLToPath(new URL('../../web/picture/', import.meta.url));
const guide = new URL('../../web/guide/', import.meta.url);
mkdirSync(output, { recursive: true });
const running = served(inventRegion);

const DOCUMENTS = readdirSync(guide).filter((name) => name.endsWith('.md'));
const QUESTION =
  '?v=1&residual=flumioxazin&appliedOn=2026-08-14&crop=lentil&plantOn=2027-05-10&soilClass=loam&station=demo-invented&asOf=2026-09-30';

/** The invented stations' records end with 2025. */
const REGION =
  '?v=1&residual=flumioxazin&appliedOn=2025-08-14&crop=lentil&plantOn=2026-05-10&asOf=2025-09-30';

/** Each picture of the guide: where it is taken, and what must show on it. */
const PICTURES: Record<string, { path: string; part?: string; ready(page: Page): Promise<void> }> = {
  'side-by-side.jpg': {
    path: `compare${QUESTION}`,
    ready: (page) => page.getByTestId('control-chart').locator('svg path').first().waitFor(),
  },
  'crops.jpg': {
    path: `crops${QUESTION}`,
    ready: (page) => page.getByTestId('crop-grid').locator('td button').first().waitFor(),
  },
  'season.jpg': { path: QUESTION, part: 'story', ready: (page) => drawn(page, 'story') },
  'region.jpg': { path: `region${REGION}`, part: 'region-figure', ready: regionAnswered },
  'list.jpg': { path: 'fields', part: 'list-answers', ready: listAnswered },
  'evidence.jpg': { path: QUESTION, part: 'evidence', ready: (page) => drawn(page, 'evidence') },
};

/** Gives the page the list that the guide shows, and waits for its answers. */
async function listAnswered(page: Page): Promise<void> {
  const text = namedFiles().get('list.csv') ?? '';
  await page.getByText('A list of fields, answered and ranked').click();
  const file = { name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(text) };
  await page.getByTestId('list-in').setInputFiles(file);
  await page.getByTestId('list-row').nth(1).waitFor();
}

/** Waits until every station has answered and stands on the map. */
async function regionAnswered(page: Page): Promise<void> {
  await page.getByTestId('region-map').locator('svg path[data-shape]').first().waitFor();
  await page.getByTestId('region-progress').waitFor({ state: 'detached' });
}

/** Waits for a part of the answer and for its drawings. */
async function drawn(page: Page, testId: string): Promise<void> {
  await page.getByTestId('why-chart').locator('svg').waitFor();
  await page.getByTestId(testId).waitFor();
  if (testId === 'story') await page.getByTestId(testId).locator('svg path').first().waitFor();
}

describe('the guide’s pictures (DRYWAKE_KEEP_PICTURE=1 keeps them)', () => {
  it('are the page as it is', async () => {
    const shown = DOCUMENTS.flatMap((name) =>
      [...readFileSync(new URL(name, guide), 'utf8').matchAll(/\]\(\.\.\/picture\/([^)]+)\)/g)].map(
        ([, file]) => file,
      ),
    );
    expect(new Set(shown)).toEqual(new Set(['first-screen.png', ...Object.keys(PICTURES)]));
    const { page, complaints } = await openPage(running.browser, running.server.address, { height: 800 });
    for (const [file, { path, part, ready }] of Object.entries(PICTURES)) {
      await page.goto(`${running.server.address}${path}`);
      await ready(page);
      const how = { type: 'jpeg', quality: 72 } as const;
      const seen = part === undefined ? page : page.getByTestId(part);
      await seen.screenshot({ ...how, path: `${output}${file}` });
      if (process.env.DRYWAKE_KEEP_PICTURE) await seen.screenshot({ ...how, path: `${pictures}${file}` });
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('the guide on the server', () => {
  it('is reached from the foot of every place, which also says the version', async () => {
    const { page } = await openPage(running.browser, running.server.address, { waitFor: 'version' });
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(await page.getByTestId('version').innerText()).toBe(`Drywake ${version}`);
    await page.getByRole('link', { name: 'Notebooks', exact: true }).click();
    await page.getByTestId('notebooks').waitFor();
    await page.goBack();
    await page.getByTestId('sentence').waitFor();
    await page.getByRole('link', { name: 'Guide', exact: true }).click();
    await page.getByRole('heading', { name: 'The guide', level: 1 }).waitFor();
    await page.context().close();
  });

  it('has a page for every document, whose links lead somewhere and whose pictures show', async () => {
    const { page, complaints } = await openPage(running.browser, running.server.address, {
      path: 'guide/index.html',
      waitFor: 'page',
    });
    const asked = new Map<string, number>();
    for (const name of [...DOCUMENTS, 'data.md']) {
      const address = `${running.server.address}guide/${name === 'README.md' ? 'index.html' : name.replace('.md', '.html')}`;
      await page.goto(address);
      const { links, unseen, sideways } = await page.evaluate(() => ({
        links: [...document.querySelectorAll('a')].map(({ href }) => href),
        unseen: [...document.images].filter(({ naturalWidth }) => naturalWidth === 0).map(({ src }) => src),
        sideways: document.documentElement.scrollWidth - window.innerWidth,
      }));
      expect([unseen, sideways <= 0], name).toEqual([[], true]);
      for (const link of links) {
        const bare = link.split('#')[0];
        if (!asked.has(bare)) asked.set(bare, (await page.request.get(bare)).status());
        expect(asked.get(bare), `${name}: ${link}`).toBe(200);
      }
    }
    await page.goto(`${running.server.address}guide/plan.html`);
    await page.setViewportSize({ width: 390, height: 800 });
    await expectGood(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectGood(page);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
