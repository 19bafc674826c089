import { mkdirSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerSchema } from '../../src/schema/answer.ts';
import { comparisonSchema, cropGridSchema } from '../../src/schema/comparison.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const season = ['--station', 'demo-invented', '--applied', '2026-08-14'];
const compare = ['compare', ...season, '--crop', 'lentil', '--plant', '2027-05-10'];
const crops = [
  'crops',
  ...season,
  '--residual',
  'imazethapyr',
  '--plant-from',
  '2027-04-15',
  '--plant-to',
  '2027-06-15',
];
const odds = ['odds', ...season, '--residual', 'flumioxazin', '--crop', 'lentil', '--plant', '2027-05-10'];
const run = (...argv: string[]) => runDrywake(argv, tempFolder());

describe('drywake compare', () => {
  it('prints a table that says what would do, and what cannot be judged', async () => {
    const { code, out, err } = await run(...compare);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/Residuals sprayed August 14, 2026 before\s+lentil planted May 10, 2027/);
    expect(out).toMatch(/weeks of control\s+label date\s+clear date/);
    expect(out).toMatch(/^\* \S+/m);
    expect(out).toContain('Not judged, for want of an interval');
    expect(out).toMatch(/puts a soil residual to\s+work within 14 days in \d+ % of years/);
    expect(out).toContain('Invented example');
  });

  it('prints JSON in shape, and takes the limit from what is at stake', async () => {
    const { code, out } = await run(...compare, '--json', '--waiting-cost', '20', '--loss', '160');
    expect(code).toBe(0);
    expect(comparisonSchema.parse(JSON.parse(out)).question.oddsLimit).toBe(0.125);
  });

  it.each([
    [['--waiting-cost', '20'], 'set the odds limit together'],
    [['--waiting-cost', '20', '--loss', '10'], 'it does not pay'],
    [['--crop', 'moss'], 'moss'],
    [['--residual', 'atrazine'], "unknown option '--residual'"],
    [['--limit', 'high'], 'must be a number'],
  ])('refuses %j with exit 2', async (flags, words) => {
    const { code, out, err } = await run(...compare, ...flags);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(words);
  });
});

describe('drywake crops', () => {
  it('prints crops by date, and marks dates before the label’s', async () => {
    const { code, out } = await run(...crops, '--step', '14');
    expect(code).toBe(0);
    expect(out).toMatch(/04-15\s+04-29\s+05-13\s+05-27\s+06-10/);
    expect(out).toMatch(/\d+ %/);
    expect(out).toMatch(/ label /);
  });

  it('prints one third, the named crops, and JSON in shape', async () => {
    const dry = await run(...crops, '--third', 'dry', '--crops', 'wheat, lentil');
    expect(dry.out).toContain('dry third of the years');
    const json = await run(...crops, '--crops', 'wheat,lentil', '--json');
    const grid = cropGridSchema.parse(JSON.parse(json.out));
    expect(grid.crops.length + grid.unjudged.length).toBe(2);
    expect(grid.dates).toHaveLength(9);
  });

  it.each([
    [['--third', 'damp'], 'one of all, dry and wet'],
    [['--step', 'two'], 'whole number'],
    [['--plant-to', '2027-04-01'], 'before the first. [--plant-to]'],
  ])('refuses %j with exit 2', async (flags, words) => {
    const { code, err } = await run(...crops, ...flags);
    expect(code).toBe(2);
    expect(err).toContain(words);
  });
});

describe('drywake odds with other treatments, zones and growth stage', () => {
  it('reads treatments in words or as JSON, alike', async () => {
    const words = await run(
      ...odds,
      '--interval',
      '4 months',
      '--json',
      '--also',
      '2026-07-01=sulfentrazone,rate=0.5,interval=6 months',
    );
    const json = await run(
      ...odds,
      '--interval',
      '4 months',
      '--json',
      '--also',
      '{"appliedOn":"2026-07-01","residual":"sulfentrazone","rateFraction":0.5,"interval":"6 months"}',
    );
    expect(words.code).toBe(0);
    expect(words.out).toBe(json.out);
    const { inputs } = answerSchema.parse(JSON.parse(words.out));
    expect(inputs.question.otherTreatments).toMatchObject([{ residual: 'sulfentrazone', rateFraction: 0.5 }]);
  });

  it('prints zones and treatments', async () => {
    const { out } = await run(
      ...odds,
      ...['--interval', '4 months', '--zone', 'turn rows=2', '--growth-stage', 'cereals=12'],
      ...[
        '--also',
        '2026-07-01=sulfentrazone,interval=6 months',
        '--also',
        '2026-07-02=atrazine,interval=6 months',
      ],
    );
    expect(out).toContain('- turn rows (2 times the dose): about');
    expect(out).toMatch(/together with sulfentrazone of July 1, 2026 and atrazine of\s+July 2, 2026/);
    expect(out).toMatch(/The flumioxazin of August 14, 2026 that fell on leaves/);
  });

  it('reads them from a question file too', async () => {
    const folder = tempFolder();
    mkdirSync(folder, { recursive: true });
    const file = `${folder}/question.json`;
    writeFileSync(file, JSON.stringify({ zones: [{ name: 'gate', overlapFactor: 3 }] }));
    const { out } = await run(...odds, '--question', file);
    expect(out).toContain('- gate (3 times the dose)');
  });

  it.each([
    [['--also', 'atrazine'], 'DATE=RESIDUAL'],
    [['--also', '2026-07-01=atrazine,dose=2'], 'Keys are rate'],
    [['--also', '2026-07-01=atrazine,rate=much'], 'cannot be read'],
    [['--also', '{"residual"'], 'JSON object'],
    [['--also', '2027-07-01=atrazine'], '[--also]'],
    [['--zone', 'turn rows'], 'NAME=OVERLAP'],
    [['--zone', 'turn rows=9'], '[--zone]'],
    [['--growth-stage', 'cereals'], 'CROP=STAGE'],
    [['--growth-stage', 'moss=12'], '[--growth-stage]'],
    [['--growth-stage', 'cereals=12', '--canopy', '0.4'], '[--growth-stage]'],
  ])('refuses %j with exit 2', async (flags, words) => {
    const { code, out, err } = await run(...odds, ...flags);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(words);
  });
});
