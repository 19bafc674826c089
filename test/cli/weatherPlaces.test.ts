import { describe, expect, it } from 'vitest';
import { nearestStationsSchema } from '../../src/schema/place.ts';
import { stationNormalsSchema } from '../../src/schema/stationNormals.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const run = (...words: string[]) => runDrywake(['weather', ...words], tempFolder());

describe('drywake weather normals', () => {
  it('prints mean, median, thirds and the season so far', async () => {
    const { code, out } = await run(...['normals', 'demo-invented', '--from', '05-01', '--to', '09-30']);
    expect(code).toBe(0);
    expect(out).toMatch(/Base period +1991-2020, the latest standard 30 years; 30 years usable/);
    expect(out).toMatch(/Mean +\d+\.\d in$/m);
    expect(out).toMatch(/Last season +2026-05-01 to 2026-09-30: .* % of normal/);
    const json = JSON.parse(
      (await run('normals', 'demo-invented', '--from', '05-01', '--to', '09-30', '--json')).out,
    );
    expect(stationNormalsSchema.parse(json)).toEqual(json);
    expect(json.lowerTercileMm).toBeLessThan(json.medianMm);
    expect(json.upperTercileMm).toBeGreaterThan(json.medianMm);
  });

  it.each([
    ['a day that is none', ['--from', '13-01', '--to', '08-31'], '"13-01" is no day of the year'],
    [
      'a base period backwards',
      ['--from', '05-01', '--to', '08-31', '--base', '2020-1991'],
      'ends before it begins',
    ],
    ['too few years', ['--from', '05-01', '--to', '08-31', '--base', '2020-2024'], 'at least 10'],
    ['a date past the record', ['--from', '05-01', '--to', '08-31', '--as-of', '2030-01-01'], '2026-09-30'],
  ])('refuses %s', async (_, flags, words) => {
    const { code, err } = await run('normals', 'demo-invented', ...flags);
    expect(code).toBe(2);
    expect(err).toContain(words);
  });
});

describe('drywake weather near', () => {
  it('asks for one place, not none and not two', async () => {
    expect(await run('near')).toMatchObject({ code: 2, err: expect.stringContaining('or a county') });
    const two = await run('near', '--lat', '45', '--lon', '-111', '--county', 'Gallatin, MT');
    expect(two).toMatchObject({ code: 2, err: expect.stringContaining('not both') });
  });

  it.each([
    [['--lat', '95', '--lon', '-111'], "'--lat <degrees>' argument '95'", 'from -90 to 90 degrees'],
    [['--lat', '45', '--lon', '-200'], "'--lon <degrees>' argument '-200'", 'from -180 to 180 degrees'],
    [['--county', 'Gallatin, MT', '--elevation', '9001'], "'--elevation <m>'", 'from -500 to 9000 m'],
    [['--county', 'Gallatin, MT', '--most', '0'], "'--most <n>'", 'from 1 to 100'],
  ])('refuses %j by the name of the flag, with its limits', async (flags, flag, limits) => {
    const { code, err } = await run('near', ...flags);
    expect(code).toBe(2);
    expect(err).toContain(flag);
    expect(err).toContain(limits);
  });

  it('lists the choices of an ambiguous county', async () => {
    const { code, err } = await run('near', '--county', 'Baltimore, MD');
    expect(code).toBe(2);
    expect(err).toContain('Baltimore city, MD (24510)');
  });

  it('says what to do where no station is to be had', async () => {
    const { code, out } = await run('near', '--lat', '45', '--lon', '-111');
    expect(code).toBe(0);
    expect(out).toContain('import some, with the station list');
  });
});

describeWithRecords('drywake weather near, real records', (folder) => {
  it('suggests a station for a county with its reason', async () => {
    const files = [`${folder}/ghcnd/CA006105976.dly.gz`, `${folder}/ghcnd/USW00003870.dly.gz`];
    const list = `${folder}/ghcnd/ghcnd-stations.txt.gz`;
    const flags = ['near', '--county', 'Greenville, SC', '--elevation', '300', '--weather', ...files, list];
    const { code, out } = await run(...flags);
    expect(code).toBe(0);
    expect(out).toMatch(/\* +USW00003870 /);
    expect(out).toMatch(/ ft higher, has 50 years of rain with 0\.0 % missing: the nearest\./);
    const json = JSON.parse((await run(...flags, '--json')).out);
    expect(nearestStationsSchema.parse(json)).toEqual(json);
    expect(json.suggested).toBe('USW00003870');
  });
});
