import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { startBuilt } from '../built/builtProgram.ts';
import { expectGood, expectGoodOnEveryScreen } from './everyScreen.ts';
import { openPage } from './openPage.ts';
import { readPdf } from './readPdf.ts';
import { served } from './served.ts';

const output = fileURLToPath(new URL('../../test-output/', import.meta.url));
mkdirSync(output, { recursive: true });
const running = served();
const open = (path: string, waitFor: string, options = {}) =>
  openPage(running.browser, running.server.address, { path, waitFor, ...options });

const FIELD = 'fields/larkrise-home-quarter';
const unfold = (page: Page, part: string) =>
  page.getByTestId(`part-${part}`).locator('summary').first().click();
const blank = (page: Page, field: string) => page.locator(`[id="blank-${field}"]`);
/** Types into a blank and leaves it. */
async function write(page: Page, field: string, text: string): Promise<void> {
  await blank(page, field).fill(text);
  await blank(page, field).blur();
}
const keptAs = (page: Page, version: number) =>
  expect
    .poll(() => page.getByTestId('keep-state').innerText())
    .toMatch(new RegExp(`Everything is kept\\.\\s*version ${version}$`));
async function kept(path = FIELD) {
  const response = await fetch(`${running.server.address}api/${path}`);
  return (await response.json()) as {
    version: number;
    record: Record<string, unknown>;
    entry: Record<string, unknown>;
  };
}
const saved = async (page: Page, testId: string): Promise<string> => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId(testId).click()]);
  return readFileSync(await download.path(), 'utf8');
};

