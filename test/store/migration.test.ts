import { mkdirSync, readFileSync, rmdirSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openWeatherStore, WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { VERSION_ONE } from './versionOne.ts';

async function storeOfVersionOne(): Promise<string> {
  const folder = tempFolder();
  const instance = await DuckDBInstance.create(join(folder, WEATHER_FILE));
  const connection = await instance.connect();
  for (const statement of VERSION_ONE) await connection.run(statement);
  connection.closeSync();
  instance.closeSync();
  return folder;
}

describe('a store of version 1', () => {
  it('is brought up to date by reading it, holds what it held, and stays as a copy', async () => {
    const folder = await storeOfVersionOne();
    const before = readFileSync(join(folder, WEATHER_FILE));
    const store = await openWeatherStore(folder, { mode: 'read' });
    onTestFinished(() => store.close());
    const expected = smallRecord({ rain: [12, 0], maxTemp: [100], minTemp: [-20] });
    expect(await store.record('TST00000001')).toEqual({
      ...expected,
      reading: {
        valuesRead: 4,
        droppedByFlag: 1,
        implausible: 2,
        presumedZero: 3,
        duplicated: 4,
        ignoredElements: 5,
        notes: [],
      },
    });
    expect(readFileSync(join(folder, 'weather.version-1.duckdb')).equals(before)).toBe(true);
  });

  it('is refused where it can only be read, and left as it is', async () => {
    const folder = await storeOfVersionOne();
    mkdirSync(join(folder, 'weather.version-1.duckdb'));
    const { code, hint } = await refusalOf(openWeatherStore(folder, { mode: 'read' }));
    expect(code).toBe('STORE_OLDER');
    expect(hint).toContain('that you may write the data folder');
    const write = await refusalOf(openWeatherStore(folder, { mode: 'write' }));
    expect(write.code).toBe('STORE_NOT_COPIED');
    rmdirSync(join(folder, 'weather.version-1.duckdb'));
    await (await openWeatherStore(folder, { mode: 'write' })).close();
  });

  it('takes a further import, with what was noted in reading', async () => {
    const folder = await storeOfVersionOne();
    const store = await openWeatherStore(folder, { mode: 'write' });
    onTestFinished(() => store.close());
    const later = smallRecord({ rain: [3] }, { firstDay: 10_002, source: 'later.csv' });
    const notes = ['later.csv: rain is taken as inches.', 'later.csv: a quote " and a backslash \\.'];
    await store.importRecord({ ...later, reading: { ...later.reading, notes } });
    const again = smallRecord({ rain: [4] }, { firstDay: 10_003, source: 'third.csv' });
    await store.importRecord({ ...again, reading: { ...again.reading, notes: [notes[0], 'third.csv: x.'] } });
    const { reading, source } = await store.record('TST00000001');
    expect(source).toBe('small.dly; later.csv; third.csv');
    expect(reading.notes).toEqual([...notes, 'third.csv: x.']);
    expect(await store.scatteredFiles()).toBe(0);
    expect(await store.compact()).toEqual({ rows: 4, scatteredFiles: 0 });
  });
});
