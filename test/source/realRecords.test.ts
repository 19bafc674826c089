import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { checkStation } from '../../src/app/checkStation.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { describeWithRecords } from '../sharedWeather.ts';

describeWithRecords('real records', (folder) => {
  it.each(['USC00026716', 'USC00241044', 'USW00023066'])(
    '%s reads the same from both layouts',
    async (id) => {
      const from = (ending: string) =>
        createFileReader([join(folder, 'derived', `${id}${ending}`)]).record(id);
      const [fixedWidth, csv] = [await from('.dly.gz'), await from('.csv.gz')];
      expect(fixedWidth.rainTenthsMm.length).toBeGreaterThan(20_000);
      const { rainTimeHhmm: _, ...values } = csv;
      expect(isDeepStrictEqual({ ...values, source: '' }, { ...fixedWidth, source: '' })).toBe(true);
      // The fixed-width layout has no place for the hour of reading.
      expect(fixedWidth.rainTimeHhmm).toBeUndefined();
    },
  );

  it('the hours of reading are those that stand in the file, counted line by line', async () => {
    const path = join(folder, 'derived', 'USC00026716.csv.gz');
    const record = await createFileReader([path]).record('USC00026716');
    const counted = new Map<number, number>();
    for (const line of gunzipSync(readFileSync(path)).toString('latin1').split('\n')) {
      const [, , element, value, , quality, , time] = line.trimEnd().split(',');
      if (element !== 'PRCP' || value === '-9999' || quality !== '' || time === '') continue;
      counted.set(Number(time), (counted.get(Number(time)) ?? 0) + 1);
    }
    const read = new Map<number, number>();
    for (const time of record.rainTimeHhmm ?? []) {
      if (time !== ABSENT) read.set(time, (read.get(time) ?? 0) + 1);
    }
    expect([...read].sort()).toEqual([...counted].sort());
    const { periods, knownDays } = checkStation(record).changes.observationTime;
    expect(knownDays).toBe([...counted.values()].reduce((sum, count) => sum + count, 0));
    expect(periods.map(({ time }) => time)).toEqual(expect.arrayContaining(['17:00', '18:00']));
  });

  // Mean annual rain [mm], number of years, missing rain [%], driest and wettest year: the records' own list of sources.
  it.each([
    ['ghcnd', 'CA006105976', 880, 125, 0.4, null, null],
    ['ghcnd', 'CA006105978', 927, 7, 4.3, null, null],
    ['ghcnd', 'USW00003870', 1247, 49, 0.01, null, null],
    ['derived', 'USC00026716', 506, 43, 5.6, null, null],
    ['derived', 'USC00241044', 475, 118, 2.1, [1934, 268], [1997, 650]],
    ['derived', 'USW00023066', 222, 123, 0.07, [1900, 91], [1957, 399]],
    ['derived', 'X00SA068135', 446, 36, 0, [2001, 203], [2010, 797]],
    ['derived', 'X00CHAMPION', 414, 37, 0, [1984, 138], [2009, 635]],
  ] as const)(
    '%s/%s has the stated yearly rain',
    async (part, id, rainMm, years, missingPercent, driest, wettest) => {
      const record = await createFileReader([join(folder, part, `${id}.dly.gz`)]).record(id);
      const check = checkStation(record);
      expect(check.fullYears).toBe(years);
      expect(Math.abs((check.meanAnnualRainMm as number) / rainMm - 1)).toBeLessThan(0.005);
      expect(Math.abs(100 * check.rainMissingFraction - missingPercent)).toBeLessThanOrEqual(0.05);
      for (const [year, stated] of [
        [check.driestYear, driest],
        [check.wettestYear, wettest],
      ] as const) {
        if (stated === null) continue;
        expect(year?.year).toBe(stated[0]);
        // half of the last printed digit, and the noise of summing tenths
        expect(Math.abs((year?.rainMm as number) - stated[1])).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    },
  );

  it('counts the flags and multi-day totals that the list of sources tells of', async () => {
    const portal = await createFileReader([join(folder, 'derived')]).record('USC00026716');
    // 4,614 presumed zeros stand in the file; one of them also failed a quality check.
    expect(portal.reading.presumedZero).toBe(4613);
    const count = (column: Int32Array) => column.filter((value) => value > -9999).length;
    expect(count(portal.multiDayRainTenthsMm)).toBeGreaterThanOrEqual(count(portal.multiDayCount));
    const ottawa = await createFileReader([join(folder, 'ghcnd', 'CA006105976.dly.gz')]).record(
      'CA006105976',
    );
    expect(count(ottawa.multiDayRainTenthsMm)).toBe(26);
    expect(count(ottawa.multiDayCount)).toBe(0);
  });

  it('finds one station among 81 and its place in the station list', async () => {
    const paths = [join(folder, 'bench/ghcn-dev-long.csv.gz'), join(folder, 'ghcnd/ghcnd-stations.txt.gz')];
    const { station } = await createFileReader(paths).record('USC00241044');
    expect(station).toMatchObject({ latitudeDeg: 45.6622, longitudeDeg: -111.0464, elevationM: 1497.5 });
  });
});