/** Takes the soil test of an earlier step out of every field: it is dated past the end of the record, so no answer rests on it. */
async function withoutEvidence(): Promise<void> {
  const { fields } = await (await fetch(`${running.server.address}api/fields`)).json();
  for (const { version, record } of fields) {
    await fetch(`${running.server.address}api/fields/${record.id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': `"${version}"` },
      body: JSON.stringify({ ...record, evidence: [] }),
    });
  }
}

describe('the fields', () => {
  it('offers an invented field where there is none, answers it, and leads to its whole question', async () => {
    const { page, complaints } = await open('fields', 'field-count');
    await expect.poll(() => page.getByTestId('field-count').innerText()).toMatch(/^No field is kept yet/);
    await page.getByTestId('demo-field').click();
    await page.getByTestId('field-page').waitFor();
    expect(new URL(page.url()).pathname).toBe(`/${FIELD}`);
    await expect.poll(() => page.locator('.lede').innerText()).toBe('Larkrise (invented), 152 acres');
    const answer = page.getByTestId('plan-answer');
    await page.getByTestId('whole-question').waitFor();
    expect(await answer.innerText()).toMatch(/in\s20/);
    const odds = /about \d+\sin\s20/.exec(await answer.innerText())?.[0];
    await page.getByTestId('whole-question').click();
    await page.getByTestId('sentence').waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
    await expect
      .poll(async () => (await page.getByTestId('sentence').innerText()).replaceAll('\u00a0', ' '))
      .toContain(odds?.replaceAll('\u00a0', ' '));

    await page.goBack();
    await page.getByTestId('field-page').waitFor();
    await page.getByRole('link', { name: 'All fields' }).click();
    const row = page.getByTestId('field-row');
    await expect.poll(() => row.innerText()).toContain('Dec\u00a014, 2026');
    expect(await row.innerText()).toMatch(/152 acres/);
    await expect
      .poll(() => row.getByTestId('field-odds-range').innerText())
      .toMatch(/^(between \d+ and|close to) \d+.in.20 seasons and soils like this, by \d\d years$/);
    await page.getByTestId('units-metric').click();
    await expect.poll(() => row.innerText()).toMatch(/61\.5 ha/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('keeps each change, takes it back and brings it again', async () => {
    const { page } = await open(FIELD, 'field-page');
    await unfold(page, 'place');
    await write(page, 'organicMatterPercent', '3.5');
    await keptAs(page, 2);
    expect((await kept()).record.organicMatterPercent).toBe(3.5);
    await page.getByTestId('undo').click();
    await keptAs(page, 3);
    await expect.poll(() => blank(page, 'organicMatterPercent').inputValue()).toBe('');
    await expect.poll(() => page.getByTestId('undo').innerText()).toBe('Bring the change back');
    await page.getByTestId('undo').click();
    await keptAs(page, 4);
    await expect.poll(() => blank(page, 'organicMatterPercent').inputValue()).toBe('3.5');
    expect((await kept()).record.organicMatterPercent).toBe(3.5);

    await page.getByTestId('units-metric').click();
    await write(page, 'areaHa', '70');
    await keptAs(page, 5);
    await page.getByTestId('units-us').click();
    await expect.poll(() => blank(page, 'areaHa').inputValue()).toBe('173');
    expect((await kept()).record.areaHa).toBe(70);
    await page.context().close();
  });

  it('has after a reload what could not be read, and what was still being typed', async () => {
    const { page } = await open(FIELD, 'field-page');
    await unfold(page, 'treatments');
    await write(page, 'treatments.0.appliedOn', 'the day after harvest');
    await unfold(page, 'place');
    await blank(page, 'phNote').fill('Limed in the east');
    await page.reload();
    await page.getByTestId('field-page').waitFor();
    const date = blank(page, 'treatments.0.appliedOn');
    await expect.poll(() => date.inputValue()).toBe('the day after harvest');
    await expect.poll(() => date.isVisible()).toBe(true);
    await expect
      .poll(() => page.locator('.blank-problem').innerText())
      .toContain('is not a date that can be read');
    await expect.poll(async () => (await kept()).record.phNote).toBe('Limed in the east');
    await write(page, 'treatments.0.appliedOn', '8/20/2026');
    await keptAs(page, 7);
    await expect.poll(() => page.getByText('Thursday, August 20, 2026').count()).toBe(1);
    await page.context().close();
  });

  it('says what the server refuses, keeps it in the browser and sends it once it is mended', async () => {
    const { page } = await open(FIELD, 'field-page');
    const { version } = await kept();
    await unfold(page, 'evidence');
    await page.getByTestId('add-soil-test').click();
    await page.getByTestId('problem').waitFor();
    expect(await page.getByTestId('keep-state').getAttribute('data-state')).toBe('waiting');
    await page.reload();
    await page.getByTestId('field-page').waitFor();
    await unfold(page, 'evidence');
    await expect.poll(() => page.getByTestId('finding').count()).toBe(1);
    await write(page, 'evidence.0.fractionLeft', '12');
    await keptAs(page, version + 1);
    expect((await kept()).record.evidence).toMatchObject([{ kind: 'soil test', fractionLeft: 0.12 }]);
    await page.context().close();
  });

  it('shows both where two windows change the same field, and overwrites neither unasked', async () => {
    const first = await open(FIELD, 'field-page');
    const other = await open(FIELD, 'field-page');
    const { version } = await kept();
    await unfold(first.page, 'place');
    await unfold(other.page, 'place');
    await write(first.page, 'soilPh', '6.4');
    await keptAs(first.page, version + 1);
    await write(other.page, 'note', 'Written in the other window');
    const conflict = other.page.getByTestId('conflict');
    await conflict.waitFor();
    expect(await conflict.innerText()).toMatch(/changed in another window while you changed it here/);
    const rows = await conflict.locator('tbody tr').allInnerTexts();
    expect(rows).toHaveLength(2);
    expect(rows.join('\n')).toMatch(/Soil pH\s+nothing\s+6\.4/);
    expect(rows.join('\n')).toContain('Written in the other window');
    expect((await kept()).record).toMatchObject({ soilPh: 6.4 });
    expect((await kept()).version).toBe(version + 1);
    await expectGood(other.page);
    await other.page.screenshot({ path: join(output, 'fields-conflict.png'), fullPage: true });

    await other.page.reload();
    await conflict.waitFor();
    await other.page.getByTestId('keep-mine').click();
    await keptAs(other.page, version + 2);
    expect((await kept()).record).toMatchObject({ note: 'Written in the other window' });

    await write(first.page, 'soilPh', '7.9');
    await first.page.getByTestId('conflict').waitFor();
    await first.page.getByTestId('take-theirs').click();
    await keptAs(first.page, version + 2);
    await expect.poll(() => blank(first.page, 'note').inputValue()).toBe('Written in the other window');
    await expect.poll(() => blank(first.page, 'soilPh').inputValue()).toBe('');
    await first.page.context().close();
    await other.page.context().close();
  });

  it('asks once before it removes, and brings back what was removed', async () => {
    const { page } = await open(FIELD, 'field-page');
    const { version } = await kept();
    await unfold(page, 'treatments');
    await page.getByTestId('treatments-add').click();
    await keptAs(page, version + 1);
    await page.getByTestId('treatments-remove').nth(1).click();
    await page.getByTestId('treatments-remove-yes').click();
    await keptAs(page, version + 2);
    await expect.poll(() => page.getByTestId('treatments-entry').count()).toBe(1);
    await page.getByTestId('undo').click();
    await keptAs(page, version + 3);
    await expect.poll(() => page.getByTestId('treatments-entry').count()).toBe(2);

    await page.getByTestId('remove-field').click();
    await page.getByRole('button', { name: 'No, keep it' }).click();
    expect((await kept()).version).toBe(version + 3);
    await page.getByTestId('remove-field').click();
    await page.getByTestId('remove-field-yes').click();
    await page.getByTestId('just-removed').waitFor();
    await expect.poll(() => page.getByTestId('field-count').innerText()).toMatch(/^No field is kept yet/);
    await page.getByTestId('bring-back').first().click();
    await expect.poll(() => page.getByTestId('field-row').count()).toBe(1);
    expect((await kept()).record.treatments).toHaveLength(2);
    await page.context().close();
  });

  it('goes out as a table and comes in again, with the faults of bad rows named', async () => {
    const { page } = await open('fields', 'field-row');
    await page.getByText('Fields as a table: out and in').click();
    const table = await saved(page, 'csv-out');
    const { version, record } = await kept();
    const give = (name: string, text: string) =>
      page.getByTestId('csv-in').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
    await give('same.csv', table);
    const result = page.getByTestId('csv-result');
    await expect.poll(() => result.innerText()).toBe('0 new, 0 changed, 1 as they were.');
    expect(await kept()).toMatchObject({ version, record });

    await give(
      'more.csv',
      table.replaceAll('larkrise-home-quarter', 'second').replaceAll('Home quarter', '=Second'),
    );
    await expect.poll(() => result.innerText()).toBe('1 new, 0 changed, 0 as they were.');
    await expect.poll(() => page.getByTestId('field-row').count()).toBe(2);
    expect((await kept('fields/second')).record).toMatchObject({
      name: '=Second',
      treatments: record.treatments,
    });

    await give('bad.csv', table.replace('larkrise-home-quarter', 'No Such Id!'));
    await expect.poll(() => result.innerText()).toMatch(/fault/);
    expect(await result.innerText()).toMatch(/Line \d/);
    await page.context().close();
  });

  it('saves everything in one file and restores it after asking', async () => {
    const { page } = await open('fields', 'field-row');
    await page.getByText('Backup and restore of everything').click();
    const backup = await saved(page, 'backup-out');
    const before = await kept();
    await fetch(`${running.server.address}api/fields/second`, {
      method: 'DELETE',
      headers: { 'if-match': '"1"' },
    });
    await page.getByTestId('backup-in').setInputFiles({
      name: 'backup.json',
      mimeType: 'application/json',
      buffer: Buffer.from(backup),
    });
    await page.getByTestId('restore-yes').click();
    await page.getByTestId('restored').waitFor();
    await expect.poll(() => page.getByTestId('field-row').count()).toBe(2);
    expect(await kept()).toEqual(before);
    await page.getByTestId('backup-in').setInputFiles({
      name: 'no.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{'),
    });
    await expect.poll(() => page.locator('.blank-problem').innerText()).toContain('no.json is no backup');
    await page.context().close();
  });

  it('brings all fields up to date and lists what has changed', async () => {
    await withoutEvidence();
    const { page } = await open('fields', 'field-row');
    await page.getByTestId('refresh').click();
    const changes = page.getByTestId('changes');
    await changes.waitFor({ timeout: 90_000 });
    expect(await changes.innerText()).toMatch(/2 planned crops have an answer/);
    // Newer weather is looked for unless it is not wanted; the demo's record is nobody's to ask for.
    expect(await changes.innerText()).toContain('No field uses a station of the public records service.');
    const { version, record } = await kept();
    const treatments = (record.treatments as object[]).map((one) => ({ ...one, rateFraction: 4 }));
    await fetch(`${running.server.address}api/${FIELD}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': `"${version}"` },
      body: JSON.stringify({ ...record, treatments }),
    });
    await page.getByTestId('refresh').click();
    await expect.poll(() => changes.innerText(), { timeout: 90_000 }).toMatch(/Was .*in 20.* is .*in 20/);
    await page.context().close();
  });

  it('prints the federal record of a treatment on one page', async () => {
    const { page } = await open(FIELD, 'field-page');
    await unfold(page, 'treatments');
    await page.getByText('Record of a restricted-use application').first().click();
    const { version } = await kept();
    await write(page, 'treatments.0.record.productName', 'Shed one (invented)');
    await keptAs(page, version + 1);
    await write(page, 'treatments.0.record.time', '7 in the morning');
    await page.locator('.blank-problem').first().waitFor();
    await write(page, 'treatments.0.record.time', '07:30');
    await keptAs(page, version + 2);
    await page.getByTestId('record-link').first().click();
    const record = page.getByTestId('application-record');
    await record.waitFor();
    expect(await record.innerText()).toContain('Shed one (invented)');
    expect(await record.innerText()).toContain('07:30');
    expect(await page.getByTestId('record-missing').innerText()).toMatch(/certified applicator/);
    const pdf = await page.pdf({ path: join(output, 'application-record.pdf'), format: 'Letter' });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByTestId('print').isVisible()).toBe(false);
    expect(await record.isVisible()).toBe(true);
    await page.context().close();
  });

  it('takes what is typed into a blank the moment it is made', async () => {
    const { page } = await open(FIELD, 'field-page');
    await unfold(page, 'treatments');
    const { version } = await kept();
    await page.evaluate(
      (id) =>
        new Promise<void>((done) => {
          // Within the task in which the blank appears, before the browser has painted it.
          new MutationObserver((_, watch) => {
            const made = document.getElementById(id);
            if (!(made instanceof HTMLInputElement)) return;
            watch.disconnect();
            made.value = '4 gal';
            made.dispatchEvent(new InputEvent('input', { bubbles: true }));
            setTimeout(() => {
              made.dispatchEvent(new FocusEvent('blur'));
              done();
            }, 200);
          }).observe(document.body, { childList: true, subtree: true });
          for (const summary of document.querySelectorAll('summary')) {
            if (summary.textContent === 'Record of a restricted-use application') summary.click();
          }
        }),
      'blank-treatments.0.record.totalAmount',
    );
    await keptAs(page, version + 1);
    await page.context().close();
  });

  it('is begun and filled by keyboard alone', async () => {
    const { page } = await open('fields', 'field-row');
    await page.getByTestId('new-name').focus();
    await page.keyboard.type('River bottom');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Larkrise (invented)');
    await page.reload();
    await expect.poll(() => page.getByTestId('new-name').inputValue()).toBe('River bottom');
    await page.getByTestId('new-farm').focus();
    await page.keyboard.press('Enter');
    await page.getByTestId('field-page').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('River bottom');
    const reach = async (testId: string) => {
      for (let step = 0; step < 80; step++) {
        await page.keyboard.press('Tab');
        if (await page.evaluate((id) => document.activeElement?.getAttribute('data-testid') === id, testId))
          return;
      }
      throw new Error(`${testId} is not reached by Tab.`);
    };
    await reach('plans-add');
    await page.keyboard.press('Enter');
    await keptAs(page, 2);
    await expect
      .poll(() => page.getByTestId('plan-answer').innerText())
      .toMatch(/No weather station is chosen/);
    await reach('remove-field');
    await page.keyboard.press('Enter');
    await page.getByTestId('remove-field-yes').waitFor();
    await page.keyboard.press('Escape');
    await page.getByTestId('remove-field').waitFor();
    await page.context().close();
  });

  it.each([
    ['fields', 'field-row', []],
    [FIELD, 'plan-answer', ['place', 'treatments', 'plans', 'weather', 'tillage', 'evidence', 'outcomes']],
    [`${FIELD}/record/after-harvest`, 'application-record', []],
  ] as const)('holds on every screen: %s', async (path, waitFor, parts) => {
    const { page, complaints } = await open(path, waitFor);
    for (const part of parts) await unfold(page, part);
    const name = path.replaceAll('/', '-').replace('larkrise-home-quarter', 'one');
    await expectGoodOnEveryScreen(page, [output, name]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('a field with several treatments', () => {
  const NORTH = 'fields/north';
  const treatments = [
    {
      id: 'main',
      appliedOn: '2026-08-14',
      residual: 'flumioxazin',
      zones: [{ name: 'turn rows', overlapFactor: 2 }],
    },
    { id: 'early', appliedOn: '2026-07-01', residual: 'imazethapyr', rateFraction: 0.5 },
  ];
  const north = {
    ...{ id: 'north', farm: 'Larkrise (invented)', name: 'North 80', areaHa: 32.4, station: 'demo-invented' },
    treatments,
    plans: [{ id: 'lentil', crop: 'lentil', plantOn: '2027-05-10' }],
  };

  it('takes them along to its question page, where they are seen and changed', async () => {
    await fetch(`${running.server.address}api/${NORTH}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-none-match': '*' },
      body: JSON.stringify(north),
    });
    const { page, complaints } = await open(NORTH, 'whole-question');
    const odds = /\d+\sin\s20/.exec(await page.getByTestId('plan-answer').innerText())?.[0];
    await page.getByTestId('whole-question').click();
    const sentence = page.getByTestId('sentence');
    await expect
      .poll(async () => (await sentence.innerText()).replaceAll('\u00a0', ' '))
      .toContain(odds?.replaceAll('\u00a0', ' '));
    expect(page.url()).toContain('also=2026-07-01:imazethapyr:rate=0.5&zone=turn+rows:2');
    await page.getByText('Other treatments of the field (1)').click();
    const rate = blank(page, 'otherTreatments.0.rateFraction');
    await expect.poll(() => rate.inputValue()).toBe('50');
    await write(page, 'otherTreatments.0.rateFraction', '10');
    await expect.poll(() => page.url()).toContain('also=2026-07-01:imazethapyr:rate=0.1&');
    await page.getByText('Parts with another overlap (1)').click();
    await write(page, 'zones.0.overlapFactor', '3');
    await expect.poll(() => page.url()).toContain('zone=turn+rows:3');
    await blank(page, 'otherTreatments.0.growthStage').selectOption('cereals');
    await write(page, 'otherTreatments.0.growthStage.bbch', '31');
    await expect.poll(() => page.url()).toContain('stage=cereals');
    await page.reload();
    await sentence.waitFor();
    await page.getByText('Other treatments of the field (1)').click();
    await expect.poll(() => blank(page, 'otherTreatments.0.growthStage.bbch').inputValue()).toBe('31');
    await expectGood(page);
    await page.getByTestId('otherTreatments-remove').click();
    await page.getByTestId('otherTreatments-remove-yes').click();
    await expect.poll(() => page.url()).not.toContain('also=');

    await page.getByRole('link', { name: /Other residuals before lentil/ }).click();
    await page.getByText('Other treatments of the field').click();
    await page.getByTestId('otherTreatments-add').click();
    await page.getByText(/other treatment counts in every row/).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('prints its sheet with its names once every interval is read from a label, and keeps what was read', async () => {
    const { page, complaints } = await open(NORTH, 'field-sheet');
    await page.getByTestId('field-sheet').click();
    const waiting = page.getByTestId('unconfirmed');
    await waiting.getByText('From flumioxazin to lentil').waitFor();
    await page.getByTestId('confirm-sheet').click();
    await waiting.getByText('From imazethapyr to lentil').waitFor();
    const own = page.getByLabel('My label says something else');
    await own.fill('nine moons');
    await page.keyboard.press('Enter');
    await page.getByTestId('problem').waitFor();
    await own.fill('9 months');
    await page.keyboard.press('Enter');
    const sheet = page.getByTestId('handout');
    await sheet.locator('.drawing svg').first().waitFor();
    await expect
      .poll(async () => (await kept(NORTH)).record.treatments)
      .toMatchObject([
        { id: 'main', intervals: [{ crop: 'lentil', interval: '4 months' }] },
        { id: 'early', intervals: [{ crop: 'lentil', interval: '9 months' }] },
      ]);
    const side = '15mm';
    const margin = { top: side, bottom: side, left: side, right: side };
    const { pages, text } = readPdf(await page.pdf({ format: 'Letter', margin }));
    const plain = text.replace(/\s+/g, ' ');
    expect(pages).toBe(1);
    for (const words of [
      'Grower Larkrise (invented)',
      'Field North 80, 80.1 acres',
      'Turn rows, 2 times the dose',
      'Also sprayed: imazethapyr on July 1, 2026, by your label 9 months',
      'Why',
    ]) {
      expect(plain.replaceAll(' ', '')).toContain(words.replaceAll(' ', ''));
    }
    await page.getByRole('link', { name: 'Back to the field' }).click();
    await page.getByTestId('field-page').waitFor();
    await unfold(page, 'treatments');
    await expect.poll(() => blank(page, 'treatments.1.intervals.lentil').inputValue()).toBe('9 months');
    // The moons were refused once.
    expect(complaints.filter((text) => !text.includes('422'))).toEqual([]);
    await page.context().close();
  });
});

describe('your labels', () => {
  it('are entered, changed, asked with, removed and brought back', async () => {
    const { page, complaints } = await open('labels', 'label-count');
    await page.getByTestId('new-label-name').fill('Shed one (invented)');
    await page.getByTestId('add-label').click();
    await expect.poll(() => page.locator('.blank-problem').count()).toBe(3);
    await page.getByTestId('new-label-active').fill('flumioxazin');
    await page.getByTestId('new-label-crop').fill('lentil');
    await page.getByTestId('new-label-interval').fill('6 months');
    await page.getByTestId('add-label').click();
    await page.getByTestId('label-page').waitFor();
    await write(page, 'actives.0.rateGramsPerHa', '1.53');
    await keptAs(page, 2);
    await blank(page, 'intervals.0.clauses.add').selectOption('water');
    await keptAs(page, 3);
    await write(page, 'intervals.0.clauses.0.minMm', '2');
    await keptAs(page, 4);
    await blank(page, 'intervals.0.clauses.add').selectOption('water');
    await keptAs(page, 5);
    await write(page, 'intervals.0.clauses.1.minMm', '10');
    await blank(page, 'intervals.0.clauses.1.window').selectOption('interval end');
    await blank(page, 'intervals.0.clauses.add').selectOption('soilPh');
    await write(page, 'intervals.0.clauses.2.below', '7.8');
    await blank(page, 'intervals.0.clauses.add').selectOption('soilTexture');
    await blank(page, 'intervals.0.clauses.3.groups').selectOption('coarse');
    await write(page, 'intervals.0.foodFeedInterval', '9 months');
    const keptEntry = async () => (await kept('labels/shed-one-invented')).entry;
    await expect.poll(keptEntry).toMatchObject({
      actives: [{ name: 'flumioxazin' }],
      intervals: [
        {
          ...{ crop: 'lentil', interval: '6 months', foodFeedInterval: '9 months' },
          clauses: [
            { kind: 'water', minMm: 50.8, window: { to: 'planting' } },
            { kind: 'water', minMm: 254, window: { to: 'interval end' } },
            { kind: 'soilPh', below: 7.8 },
            { kind: 'soilTexture', groups: ['coarse'] },
          ],
        },
      ],
    });
    const entry = await keptEntry();
    expect((entry.actives as { rateGramsPerHa: number }[])[0].rateGramsPerHa).toBeCloseTo(107.2, 1);
    await expectGood(page);
    await page.screenshot({ path: join(output, 'label-1280.png'), fullPage: true });

    await page.getByRole('link', { name: 'Your labels' }).click();
    await page.getByTestId('ask-with-label').click();
    await page.getByTestId('sentence').waitFor();
    await expect.poll(() => page.url()).toContain('labelEntry=shed-one-invented');
    await expect.poll(() => page.getByTestId('sentence').innerText()).toMatch(/lentil/);

    await page.goto(`${running.server.address}labels/shed-one-invented`);
    await page.getByTestId('label-page').waitFor();
    await page.getByTestId('remove-label').click();
    await page.getByTestId('remove-label-yes').click();
    await page.getByTestId('just-removed').waitFor();
    await page.getByTestId('bring-back').first().click();
    await expect.poll(() => page.getByTestId('label-row').count()).toBe(1);

    await page.getByText('Labels as a table: out and in').click();
    const table = await saved(page, 'csv-out');
    await page
      .getByTestId('csv-in')
      .setInputFiles({ name: 'labels.csv', mimeType: 'text/csv', buffer: Buffer.from(table) });
    await expect
      .poll(() => page.getByTestId('csv-result').innerText())
      .toBe('0 new, 0 changed, 1 as they were.');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('hold on a phone', async () => {
    for (const [path, waitFor] of [
      ['labels', 'label-row'],
      ['labels/shed-one-invented', 'label-page'],
    ] as const) {
      const { page } = await open(path, waitFor, { width: 360, dark: true });
      await expectGood(page);
      await page.screenshot({ path: join(output, `${path.replace('/', '-')}-360-dark.png`), fullPage: true });
      await page.context().close();
    }
  });
});

describe('a server that goes', () => {
  it('leaves what was typed in the browser and takes it when it is back', async () => {
    const store = mkdtempSync(join(tmpdir(), 'drywake-gone-'));
    let server = await startBuilt(store);
    try {
      const { page } = await openPage(running.browser, server.address, {
        path: 'fields',
        waitFor: 'field-count',
      });
      await page.getByTestId('demo-field').click();
      await page.getByTestId('field-page').waitFor();
      await unfold(page, 'place');
      await server.stop();
      await write(page, 'note', 'Written while nobody listened');
      await page.getByTestId('server-gone').waitFor();
      expect(await page.getByTestId('keep-state').getAttribute('data-state')).toBe('waiting');
      expect(await blank(page, 'note').inputValue()).toBe('Written while nobody listened');
      server = await startBuilt(store, Number(new URL(server.address).port));
      await keptAs(page, 2);
      await expect.poll(() => page.getByTestId('server-gone').count()).toBe(0);
      const { record } = await (await fetch(`${server.address}api/${FIELD}`)).json();
      expect(record.note).toBe('Written while nobody listened');
      await page.context().close();
    } finally {
      await server.stop();
      rmSync(store, { recursive: true, force: true });
    }
  });
});
