import { describe, expect, it } from 'vitest';
import { sheet } from '../../src/app/sheet.ts';
import { sheetMarkdown } from '../../src/app/sheetMarkdown.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import type { LabelEntry } from '../../src/schema/labelEntry.ts';
import type { QuestionInput } from '../../src/schema/question.ts';
import { type Sheet, sheetSchema } from '../../src/schema/sheet.ts';
import { runDrywake } from '../cli/runDrywake.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';

const confirmed: QuestionInput = { ...demoQuestion, interval: '4 months' };
const make = async (change: Partial<QuestionInput> = {}, units: 'us' | 'metric' = 'us') =>
  sheetSchema.parse(await sheet({ ...confirmed, ...change }, { ...demoDeps, wording: { units } }));
const wordsOf = (lines: Sheet['inputs'], label: string) =>
  lines.find((one) => one.label.startsWith(label))?.value;

describe('sheet', () => {
  it('is refused until every interval has been read from a label', async () => {
    expect(await refusalOf(make({ interval: undefined }))).toMatchObject({
      code: 'SHEET_UNCONFIRMED',
      details: { field: 'interval', unconfirmed: ['flumioxazin'] },
    });
    const other = { residual: 'imazethapyr', appliedOn: '2026-07-01' };
    const refusal = await refusalOf(make({ otherTreatments: [other] }));
    expect(refusal).toMatchObject({ code: 'SHEET_UNCONFIRMED', details: { unconfirmed: ['imazethapyr'] } });
    await make({ otherTreatments: [{ ...other, interval: '4 months' }] });
    expect(await refusalOf(make({ crop: 'radish + pea', interval: undefined }))).toMatchObject({
      code: 'SHEET_UNCONFIRMED',
    });
  });

  it('takes an entry of the user’s own as confirmed', async () => {
    const entry: LabelEntry = {
      id: 'mine',
      name: 'My residual',
      actives: [{ name: 'flumioxazin' }],
      intervals: [{ crop: 'lentil', interval: '5 months', clauses: [], conditions: '' }],
      labelVersion: '2026-01',
      enteredOn: '2026-02-01',
      note: '',
    };
    const stored = { version: 1, entry };
    const labels = {
      labels: async () => [stored],
      label: async (id: string) => (id === 'mine' ? stored : null),
    };
    const question = { ...demoQuestion, labelEntry: 'mine' };
    const made = sheetSchema.parse(await sheet(question, { ...demoDeps, labels }));
    expect(wordsOf(made.inputs, 'Interval used')).toBe('5 months, own entry My residual, label 2026-01');
  });

  it('says what, why, what next, the floor, the inputs, the date of the weather and the model', async () => {
    const made = await make({ zones: [{ name: 'turn rows', overlapFactor: 2 }], soilPh: 7.2 });
    expect(made.invented).toContain('Invented example');
    expect(made.sentence).toContain('5 in 20');
    expect(made.advice).toContain('Wait until');
    expect(made.floor).toContain('December 14, 2026');
    expect(wordsOf(made.dates, 'Clear date')).toMatch(/June \d+, 2027/);
    expect(made.thirds).toHaveLength(3);
    expect(made.zones[0].label).toBe('turn rows, 2 times the dose');
    expect(made.reasons.join(' ')).toContain('rain shortfall');
    expect(made.conditions.length).toBeGreaterThan(0);
    expect(made.cautions.join(' ')).toContain('The label is the law');
    expect(wordsOf(made.inputs, 'Soil')).toBe('loam, 2 % organic matter, not given, 60 % covered, pH 7.2');
    expect(made.dataDate).toBe('2026-09-30');
    expect(made.model).toContain('1.2.3');
    expect(made.weather).toContain('observed through September 30, 2026');
  });

  it('draws the odds from before the first date that matters to past the last', async () => {
    const { picture } = await make();
    if (picture === null) throw new Error('there is a picture');
    const dates = picture.points.map(({ date }) => date);
    expect(dates).toEqual(dates.toSorted());
    expect(dates[0] < picture.labelDate && dates[dates.length - 1] > (picture.clearDate ?? '')).toBe(true);
    expect(dates.length).toBeLessThanOrEqual(61);
    expect(picture.caption).toContain('2 in 20');
    expect((await make({ interval: '0 days' })).picture).toBeNull();
  });

  it('switches its units', async () => {
    expect((await make()).thirds[0].value).toMatch(/ in of rain/);
    expect((await make({}, 'metric')).thirds[0].value).toMatch(/ mm of rain/);
  });
});

describe('sheet as Markdown', () => {
  it('has every part, and a strip with the dates marked', async () => {
    const made = await make({ zones: [{ name: 'turn rows', overlapFactor: 2 }] });
    const text = sheetMarkdown(made);
    for (const part of [
      made.title,
      'Take care',
      'Why',
      'What this rests on',
      'turn rows',
      'Weather data up to:** September 30, 2026',
    ]) {
      expect(text).toContain(part);
    }
    const [, bars, marks, ends] = text.slice(text.indexOf('```')).split('\n');
    expect([...bars]).toHaveLength(made.picture?.points.length ?? 0);
    for (const mark of 'LPC') expect(marks).toContain(mark);
    expect(ends).toContain(made.picture?.points[0].date ?? 'none');
  });

  it('shows as text what a name holds, not as marks', async () => {
    const made = await make({ zones: [{ name: '<b>*rows*</b> | # x', overlapFactor: 2 }] });
    expect(sheetMarkdown(made)).toContain('\\<b\\>\\*rows\\*\\</b\\> \\| \\# x, 2 times the dose');
  });

  it('comes from the command line; unconfirmed ends in exit 2 and names the flag', async () => {
    const words = ['--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'];
    const dates = ['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30'];
    const bad = await runDrywake(['sheet', ...words, ...dates], tempFolder());
    expect(bad).toMatchObject({ code: 2, out: '' });
    expect(bad.err).toContain('[--interval]');
    const good = await runDrywake(['sheet', ...words, ...dates, '--interval', '4 months'], tempFolder());
    expect(good.code).toBe(0);
    const own = sheetMarkdown(await make()).replace('version 1.2.3', 'version 0.1.0');
    expect(good.out).toBe(own);
    const json = await runDrywake(
      ['sheet', ...words, ...dates, '--interval', '4 months', '--json', '--units', 'metric'],
      tempFolder(),
    );
    expect(sheetSchema.parse(JSON.parse(json.out)).title).toBe('flumioxazin before lentil');
  });
});
