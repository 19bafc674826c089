import { mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { runBuilt } from '../built/builtProgram.ts';
import { answerTime } from './answerTime.ts';
import { expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { served } from './served.ts';
import { unjoined } from './unjoined.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
const picture = fileURLToPath(new URL('../../web/picture/first-screen.png', import.meta.url));

mkdirSync(output, { recursive: true });
const running = served();

/** Text with its spaces made plain: lines may break, and figures hold to their units by no-break spaces. */
const plain = (text: string) => text.replace(/\s+/g, ' ').trim();

const open = (options = {}) => openPage(running.browser, running.server.address, options);

describe('the question’s page', () => {
  it('opens on a worked answer, with its charts, and complains of nothing', async () => {
    const { page, complaints } = await open();
    const sentence = plain(await page.getByTestId('sentence').innerText());
    expect(sentence).toMatch(
      /^In about \d+ in 20 seasons and soils like this \(\d+ %\), flumioxazin sprayed/,
    );
    await page.getByTestId('year-lines').locator('svg').waitFor();
    await page.getByTestId('dots').locator('svg').waitFor();
    expect(await page.getByTestId('cautions').innerText()).toContain('The label is the law');
    await page.screenshot({ path: `${output}first-screen.png` });
    if (process.env.DRYWAKE_KEEP_PICTURE) await page.screenshot({ path: picture });
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('shows the numbers of the command line for the same question', async () => {
    const { page } = await open();
    const { out } = runBuilt(
      [
        ...[
          'odds',
          '--station',
          'demo-invented',
          '--residual',
          'flumioxazin',
          '--crop',
          'lentil',
          '--soil',
          'loam',
        ],
        ...['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30', '--json'],
      ],
      running.store,
    );
    const answer = JSON.parse(out);
    expect(plain(await page.getByTestId('sentence').innerText())).toBe(answer.sentence);
    expect(plain(await page.getByTestId('advice').innerText())).toBe(answer.advice);
    await page.context().close();
  });

  it('answers anew when the planting date changes, by field, button and keyboard, and keeps it in the address', async () => {
    const { page, complaints } = await open();
    const sentence = page.getByTestId('sentence');
    const first = await sentence.innerText();
    await page.getByTestId('plant-date').fill('June 20 2027');
    await page.getByTestId('plant-date').blur();
    await page.waitForFunction(
      (before) => document.querySelector('[data-testid=sentence]')?.textContent !== before,
      first,
    );
    await expect.poll(() => sentence.innerText()).toContain('June\u00a020, 2027');
    await expect.poll(() => page.url()).toContain('plantOn=2027-06-20');
    await page.getByTestId('plant-later').click();
    await expect.poll(() => sentence.innerText()).toContain('June\u00a021, 2027');
    await page.getByTestId('plant-earlier').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => sentence.innerText()).toContain('June\u00a020, 2027');
    const link = page.url();
    const said = await sentence.innerText();
    await page.goto('about:blank');
    await page.goto(link);
    await expect.poll(() => sentence.innerText()).toBe(said);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('keeps what was typed and says what is wrong with it', async () => {
    const { page } = await open();
    const field = page.getByTestId('plant-date');
    const weekday = page.locator('#marker-plantOn-remark');
    await expect.poll(() => weekday.innerText()).toContain('Monday');
    await field.fill('someday');
    await field.blur();
    expect(await field.inputValue()).toBe('someday');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => weekday.count()).toBe(0);
    expect(await page.getByTestId('sentence').innerText()).toContain('May\u00a010, 2027');
    await page.context().close();
  });

  it('switches units everywhere without changing the answer', async () => {
    const { page } = await open();
    const sentence = async () => unjoined(await page.getByTestId('sentence').innerText());
    const said = await sentence();
    const text = async () => plain(await page.locator('main').innerText());
    await expect.poll(() => text()).toMatch(/\d\.\d\d in of rain/);
    await page.getByTestId('units-metric').click();
    await expect.poll(text).toMatch(/\d mm of rain/);
    await expect.poll(text).not.toMatch(/\d\.\d\d in of rain|Rain, in\b/);
    // Dates follow the units until a style of their own is chosen; the rest of the sentence stays.
    await expect.poll(sentence).toContain('2027-05-10');
    await page.getByTestId('dates-us').click();
    await expect.poll(sentence).toBe(said);
    await expect.poll(() => page.url()).toContain('u=metric');
    await page.context().close();
  });

  it('tells the limits of a link in the reader’s units', async () => {
    const { page } = await open();
    await page.goto(
      `${running.server.address}?v=1&station=demo-invented&residual=flumioxazin&crop=lentil&appliedOn=2026-08-14&plantOn=2027-05-10&elevationM=10000`,
    );
    const problem = page.getByTestId('problem');
    await expect
      .poll(() => problem.innerText())
      .toMatch(/“32808 ft” is too large\.\s+It takes at most 19685 ft\./);
    await page.getByTestId('units-metric').click();
    await expect
      .poll(() => problem.innerText())
      .toMatch(/“10000 m” is too large\.\s+It takes at most 6000 m\./);
    await page.context().close();
  });

  it('says when the years are too few, without a number', async () => {
    const { page } = await open();
    await page.goto(
      `${running.server.address}?v=1&station=demo-invented&residual=flumioxazin&crop=lentil&appliedOn=2026-08-14&plantOn=2027-05-10&baseFrom=2010&baseTo=2015`,
    );
    await expect.poll(() => page.locator('main').innerText()).toMatch(/6 usable years.*at least 10/s);
    expect(await page.locator('main').innerText()).not.toMatch(/\d+ in 20 seasons/);
    await page.context().close();
  });
});

describe('for everybody', () => {
  it('nothing serious for axe, nothing sideways on any screen', async () => {
    const { page } = await open();
    await page.getByTestId('year-lines').locator('svg').waitFor();
    await expectGoodOnEveryScreen(page, [output, 'question']);
    await page.context().close();
  });

  it('shows answer and marker at once on a phone, above the bar of the question', async () => {
    for (const size of [
      { width: 360, height: 640 },
      { width: 375, height: 667 },
    ]) {
      const { page } = await open(size);
      const gripRadius = 16;
      const gripOverBar = async () => {
        const slider = await page.getByTestId('plant-slider').boundingBox();
        const bar = await page.getByTestId('open-question').boundingBox();
        if (slider === null || bar === null) throw new Error('The marker or the bar is not drawn.');
        return slider.y + slider.height / 2 + gripRadius - bar.y;
      };
      await expect.poll(gripOverBar).toBeLessThanOrEqual(0);
      await page.context().close();
    }
  });

  it('answers each kind of change soon, and says how soon', async () => {
    const { page } = await openPage(running.browser, running.server.address, { waitFor: 'story-chart' });
    await page.waitForLoadState('networkidle');
    const changes = [
      ['planting date', '[data-testid="plant-on"]', 'June 5 2027'],
      ['rate', '#blank-rateFraction', '90'],
      ['soil', '#blank-soilClass', 'clay'],
      ['residual', '#blank-residual', 'imazamox'],
      ['crop', '#blank-crop', 'corn'],
      ['units', '[data-testid="units-metric"]', null],
    ] as const;
    for (const [name, selector, value] of changes) {
      // Until the charts of the answer before are drawn.
      await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
      const ms = await answerTime(page, selector, value);
      console.log(`the question: another ${name} is answered within ${Math.round(ms)} ms`);
      expect(ms, name).toBeGreaterThan(0);
    }
    await page.context().close();
  });

  it('shows the first chart soon, and says how soon', async () => {
    const context = await running.browser.newContext({ viewport: { width: 1280, height: 900 } });
    const page = await context.newPage();
    await page.addInitScript(() => {
      new MutationObserver((_, watch) => {
        if (document.querySelector('.drawing svg') === null) return;
        watch.disconnect();
        document.documentElement.dataset.firstChartMs = `${Math.round(performance.now())}`;
      }).observe(document, { childList: true, subtree: true });
    });
    await page.goto(running.server.address);
    const html = page.locator('html[data-first-chart-ms]');
    await html.waitFor();
    const ms = Number(await html.getAttribute('data-first-chart-ms'));
    const scripts = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .filter(({ name }) => name.endsWith('.js'))
        .map(({ name }) => name),
    );
    console.log(`first chart ${ms} ms after navigation began`);
    expect(ms).toBeGreaterThan(0);
    const bytes = scripts.map((name) => {
      const file = fileURLToPath(new URL(`../../dist/web${new URL(name).pathname}`, import.meta.url));
      return gzipSync(readFileSync(file)).length;
    });
    const total = bytes.reduce((sum, one) => sum + one, 0);
    const drawing = Math.max(...bytes);
    console.log(`scripts of the first page: ${total} bytes gzipped, ${drawing} of them to draw charts`);
    expect(total - drawing).toBeLessThan(300_000);
    await context.close();
  });
});
