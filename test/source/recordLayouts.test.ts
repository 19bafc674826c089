import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { dayNumberOf } from '../../src/calendar.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { dlyLine } from '../fixtures/weather/lines.ts';
import { tempFile } from '../tempFolder.ts';

const fixtures = fileURLToPath(new URL('../fixtures/weather/', import.meta.url));
const ID = 'TST00000001';
const none = ABSENT;

const recordOf = (fileName: string) => createFileReader([join(fixtures, fileName)]).record(ID);

describe.each(['TST00000001.dly', 'with-header.csv', 'without-header.csv'])('%s', (fileName) => {
  it('gives dense columns from the first to the last accepted value', async () => {
    const record = await recordOf(fileName);
    expect(record.firstDay).toBe(dayNumberOf(1987, 2, 25));
    // 25 Feb to 4 Mar
    expect([...record.rainTenthsMm]).toEqual([0, 0, 12, none, none, none, none, 55]);
    expect([...record.maxTempTenthsC]).toEqual([none, 31, none, -20, 15, none, 40, none]);
    expect([...record.minTempTenthsC]).toEqual([none, -44, -50, -61, -30, 0, 5, none]);
    expect([...record.multiDayRainTenthsMm]).toEqual([none, none, none, none, none, none, 90, none]);
    expect([...record.multiDayCount]).toEqual([none, none, none, none, none, none, 2, none]);
    expect(record.source).toBe(fileName);
  });

  it('counts what it dropped, presumed and passed over', async () => {
    const { reading } = await recordOf(fileName);
    expect(reading).toEqual({
      valuesRead: 20,
      droppedByFlag: 2,
      implausible: 2,
      presumedZero: 1,
      duplicated: 0,
      ignoredElements: 1,
      notes: [],
    });
  });
});

describe('values that stand twice', () => {
  it('counts them and lets the last one stand, be it a dropped one', async () => {
    const text = [
      dlyLine(ID, 2001, 6, 'PRCP', { 1: 10, 2: 20, 3: [30, ' D '], 4: 5 }),
      dlyLine(ID, 2001, 6, 'PRCP', { 1: 11, 2: [21, ' X '], 3: 31 }),
    ].join('\n');
    const record = await createFileReader([tempFile('twice.dly', text)]).record(ID);
    expect([...record.rainTenthsMm]).toEqual([11, none, 31, 5]);
    expect(record.reading).toMatchObject({ valuesRead: 7, duplicated: 3, droppedByFlag: 2 });
  });
});

describe('days in any order', () => {
  it('puts earlier days in front', async () => {
    const lines = [
      dlyLine(ID, 2001, 6, 'PRCP', { 30: 1 }),
      dlyLine(ID, 1998, 1, 'PRCP', { 1: 2 }),
      dlyLine(ID, 2005, 12, 'PRCP', { 31: 3 }),
    ];
    const record = await createFileReader([tempFile('order.dly', lines.join('\n'))]).record(ID);
    const at = (year: number, month: number, day: number) =>
      record.rainTenthsMm[dayNumberOf(year, month, day) - record.firstDay];
    expect(record.firstDay).toBe(dayNumberOf(1998, 1, 1));
    expect(record.rainTenthsMm).toHaveLength(8 * 365 + 2);
    expect([at(1998, 1, 1), at(2001, 6, 30), at(2005, 12, 31), at(2001, 7, 1)]).toEqual([2, 1, 3, none]);
  });
});

describe('a leap day', () => {
  it('is a real day in a leap year', async () => {
    const text = dlyLine(ID, 2000, 2, 'PRCP', { 28: 1, 29: 2 });
    const record = await createFileReader([tempFile('leap.dly', text)]).record(ID);
    expect([...record.rainTenthsMm]).toEqual([1, 2]);
  });
});
