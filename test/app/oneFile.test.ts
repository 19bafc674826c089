import { describe, expect, it } from 'vitest';
import { type OneFileOptions, oneFile } from '../../src/app/oneFile/oneFile.ts';
import { sheet } from '../../src/app/sheet.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createApp } from '../../src/http/createApp.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import type { QuestionInput } from '../../src/schema/question.ts';
import type { Wording } from '../../src/schema/wording.ts';
import { runDrywake } from '../cli/runDrywake.ts';
import { demoDeps as httpDeps } from '../http/demoDeps.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';

const HOSTILE = `<script>hit()</script> "O'H" & <img src=x onerror=hit()>`;
const ESCAPED =
  '&lt;script&gt;hit()&lt;/script&gt; &quot;O&#39;H&quot; &amp; &lt;img src=x onerror=hit()&gt;';
const confirmed: QuestionInput = { ...demoQuestion, interval: '4 months' };
const options: OneFileOptions = { madeAt: '2026-09-30T12:34:56.000Z', field: null };
const make = (
  change: Partial<QuestionInput> = {},
  wording: Wording = {},
  field: OneFileOptions['field'] = null,
) => oneFile({ ...confirmed, ...change }, { ...demoDeps, wording }, { ...options, field });

describe('an answer as one file', () => {
  it('says all that its sheet says, and years, assumptions, sources and the moment beside it', async () => {
    const { name, html } = await make({ assume: { soilSpread: 0.4 } });
    expect(name).toBe('drywake-invented-flumioxazin-lentil-2026-08-14.html');
    const made = await sheet({ ...confirmed, assume: { soilSpread: 0.4 } }, demoDeps);
    const text = textOf(html);
    const lines = [...made.dates, ...made.thirds, ...made.conditions, ...made.inputs];
    for (const words of [
      ...[made.sentence, made.advice, made.floor, made.weather, made.model, ...made.reasons],
      ...made.cautions,
      ...lines.map(({ label, value }) => `${label} ${value}`),
    ])
      expect(text).toContain(plain(words));
    expect(text).toContain('saved September 30, 2026, 12:34 UTC');
    expect(text).toContain('Spread of speed between soils 0.4 log units (changed)');
    expect(html.match(/<tr><th scope="row">/g)).toHaveLength(59);
    expect(html.match(/<svg /g)).toHaveLength(6);
    expect(text).toContain('of 20 dots lie after May 10');
  });

  it('gives assumptions in the units asked for, those for each degree too', async () => {
    const us = textOf((await make({ assume: { q10: 2.6 } })).html);
    expect(us).toContain('Speed-up by warmth 2.6 times per 18 °F (changed)');
    expect(us).toContain('Snow melt 0.05993 in per °F and day');
    expect(us).toContain('Label-basis rain, each fall 0.9843 in');
    expect(us.slice(us.indexOf('Assumptions of the model'))).not.toMatch(/°C|\bmm\b/);
    const metric = textOf((await make({ assume: { q10: 2.6 } }, { units: 'metric' })).html);
    expect(metric).toContain('Speed-up by warmth 2.6 times per 10 °C (changed)');
    expect(metric).toContain('Snow melt 2.74 mm per °C and day');
    expect(metric.slice(metric.indexOf('Assumptions of the model'))).not.toMatch(/°F|\bin per\b/);
  });

  it('holds no script, asks for nothing, and has no id twice', async () => {
    const { html } = await make();
    expect(html).toContain(
      `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">`,
    );
    expect(html).not.toMatch(/<script|<link|<iframe|<image|<img|\son\w+=|javascript:|@import|url\((?!#)/i);
    const addresses = [...html.matchAll(/\w+:\/\/[^\s"'<)]+/g)].map(([address]) => address);
    expect(new Set(addresses)).toEqual(
      new Set(['http://www.w3.org/2000/svg', 'http://www.w3.org/1999/xlink']),
    );
    const ids = [...html.matchAll(/\bid="([^"]+)"/g)].map(([, id]) => id);
    expect(ids).toEqual(expect.arrayContaining(['dots', 'season', 'rain']));
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of html.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
    expect(html.length).toBeLessThan(600_000);
  });

  it('shows as text whatever a name holds', async () => {
    const field = { farm: HOSTILE, name: HOSTILE, areaHa: 10 };
    const { html } = await make({ zones: [{ name: HOSTILE, overlapFactor: 2 }] }, {}, field);
    expect(html).not.toMatch(/<script|<img/);
    expect(html.split(ESCAPED).length - 1).toBeGreaterThanOrEqual(4);
  });

  it('speaks the units asked for', async () => {
    const [us, metric] = [await make(), await make({}, { units: 'metric' })];
    expect(textOf(us.html)).toMatch(/Label-basis rain, each fall 0\.9843 in/);
    expect(textOf(metric.html)).toMatch(/Label-basis rain, each fall 25 mm/);
    expect(metric.html).not.toMatch(/\d in<\/td>/);
  });

  it('has words alone where no carryover is modelled', async () => {
    const { html } = await make({ interval: '0 days' });
    expect(html).not.toContain('<svg');
    expect(html).not.toContain('The years behind the odds');
    expect(textOf(html)).toContain('The label is the law');
  });

  it('is refused, as the sheet is, until every interval is read from a label', async () => {
    expect(await refusalOf(make({ interval: undefined }))).toMatchObject({ code: 'SHEET_UNCONFIRMED' });
  });

  it('comes alike from library, interface and command line', async () => {
    const app = createApp(httpDeps);
    const post = (path: string, body: object) =>
      app.request(path, {
        method: 'POST',
        body: JSON.stringify(body),
        headers: { 'content-type': 'application/json' },
      });
    const response = await post('/api/sheet/file', confirmed);
    expect(response.headers.get('content-type')).toMatch(/^text\/html/);
    expect(response.headers.get('content-disposition')).toBe(
      'attachment; filename="drywake-invented-flumioxazin-lentil-2026-08-14.html"',
    );
    const own = await make();
    expect(await response.text()).toBe(own.html);
    const unconfirmed = await post('/api/sheet/file', demoQuestion);
    expect(problemSchema.parse(await unconfirmed.json()).code).toBe('SHEET_UNCONFIRMED');

    const words = ['--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'];
    const dates = ['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30'];
    const argv = ['sheet', ...words, ...dates, '--interval', '4 months', '--html'];
    const printed = await runDrywake(argv, tempFolder());
    expect([printed.code, printed.err]).toEqual([0, '']);
    const moment = /saved \w+ \d+, \d+, \d+:\d+ UTC/gi;
    const still = (html: string) =>
      html.replaceAll(moment, 'saved then').replace('version 1.2.3', 'version 0.1.0');
    expect(still(printed.out)).toBe(still(own.html));
    const both = await runDrywake([...argv, '--json'], tempFolder());
    expect([both.code, both.out]).toEqual([2, '']);
  });
});

const plain = (text: string) => text.replaceAll(/\s+/g, ' ').trim();

/** The words of a page, without marks and style. */
const textOf = (html: string): string =>
  plain(
    html
      .replace(/<style>[\s\S]*<\/style>/, '')
      .replaceAll(/<svg[\s\S]*?<\/svg>/g, '')
      .replaceAll(/<[^>]+>/g, ' ')
      .replaceAll('&#39;', "'")
      .replaceAll('&quot;', '"')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&amp;', '&'),
  );
