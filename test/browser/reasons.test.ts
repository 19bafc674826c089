import { mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();

const QUESTION =
  '?v=1&residual=flumioxazin&appliedOn=2026-08-14&crop=lentil&plantOn=2027-05-10&soilClass=loam&station=demo-invented&asOf=2026-09-30';
const open = (path = '', options = {}) =>
  openPage(running.browser, running.server.address, { path, ...options });
const plain = (text: string) => text.replace(/\s+/g, ' ').trim();
const textOf = async (page: Page, testId: string) => plain(await page.getByTestId(testId).innerText());

async function saved(page: Page, button: RegExp): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('why-chart').getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

describe('the reasons', () => {
  it('stand as a drawing, in words, as a table and as files', async () => {
    const { page, complaints } = await open();
    await page.getByTestId('why-chart').locator('svg').waitFor();
    expect(await textOf(page, 'why')).toMatch(/× [\d.]+ for rain shortfall and dry soil/);
    await page.getByTestId('why-chart').getByRole('button', { name: 'As a table' }).click();
    const rows = page.getByTestId('why-chart').locator('tbody tr');
    await expect.poll(() => rows.count()).toBe(6);
    const times = (await rows.locator('td:nth-child(2)').allInnerTexts()).map(Number);
    const [whole, ...factors] = times.reverse();
    expect(factors.reduce((product, factor) => product * factor, 1)).toBeCloseTo(whole, 2);

    const csv = await saved(page, /as CSV/);
    expect(csv.name).toMatch(/^drywake-invented-.*-why\.csv$/);
    expect(csv.text.split('\r\n')[0]).toBe('Reason,Times,"So far, times",Made by,Asked');
    expect(csv.text.split('\r\n')[1]).toMatch(/,"Drywake \d+\.\d+\.\d+, \d{4}-\d\d-\d\d","?\/\?v=1&/);
    const svg = await saved(page, /as SVG/);
    expect(svg.name).toMatch(/-why\.svg$/);
    expect(svg.text).toContain('Rain and soil moisture');
    expect(svg.text).not.toContain('var(--');
    expect(svg.text).toMatch(/<metadata>[^<]+\nMade by Drywake [^<]+\nAsked: \/\?v=1&amp;[^<]+<\/metadata>/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('are parts of the dose where leaves caught some of it', async () => {
    const { page } = await open(`${QUESTION}&canopyFraction=0.6`);
    const parts = page.getByTestId('why-parts');
    await expect.poll(() => parts.locator('tbody tr').count()).toBe(2);
    expect(await parts.innerText()).toContain('on leaves');
    expect(await page.getByTestId('why-chart').count()).toBe(0);
    await page.context().close();
  });
});

describe('what the label asks for', () => {
  it('is told as met, not met or open, with the interval that results', async () => {
    const { page } = await open();
    const states = page.getByTestId('condition');
    expect(await states.evaluateAll((items) => items.map((item) => item.getAttribute('data-state')))).toEqual(
      ['met', 'open'],
    );
    expect(await textOf(page, 'interval-result')).toContain('The interval that counts is 4 months');
    const rules = await textOf(page, 'counting-rules');
    expect(rules).toContain('North Dakota and Minnesota');
    expect(rules).toMatch(/June 1 to September 1: [\d.]+ in, against 6.00 in, under/);
    await page.getByTestId('units-metric').click();
    await expect.poll(() => textOf(page, 'counting-rules')).toMatch(/\d+ mm, against 152 mm, under/);
    await page.context().close();
  });

  it('is told for each species of a mix', async () => {
    const { page } = await open(`${QUESTION.replace('crop=lentil', 'crop=radish+%2B+pea')}`);
    const mix = page.getByTestId('mix');
    await expect.poll(() => mix.locator('tbody tr').count()).toBe(2);
    expect(plain(await mix.locator('tr[data-rules]').innerText())).toMatch(/^radish.*18 months/);
    await page.getByTestId('open-alternatives').click();
    await page.getByTestId('alternatives-body').waitFor();
    expect(await textOf(page, 'alternatives-body')).toMatch(
      /^Another date for radish \+ field pea Of the mix the most restricted species counts/,
    );
    await page.context().close();
  });
});

describe('evidence', () => {
  const fold = (page: Page) => page.getByText('Soil tests and bioassays', { exact: true });

  it('is entered in the form, kept in the address and over a reload, and shows what it moved', async () => {
    const { page, complaints } = await open(QUESTION);
    await fold(page).click();
    await page.getByTestId('add-clean-bioassay').click();
    await page.getByTestId('findings').waitFor();
    await expect.poll(() => page.url()).toContain('evidence=bioassay:2026-09-30:clean');
    expect(await textOf(page, 'findings')).toMatch(
      /The evidence moves the odds from about \d+ in 20 to about \d+ in 20/,
    );
    expect(await textOf(page, 'findings')).toContain('A bioassay stayed clean');
    const said = await textOf(page, 'sentence');
    await page.reload();
    await expect.poll(() => textOf(page, 'sentence')).toBe(said);
    await fold(page).click();
    await page.getByRole('button', { name: 'Remove bioassay 1' }).click();
    await expect.poll(() => page.getByTestId('findings').count()).toBe(0);
    await expect.poll(() => page.url()).not.toContain('evidence');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('may be a soil test whose figure is still to come; then it says what is missing', async () => {
    const { page } = await open(QUESTION);
    await fold(page).click();
    await page.getByTestId('add-soil-test').click();
    const found = page.getByLabel('Residue found');
    await expect.poll(() => found.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => textOf(page, 'stale')).toContain('Answer to the last complete question');
    await expect.poll(() => page.url()).toContain('evidence=soil-test:2026-09-30');
    await found.fill('30');
    await found.blur();
    await page.getByTestId('findings').waitFor();
    await expect.poll(() => page.url()).toContain('evidence=soil-test:2026-09-30:share=0.3');
    await page.getByLabel('The laboratory found').selectOption('none-ppm');
    await page.getByLabel('Least that it finds').fill('0.005');
    await page.getByLabel('Least that it finds').blur();
    await expect.poll(() => textOf(page, 'findings')).toContain('A soil test found none');
    await expect.poll(() => page.url()).toContain('evidence=soil-test:2026-09-30:none:limit=0.005:depth=15');
    await page.context().close();
  });

  it('leads to the guide', async () => {
    const { page } = await open();
    await page.getByRole('link', { name: 'The bioassay sheet, to print' }).click();
    await page.getByTestId('guide').waitFor();
    expect(await textOf(page, 'guide')).toContain('Field bioassay: flumioxazin before lentil');
    await page.goBack();
    await page.getByTestId('sentence').waitFor();
    await page.context().close();
  });
});

describe('the story of the season', () => {
  it('tells the weeks since spraying and the weeks of waiting', async () => {
    const { page } = await open();
    await page.getByTestId('story-chart').locator('svg').waitFor();
    const story = await textOf(page, 'story');
    expect(story).toMatch(/Rain since spraying is [\d.]+ in (short of|above) normal/);
    expect(story).toMatch(/[\d.]+ breakdown days have gone by, against [\d.]+ in a normal year/);
    await page.getByTestId('story-chart').getByRole('button', { name: 'As a table' }).click();
    const rows = await page.getByTestId('story-chart').locator('tbody tr').allInnerTexts();
    expect(rows.filter((row) => row.includes('as known then')).length).toBe(7);
    expect(rows.filter((row) => row.includes('later')).length).toBe(12);
    await page.context().close();
  });

  it('tells the waiting alone while planning', async () => {
    const { page } = await open(QUESTION.replace('&asOf=2026-09-30', ''));
    await expect.poll(() => textOf(page, 'story')).toMatch(/^What waiting gains/);
    expect(await textOf(page, 'story')).not.toContain('breakdown days have gone by');
    await page.context().close();
  });
});

describe('alternatives', () => {
  it('are asked for when opened, not before, and lead to new questions', async () => {
    const { page, complaints } = await open(QUESTION);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    await page.getByTestId('story-chart').locator('svg').waitFor();
    expect(asked).not.toContain('/api/alternatives');
    await page.getByTestId('open-alternatives').focus();
    await page.keyboard.press('Enter');
    await page.getByTestId('alternatives-body').waitFor();
    expect(asked.filter((path) => path === '/api/alternatives').length).toBe(1);
    expect(await textOf(page, 'other-crops')).toMatch(/\d+ of \d+ other crops are within label and limit/);
    expect(await page.getByTestId('other-residuals').locator('tbody tr').count()).toBeGreaterThan(0);
    await expect.poll(() => page.getByTestId('overlap').locator('tbody tr').count()).toBe(3);
    await page.getByRole('button', { name: 'Ask about June 4, 2027' }).click();
    await expect.poll(() => page.url()).toContain('plantOn=2027-06-04');
    await page.getByTestId('other-crops').getByRole('button', { name: 'sunflower' }).click();
    await expect.poll(() => textOf(page, 'sentence')).toContain('sunflower');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('help to find an odds limit, and keep the figures over a reload', async () => {
    const { page } = await open(QUESTION);
    await page.getByTestId('open-limit').click();
    await page.getByTestId('stakes-cost').fill('160');
    await page.getByTestId('stakes-loss').fill('160');
    await page.getByTestId('stakes-loss').blur();
    await expect.poll(() => page.getByTestId('stakes-cost').getAttribute('aria-invalid')).toBe('true');
    await page.getByTestId('stakes-cost').fill('20');
    await page.getByTestId('stakes-cost').blur();
    await expect.poll(() => textOf(page, 'stakes-limit')).toContain('2.5 in 20');
    await page.getByRole('button', { name: 'Take 2.5 in 20 as the limit' }).click();
    await expect.poll(() => page.url()).toContain('oddsLimit=0.125');
    await page.reload();
    await page.getByTestId('sentence').waitFor();
    await page.getByTestId('open-limit').click();
    await expect.poll(() => page.getByTestId('stakes-cost').inputValue()).toBe('20');
    await page.context().close();
  });
});

describe('the form', () => {
  it('takes the use of the stand into question and address', async () => {
    const { page } = await open(QUESTION);
    await page.getByText('More about the field', { exact: true }).click();
    await page.getByLabel('What becomes of the next crop').selectOption('grazed');
    await expect.poll(() => page.url()).toContain('standUse=grazed');
    await expect.poll(() => textOf(page, 'cautions')).toMatch(/graz/i);
    await page.context().close();
  });
});

describe('for everybody', () => {
  it('nothing serious for axe, nothing sideways on any screen, with all opened', async () => {
    const path = `${QUESTION.replace('crop=lentil', 'crop=radish+%2B+pea')}&evidence=bioassay:2026-09-29:hurt`;
    const { page } = await open(path);
    await page.getByTestId('open-alternatives').click();
    await page.getByTestId('open-limit').click();
    await page.getByTestId('alternatives-body').waitFor();
    await page.getByTestId('story-chart').locator('svg').waitFor();
    await page.getByTestId('why-chart').locator('svg').waitFor();
    await expectGoodOnEveryScreen(page, [output, 'reasons']);
    await page.context().close();
  });
});
