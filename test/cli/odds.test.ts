import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { answerSchema } from '../../src/schema/answer.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const drywake = (...argv: string[]) => runDrywake(argv, tempFolder());

const DEMO = ['--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'];
const DATES = ['--applied', '2026-08-14', '--plant', '2027-05-10'];
const demo = (...more: string[]) => drywake('odds', ...DEMO, ...DATES, ...more);
const json = async (...more: string[]) => answerSchema.parse(JSON.parse((await demo(...more, '--json')).out));

describe('drywake odds', () => {
  it('answers in a sentence, a table, a strip of the years and cautions', async () => {
    const { code, out, err } = await demo('--as-of', '2026-09-30');
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(
      /^In about \d+ in 20 seasons and soils like this \(\d+ %\), flumioxazin sprayed\nAugust 14, 2026 would hurt lentil planted May 10, 2027/,
    );
    expect(out).toContain('a figure from memory, not yet confirmed');
    expect(out).toMatch(/Label date {2,}December 14, 2026/);
    expect(out).toMatch(/dry third .* in\n/);
    expect(out).toMatch(/\n[·▁▂▃▄▅▆▇█]{59}\n/);
    expect(out).toContain('The label is the law and the floor.');
    expect(out).toContain('Invented example');
    expect(out.split('\n').every((line) => line.length <= 80)).toBe(true);
  });

  it('gives the numbers of an independent coding of the model on the demo', async () => {
    const season = await json('--as-of', '2026-09-30');
    expect(season.oddsAtPlanting).toBeCloseTo(0.242, 2);
    expect(season.labelDate).toBe('2026-12-14');
    expect(season.clearDate).toBe('2027-06-04');
    expect((await json()).oddsAtPlanting).toBeCloseTo(0.196, 2);
  });

  it('prints metric units on request, and the same numbers', async () => {
    expect((await demo('--units', 'metric')).out).toMatch(/dry third .* mm\n/);
  });

  it('lets the user’s own label win, and stops calling it unconfirmed', async () => {
    const answer = await json('--interval', '9 months');
    expect(answer.labelDate).toBe('2027-05-14');
    expect(answer.inputs.interval).toMatchObject({ origin: 'own label', confirmed: true });
    expect(answer.sentence).not.toContain('confirmed');
    expect(answer.advice).toContain('rules out planting lentil before May 14');
  });

  it('reckons no carryover where the interval is zero', async () => {
    const answer = await json('--interval', '0');
    expect(answer).toMatchObject({ carryoverModelled: false, oddsAtPlanting: null, clearDate: '2026-08-14' });
    expect(answer.sentence).toContain('No carryover is reckoned');
  });

  it('moves with every assumption and option', async () => {
    const plain = (await json()).oddsAtPlanting ?? Number.NaN;
    const moved = async (...more: string[]) => (await json(...more)).oddsAtPlanting ?? Number.NaN;
    expect(await moved('--rate', '2')).toBeGreaterThan(plain);
    expect(await moved('--overlap', '2')).toBeGreaterThan(plain);
    expect(await moved('--canopy', '0.9')).toBeLessThan(plain);
    expect(await moved('--soil', 'sand')).toBeGreaterThan(plain);
    expect(await moved('--sand', '20', '--clay', '50')).toBeLessThan(plain);
    expect(await moved('--cover', '0')).toBeGreaterThan(plain);
    expect(await moved('--om', '5')).not.toBe(plain);
    expect(await moved('--rest-of-season', '0.5')).toBeGreaterThan(plain);
    expect(await moved('--outlook', '60,30,10')).toBeGreaterThan(plain);
    expect(
      await moved('--outlook', '60,30,10', '--outlook-window', '2026-08-14..2026-12-31'),
    ).toBeGreaterThan(plain);
    expect(await moved('--base', '1991-2020')).not.toBe(plain);
    expect(await moved('--lat', '40')).not.toBe(plain);
    for (const assumption of [
      'labelRainMm=20',
      'labelRainEveryDays=15',
      'labelCoverFraction=0.3',
      'demandFloorFraction=0.9',
      'soilSpread=0.5',
      'labelMargin=0.8',
      'moistureResponse=walker',
      'moistureExponent=1',
      'q10=3.5',
      'meltMmPerDegreeDay=1',
      'snowStopsMm=0',
    ]) {
      expect(await moved('--assume', assumption), assumption).not.toBe(plain);
    }
    const half = ['--rate', '0.5'];
    expect(await moved(...half, '--assume', 'halfLifeFactor=1')).not.toBe(await moved(...half));
    expect(await moved(...half, '--half-life', '60')).not.toBe(await moved(...half));
    const leafy = ['--canopy', '0.9'];
    expect(await moved(...leafy, '--assume', 'foliageHalfLifeDays=30')).not.toBe(await moved(...leafy));
    expect(await moved(...leafy, '--assume', 'washOffPerMm=0.2')).not.toBe(await moved(...leafy));
  });

  it('takes a question file, with flags on top', async () => {
    const file = join(tempFolder(), 'question.json');
    const { question } = (await json()).inputs;
    writeFileSync(file, JSON.stringify(question));
    const fromFile = JSON.parse((await drywake('odds', '--question', file, '--json')).out);
    expect(fromFile.oddsAtPlanting).toBe((await json()).oddsAtPlanting);
    const later = JSON.parse(
      (await drywake('odds', '--question', file, '--plant', '2027-06-10', '--json')).out,
    );
    expect(later.oddsAtPlanting).toBeLessThan(fromFile.oddsAtPlanting);
    expect(later.inputs.question.plantOn).toBe('2027-06-10');
  });

  it('adds curves on request only', async () => {
    expect((await json()).season).toBeUndefined();
    const { season, oddsAtPlanting, inputs } = await json('--season', '--as-of', '2026-09-30');
    expect(season?.startDate).toBe('2026-08-14');
    const offset = (Date.parse(inputs.question.plantOn) - Date.parse('2026-08-14')) / 86_400_000;
    expect(season?.odds[offset]).toBe(oddsAtPlanting);
    const dots = season?.quantileDates.filter((date) => date === null || date > inputs.question.plantOn);
    expect(Math.abs((dots?.length ?? 0) - 20 * (oddsAtPlanting ?? 0))).toBeLessThanOrEqual(1);
    expect(season?.rain.percentOfNormal).toBeGreaterThan(0);
    expect(season?.rain.months[0].month).toBe('2026-08');
  });
});

