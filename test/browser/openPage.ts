import { type Browser, chromium, type Page } from 'playwright-core';
import { findBrowser } from '../tools/findBrowser.ts';

/** A headless browser; `npm test` has made sure that there is one. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === null) throw new Error('No browser is here; npm test installs one.');
  return chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
}

export interface OpenPage {
  readonly page: Page;
  /** Everything the page complained of: errors, failed requests, requests to anywhere but the server. */
  readonly complaints: string[];
}

/** A new page of a width, in a theme, with no memory of earlier ones, once `waitFor` shows. */
export async function openPage(
  browser: Browser,
  address: string,
  { width = 1280, height = 900, dark = false, path = '', waitFor = 'sentence' } = {},
): Promise<OpenPage> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
    timezoneId: 'America/Denver',
    locale: 'en-US',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !url.startsWith('data:') && !url.startsWith('blob:'))
      complaints.push(`request to ${url}`);
  });
  await page.goto(`${address}${path}`);
  await page.getByTestId(waitFor).first().waitFor();
  return { page, complaints };
}
