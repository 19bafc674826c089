import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { parseStationList } from '../../src/source/stationList.ts';
import { dlyLine } from '../fixtures/weather/lines.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';

const fixtures = fileURLToPath(new URL('../fixtures/weather/', import.meta.url));
const ID = 'TST00000001';
const OTHER = 'TST00000002';

describe('a folder', () => {
  it('gives its records with names and positions from the station list', async () => {
    const folder = tempFolder();
    copyFileSync(join(fixtures, 'ghcnd-stations.txt'), join(folder, 'ghcnd-stations.txt'));
    copyFileSync(join(fixtures, `${ID}.dly`), join(folder, `${ID}.dly`));
    writeFileSync(join(folder, 'two.csv.gz'), gzipSync(`${OTHER},20010101,PRCP,7,,,,\n`));
    writeFileSync(join(folder, 'notes.csv'), 'day,remark\n1,none\n');
    writeFileSync(join(folder, 'notes.txt'), 'not a record');
    const reader: WeatherReader = createFileReader([folder]);
    expect(await reader.stations()).toEqual([
      {
        id: ID,
        name: 'NOWHERE 3 SW',
        latitudeDeg: 45.5,
        longitudeDeg: -110.25,
        elevationM: 1320.5,
        invented: false,
        firstDate: '1987-02-25',
        lastDate: '1987-03-04',
        rainDays: 4,
        temperatureDays: 4,
        source: `${ID}.dly`,
      },
      {
        id: OTHER,
        name: 'ELSEWHERE',
        latitudeDeg: -12,
        longitudeDeg: 8,
        elevationM: null,
        invented: false,
        firstDate: '2001-01-01',
        lastDate: '2001-01-01',
        rainDays: 1,
        temperatureDays: 0,
        source: 'two.csv.gz',
      },
    ]);
    expect((await reader.record(OTHER)).station.name).toBe('ELSEWHERE');
  });

  it('reads a file named after the station without touching the others', async () => {
    const folder = tempFolder();
    copyFileSync(join(fixtures, `${ID}.dly`), join(folder, `${ID}.dly`));
    writeFileSync(join(folder, 'damaged.dly.gz'), gzipSync('x'.repeat(999)).subarray(0, 15));
    const reader = createFileReader([folder]);
    expect((await reader.record(ID)).source).toBe(`${ID}.dly`);
    expect((await refusalOf(reader.record(OTHER))).message).toContain('damaged.dly.gz ends in the middle');
  });

  it('joins files of one station and takes the same name in two layouts once', async () => {
    const folder = tempFolder();
    const early = dlyLine(ID, 2001, 1, 'PRCP', { 1: 5 });
    writeFileSync(join(folder, `${ID}-a.dly`), early);
    writeFileSync(join(folder, `${ID}-a.csv`), `${ID},20010101,PRCP,5,,,,\n`);
    writeFileSync(join(folder, `${ID}-b.csv`), `${ID},20010103,PRCP,6,,,,\n`);
    const record = await createFileReader([folder, folder, join(folder, `${ID}-b.csv`)]).record(ID);
    expect(record.source).toBe(`${ID}-a.dly; ${ID}-b.csv`);
    expect(record.rainTenthsMm).toHaveLength(3);
    expect(record.reading).toMatchObject({ valuesRead: 2, duplicated: 0 });
  });
});

describe('a station in a file named after it and in another one', () => {
  it('has the same extent in the list as in its record', async () => {
    const folder = tempFolder();
    writeFileSync(join(folder, `${ID}.dly`), dlyLine(ID, 2001, 1, 'PRCP', { 1: 5, 3: 6 }));
    writeFileSync(join(folder, 'many.csv'), `${ID},19991231,PRCP,7,,,,\n${OTHER},20010101,PRCP,8,,,,\n`);
    const reader = createFileReader([folder]);
    const [extent] = await reader.stations();
    expect(extent).toMatchObject({ id: ID, firstDate: '2001-01-01', lastDate: '2001-01-03', rainDays: 2 });
    expect((await reader.record(ID)).source).toBe(extent.source);
  });
});

describe('one station among several in a file', () => {
  it('passes over the lines of the others, damaged ones included', async () => {
    const folder = tempFolder();
    writeFileSync(
      join(folder, 'mixed.csv'),
      [`${OTHER},20010101,PRCP,7,,,,`, `${OTHER}0,what`, `${ID},20010101,PRCP,8,,,,`].join('\n'),
    );
    writeFileSync(
      join(folder, 'mixed2.dly'),
      [
        dlyLine(OTHER, 2001, 1, 'PRCP', { 1: 9 }),
        OTHER.toLowerCase(),
        dlyLine(ID, 2001, 1, 'PRCP', { 2: 4 }),
      ].join('\n'),
    );
    const record = await createFileReader([folder]).record(ID);
    expect([...record.rainTenthsMm]).toEqual([8, 4]);
  });
});

describe('a station that is not there', () => {
  it('is refused with the nearest ids', async () => {
    const { code, message, hint, details } = await refusalOf(
      createFileReader([join(fixtures, `${ID}.dly`)]).record('TST0000001'),
    );
    expect(code).toBe('STATION_UNKNOWN');
    expect(message).toBe('No file holds a station with the id "TST0000001".');
    expect(hint).toBe(`The ids there are: ${ID}.`);
    expect(details.nearest).toEqual([ID]);
  });

  it('names five ids at most, nearest first', async () => {
    const folder = tempFolder();
    const ids = [
      'AAA00000001',
      'TST00000007',
      'TST00000008',
      'tst00000009',
      'TST00000100',
      'TST00009999',
      'BBB00000001',
    ];
    writeFileSync(join(folder, 'many.csv'), ids.map((id) => `${id},20010101,PRCP,1,,,,`).join('\n'));
    const { hint, details } = await refusalOf(createFileReader([folder]).record('TST00000009'));
    expect(details.nearest).toEqual([
      'TST00000007',
      'TST00000008',
      'tst00000009',
      'TST00000100',
      'TST00009999',
    ]);
    expect(hint).toMatch(/^The nearest of 7 ids: TST00000007, /);
  });

  it('is told apart from one without any accepted value', async () => {
    const folder = tempFolder();
    writeFileSync(join(folder, 'flagged.dly'), dlyLine(ID, 2001, 1, 'PRCP', { 1: [5, ' X '] }));
    const reader = createFileReader([folder]);
    expect((await refusalOf(reader.record(ID))).code).toBe('STATION_EMPTY');
    expect(await reader.stations()).toEqual([]);
  });
});

describe('the station list', () => {
  it('refuses a damaged line by file, line and column', () => {
    const line = 'TST00000001  45.x000 -110.2500 1320.5    NOWHERE';
    expect(() => parseStationList(Buffer.from(`\n${line}\n`), 'list.txt')).toThrow(
      'list.txt, line 2, column 13: " 45.x000" is no latitude from -90 to 90.',
    );
    expect(() => parseStationList(Buffer.from('TST00000001  45.0'), 'list.txt')).toThrow(
      'list.txt, line 1, column 18: the line ends after 17 characters; id, position and elevation take 37.',
    );
  });
});