describe('drywake odds, bad input', () => {
  const refused = async (
    run: Promise<{ code: number; out: string; err: string }>,
    ...words: (string | RegExp)[]
  ) => {
    const { code, out, err } = await run;
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.trim().split('\n').length).toBeLessThanOrEqual(3);
    expect(err).not.toMatch(/\bat .*\.ts:\d/);
    for (const word of words) expect(err).toMatch(word);
  };

  it('unknown station', () =>
    refused(
      drywake('odds', ...DATES, ...DEMO.slice(2), '--station', 'demo-inventd'),
      'no record',
      'demo-invented',
    ));
  it('unknown residual and crop, with the nearest spelling', async () => {
    await refused(demo('--residual', 'flumioxazn'), 'flumioxazin');
    await refused(demo('--crop', 'lentl'), 'lentil');
  });
  it('planting before application', () =>
    refused(demo('--plant', '2026-08-01'), 'before the application', '--plant'));
  it('interval missing for the crop', () =>
    refused(demo('--residual', 'chlorsulfuron'), 'read your label', '--interval'));
  it('interval that cannot be read', () => refused(demo('--interval', 'soon'), '"soon"', '9 months'));
  it('date outside the record', () => refused(demo('--as-of', '2026-12-01'), '2026-09-30', '--as-of'));
  it('no such date', () =>
    refused(
      demo('--applied', '2026-02-30'),
      'Date of spraying: “2026-02-30” is no day of the calendar',
      '--applied',
    ));
  it('dates in the style of the answer, hints as they are typed', async () => {
    const late = ['--as-of', '2026-12-01'];
    await refused(demo(...late), 'nothing is observed on December 1, 2026', 'up to 2026-09-30');
    await refused(demo(...late, '--date-style', 'iso'), 'nothing is observed on 2026-12-01');
    await refused(demo(...late, '--units', 'metric'), 'nothing is observed on 2026-12-01');
  });
  it('too few years', () => refused(demo('--base', '2010-2015'), '6 usable years', 'at least 10'));
  it('a base period that ends before it begins', () =>
    refused(demo('--base', '2015-2010'), 'before it begins'));
  it('outlook that does not add up', () => refused(demo('--outlook', '40,40,40'), 'add up to 100'));
  it('sand without clay, and more than 100 %', async () => {
    await refused(demo('--sand', '40'), 'together');
    await refused(demo('--sand', '80', '--clay', '40'), 'more than 100 %');
  });
  it('unknown soil, flag, assumption and number', async () => {
    await refused(demo('--soil', 'mud'), 'sandy loam');
    await refused(demo('--stattion', 'x'), 'unknown option', '--station');
    await refused(demo('--assume', 'luck=1'), 'luck');
    await refused(demo('--assume', 'soilSpread'), 'KEY=VALUE');
    await refused(demo('--rate', 'lots'), 'must be a number');
    await refused(demo('--rate=-1'), 'Rate: “-1” is too small', 'more than 0');
  });
  it('a question that lacks a field', () =>
    refused(drywake('odds', '--station', 'demo-invented'), 'Date of spraying is missing', '--applied'));
  it('a damaged or missing question file', async () => {
    const file = join(tempFolder(), 'question.json');
    writeFileSync(file, '{"station": ');
    await refused(drywake('odds', '--question', file), 'not JSON');
    await refused(drywake('odds', '--question', `${file}.none`), 'cannot be read');
  });
  it('a weather path that is not there', () => refused(demo('--weather', 'nowhere.dly'), 'nowhere.dly'));
  it('a record without temperatures', () => {
    const days = Array.from({ length: 900 }, (_, day) => new Date(Date.UTC(2010, 0, 1 + day)));
    const lines = days.map(
      (day) => `RAINONLY001,${day.toISOString().slice(0, 10).replaceAll('-', '')},PRCP,12,,,N,`,
    );
    const file = tempFile('RAINONLY001.csv', `${lines.join('\n')}\n`);
    return refused(demo('--weather', file, '--station', 'RAINONLY001', '--lat', '45'), 'temperatures');
  });
  it('an unknown command, with the nearest one', () => refused(drywake('ods'), 'Did you mean odds'));
});

