import { describe, expect, it } from 'vitest';
import { ABSENT } from '../../src/schema/codes.ts';
import { readExampleRecords } from '../../src/source/exampleRecords.ts';
import { stationExtent } from '../../src/source/stationExtent.ts';

describe('the example records', () => {
  it('are Seattle and New York, 2012 to 2015, without a gap', async () => {
    const records = await readExampleRecords();
    expect(
      records.map(stationExtent).map(({ id, invented, firstDate, lastDate, rainDays, temperatureDays }) => ({
        id,
        invented,
        firstDate,
        lastDate,
        rainDays,
        temperatureDays,
      })),
    ).toEqual(
      ['example-seattle', 'example-new-york'].map((id) => ({
        id,
        invented: false,
        firstDate: '2012-01-01',
        lastDate: '2015-12-31',
        rainDays: 1461,
        temperatureDays: 1461,
      })),
    );
  });

  it('hold the yearly rain that was summed from the file by other means', async () => {
    const yearly = (await readExampleRecords()).map(({ rainTenthsMm }) => {
      expect(rainTenthsMm.includes(ABSENT)).toBe(false);
      let from = 0;
      return [366, 365, 365, 365].map((days) => {
        const year = rainTenthsMm.subarray(from, from + days);
        from += days;
        return Math.round(year.reduce((sum, tenths) => sum + tenths, 0) / 10);
      });
    });
    expect(yearly).toEqual([
      [1226, 828, 1233, 1139],
      [1013, 903, 1290, 974],
    ]);
  });
});
