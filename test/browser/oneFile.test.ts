import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { tempFolder } from '../tempFolder.ts';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { readPdf } from './readPdf.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();

const DEMO = `?${new URLSearchParams(
  Object.entries({ v: 1, ...demoQuestion }).map(([key, value]) => [key, `${value}`]),
)}`;
const CONFIRMED = `${DEMO}&interval=4+months`;
const plain = (text: string) => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();

/** Presses the button that saves the answer, and gives the path of the file. */
async function saved(page: Page): Promise<string> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('save-file').press('Enter'),
  ]);
  expect(file.suggestedFilename()).toBe('drywake-invented-flumioxazin-lentil-2026-08-14.html');
  const path = join(tempFolder(), file.suggestedFilename());
  await file.saveAs(path);
  return path;
}

/** A page that can reach nothing but files of this machine. */
async function openFile(path: string): Promise<{ page: Page; asked: string[]; complaints: string[] }> {
  const context = await running.browser.newContext({ offline: true, locale: 'en-US' });
  const page = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(pathToFileURL(path).href);
  return { page, asked, complaints };
}

describe('an answer saved as one file', () => {
  it('opens without a server on any screen, in both themes and on paper, and says what the page said', async () => {
    const answered = await openPage(running.browser, running.server.address, { path: CONFIRMED });
    const said = plain(await answered.page.getByTestId('sentence').innerText());
    const path = await saved(answered.page);
    expect(answered.complaints).toEqual([]);
    await answered.page.context().close();

    const { page, asked, complaints } = await openFile(path);
    expect(plain(await page.locator('h1').innerText())).toBe(said);
    expect(await page.locator('script').count()).toBe(0);
    await page.setViewportSize({ width: 360, height: 800 });
    await expect.poll(() => page.locator('figure .narrow svg').first().isVisible()).toBe(true);
    expect(await page.locator('figure .wide svg').first().isVisible()).toBe(false);
    const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    await page.emulateMedia({ colorScheme: 'light' });
    const day = await paper();
    await page.emulateMedia({ colorScheme: 'dark' });
    await expect.poll(paper).not.toBe(day);
    await expectGoodOnEveryScreen(page, [output, 'one-file']);

    const file = await page.pdf({ format: 'Letter' });
    writeFileSync(join(output, 'one-file.pdf'), file);
    const { pages, text } = readPdf(file);
    expect(pages).toBeLessThanOrEqual(6);
    expect(plain(text)).toContain('nothing here allows planting lentil before December 14, 2026');
    expect(asked).toEqual([pathToFileURL(path).href]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('is had from the sheet, once the interval is confirmed from the label', async () => {
    const { page } = await openPage(running.browser, running.server.address, { path: DEMO });
    expect(await page.getByTestId('save-file').count()).toBe(0);
    await page.getByTestId('file-wants-label').click();
    await page.getByTestId('confirm-sheet').click();
    await saved(page);
    await page.route('**/api/sheet/file*', (route) => route.abort());
    await page.getByTestId('save-file').click();
    await page.getByTestId('save-file-failed').waitFor();
    await page.context().close();
  });

  it('runs nothing that a name holds', async () => {
    const hostile = '<script>document.title="hit"</script><img src=x:y>';
    const answer = await fetch(new URL('api/sheet/file', running.server.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        ...demoQuestion,
        interval: '4 months',
        zones: [{ name: hostile, overlapFactor: 2 }],
      }),
    });
    const path = join(tempFolder(), 'hostile.html');
    writeFileSync(path, await answer.text());
    const { page, asked } = await openFile(path);
    await page.getByText(hostile, { exact: false }).waitFor();
    expect(await page.title()).toBe('flumioxazin before lentil');
    expect(asked.length).toBe(1);
    await page.context().close();
  });
});