describe('drywake odds, records of a kind', () => {
  it('says that four years are too few for odds', async () => {
    const store = tempFolder();
    expect((await runDrywake(['weather', 'import', '--example'], store)).code).toBe(0);
    const ran = await runDrywake(['odds', ...DATES, ...DEMO.slice(2), '--station', 'example-seattle'], store);
    expect(ran.code).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err).toMatch(/3 usable years .* at least 10/);
  });
});

describeWithRecords('drywake odds straight from a real file', (folder) => {
  const question = [
    ...['--station', 'USC00241044', '--residual', 'imazethapyr', '--half-life', '60', '--crop', 'lentil'],
    ...['--interval', '9 months', '--applied', '2020-08-10', '--plant', '2021-05-10', '--base', '1981-2018'],
  ];
  const from = (file: string, ...more: string[]) =>
    drywake('odds', '--weather', `${folder}/derived/${file}`, ...question, ...more);

  it('needs the latitude, and says so', async () => {
    const { code, err } = await from('USC00241044.dly.gz');
    expect(code).toBe(2);
    expect(err).toMatch(/latitude.*\[--lat\]/);
  });

  it('gives the cross-check answer from .dly and from .csv', async () => {
    for (const file of ['USC00241044.dly.gz', 'USC00241044.csv.gz']) {
      const answer = answerSchema.parse(JSON.parse((await from(file, '--lat', '45.662', '--json')).out));
      expect(Math.abs((answer.oddsAtPlanting ?? 0) - 0.2912)).toBeLessThan(0.002);
      expect(answer.clearDate).toBe('2021-06-18');
      expect(answer.sentence).toMatch(/^In about 6 in 20 seasons and soils like this \(29 %\)/);
      expect(answer.advice).toMatch(/^Wait until June 18/);
    }
  });
});
