import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { type OpenMode, openWeatherStore, WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { holdInOtherProcess } from './holdWeather.ts';

async function openStore(folder: string, mode: OpenMode) {
  const store = await openWeatherStore(folder, { mode });
  onTestFinished(() => store.close());
  return store;
}

async function importInto(folder: string, ...records: StationRecord[]) {
  const store = await openWeatherStore(folder, { mode: 'write' });
  const counts = await store.importRecords(records);
  await store.close();
  return counts;
}

async function runIn(folder: string, ...statements: string[]) {
  const instance = await DuckDBInstance.create(join(folder, WEATHER_FILE));
  const connection = await instance.connect();
  for (const statement of statements) await connection.run(statement);
  connection.closeSync();
  instance.closeSync();
}

const ID = 'TST00000001';
const full = smallRecord({
  rain: [0, null, 25, null, null, 7],
  maxTemp: [100, null, -5, 3, 4, null],
  minTemp: [-20, null, -60, 3, null, 1],
  multiDayRain: [null, null, null, null, 55, null],
  multiDayCount: [null, null, null, null, 2, null],
});

describe('a record written and read back', () => {
  it('is the same, a day without any value included', async () => {
    const folder = tempFolder();
    expect(await importInto(folder, full)).toEqual([{ inserted: 13, replaced: 0 }]);
    const store: WeatherReader = await openStore(folder, 'read');
    expect(await store.record(ID)).toEqual(full);
    expect(await store.stations()).toEqual([
      {
        ...full.station,
        firstDate: '1997-05-19',
        lastDate: '1997-05-24',
        rainDays: 3,
        temperatureDays: 3,
        source: 'small.dly',
      },
    ]);
  });

  it('loses days without values at its ends', async () => {
    const folder = tempFolder();
    await importInto(folder, smallRecord({ rain: [null, null, 4, null, 5, null] }));
    const record = await (await openStore(folder, 'read')).record(ID);
    expect(record.firstDay).toBe(10_002);
    expect([...record.rainTenthsMm]).toEqual([4, ABSENT, 5]);
  });

  it('is seen by the store that wrote it, beside records of other stations', async () => {
    const folder = tempFolder();
    const store = await openStore(folder, 'write');
    const other = smallRecord({ rain: [9] }, { station: { ...full.station, id: "O'HARA; DROP", name: 'x' } });
    await Promise.all([store.importRecord(full), store.importRecord(other)]);
    const [first, second] = await Promise.all([store.record(ID), store.record(other.station.id)]);
    expect(first).toEqual(full);
    expect(second).toEqual(other);
    expect((await store.stations()).map(({ id }) => id)).toEqual(["O'HARA; DROP", ID]);
  });
});

describe('importing again', () => {
  it('changes nothing', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    expect(await importInto(folder, full)).toEqual([{ inserted: 0, replaced: 0 }]);
    expect(await (await openStore(folder, 'read')).record(ID)).toEqual(full);
  });

  it('replaces day by day where the new record holds a value, and keeps what it does not hold', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    const later = smallRecord(
      { rain: [26, 8, null, 6], maxTemp: [null, null, 4] },
      { firstDay: 10_002, source: 'later.csv', station: { ...full.station, name: ID, latitudeDeg: null } },
    );
    expect(await importInto(folder, later)).toEqual([{ inserted: 1, replaced: 2 }]);
    const record = await (await openStore(folder, 'read')).record(ID);
    expect([...record.rainTenthsMm]).toEqual([0, ABSENT, 26, 8, ABSENT, 6]);
    expect([...record.maxTempTenthsC]).toEqual([100, ABSENT, -5, 3, 4, ABSENT]);
    expect([...record.multiDayCount]).toEqual([...full.multiDayCount]);
    expect(record.source).toBe('small.dly; later.csv');
    expect(record.reading.valuesRead).toBe(13 + 4);
    expect(record.station).toEqual(full.station);
  });

  it('forgets a source of which no value is left', async () => {
    const folder = tempFolder();
    await importInto(folder, smallRecord({ rain: [1, 2] }));
    await importInto(folder, smallRecord({ rain: [1, 3, 4] }, { source: 'whole.dly' }));
    const record = await (await openStore(folder, 'read')).record(ID);
    expect(record.source).toBe('whole.dly');
    expect(record.reading.valuesRead).toBe(3);
  });

  it('refuses to mix an invented record with a real one', async () => {
    const store = await openStore(tempFolder(), 'write');
    await store.importRecord(full);
    const invented = smallRecord({ rain: [1] }, { station: { ...full.station, invented: true } });
    const { code, message } = await refusalOf(store.importRecord(invented));
    expect(code).toBe('STATION_INVENTED');
    expect(message).toBe(
      `Station ${ID} is stored as a real record; an invented one cannot be mixed into it.`,
    );
    expect(await store.record(ID)).toEqual(full);
  });
});

describe('an import that fails', () => {
  it('leaves the store as it was, be it the last of several records that is at fault', async () => {
    const store = await openStore(tempFolder(), 'write');
    await store.importRecord(full);
    const other = smallRecord({ rain: [1] }, { station: { ...full.station, id: 'TST00000002' } });
    const empty = smallRecord({ rain: [null] }, { station: { ...full.station, id: 'TST00000003' } });
    const changed = smallRecord({ rain: [99] });
    const { code } = await refusalOf(store.importRecords([changed, other, empty]));
    expect(code).toBe('STATION_EMPTY');
    expect((await store.stations()).map(({ id }) => id)).toEqual([ID]);
    expect(await store.record(ID)).toEqual(full);
    // and the next import still works
    expect(await store.importRecord(other)).toEqual({ inserted: 1, replaced: 0 });
  });
});

describe('a store that is not there or empty', () => {
  it('reads as one without stations, and no file is made', async () => {
    const folder = join(tempFolder(), 'none');
    const store = await openStore(folder, 'read');
    expect(await store.stations()).toEqual([]);
    const { code, message } = await refusalOf(store.record(ID));
    expect(code).toBe('STORE_EMPTY');
    expect(message).toBe(`There is no record of station "${ID}": the store holds no station yet.`);
    expect((await refusalOf(store.importRecord(full))).code).toBe('STORE_READ_ONLY');
    expect(existsSync(folder)).toBe(false);
  });

  it('refuses every record as long as nothing was imported', async () => {
    const folder = tempFolder();
    await importInto(folder);
    const store = await openStore(folder, 'read');
    expect(await store.stations()).toEqual([]);
    expect((await refusalOf(store.record(ID))).code).toBe('STORE_EMPTY');
  });

  it('names the nearest ids where there are others', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    const { code, hint } = await refusalOf((await openStore(folder, 'read')).record('tst0000001'));
    expect(code).toBe('STATION_UNKNOWN');
    expect(hint).toBe(`The ids most like it: ${ID}.`);
  });
});

describe('who may open the file', () => {
  it('a writer in another process keeps readers and writers out, with a sentence', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    const path = join(folder, WEATHER_FILE);
    const holder = await holdInOtherProcess(path);
    for (const mode of ['read', 'write'] as const) {
      const { kind, code, message, hint } = await refusalOf(openWeatherStore(folder, { mode }));
      expect([kind, code]).toEqual(['conflict', 'STORE_BUSY']);
      expect(message).toBe(`The store ${path} is held by another process (number ${holder.pid}).`);
      expect(hint).toContain('Stop the server or import');
    }
    await holder.kill();
    expect(await (await openStore(folder, 'read')).record(ID)).toEqual(full);
  });

  it('a writer that was killed leaves what it had finished and nothing else', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    const holder = await holdInOtherProcess(
      join(folder, WEATHER_FILE),
      "UPDATE station SET name = 'FINISHED'",
      'BEGIN TRANSACTION',
      'DELETE FROM daily',
    );
    await holder.kill();
    const record = await (await openStore(folder, 'read')).record(ID);
    expect(record).toEqual({ ...full, station: { ...full.station, name: 'FINISHED' } });
  });

  it('several readers share it in one process; a writer there is alone', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    const first = await openStore(folder, 'read');
    const second = await openStore(folder, 'read');
    expect((await refusalOf(openWeatherStore(folder, { mode: 'write' }))).code).toBe('STORE_BUSY');
    await first.close();
    await first.close();
    expect(await second.record(ID)).toEqual(full);
    expect((await refusalOf(second.importRecord(full))).code).toBe('STORE_READ_ONLY');
    await second.close();
    await openStore(folder, 'write');
    const { code, message } = await refusalOf(openWeatherStore(folder, { mode: 'read' }));
    expect(code).toBe('STORE_BUSY');
    expect(message).toBe(`The store ${join(folder, WEATHER_FILE)} is already open in this program.`);
  });

  it('closing waits for what is running', async () => {
    const folder = tempFolder();
    const store = await openStore(folder, 'write');
    const running = store.importRecord(full);
    await store.close();
    expect(await running).toEqual({ inserted: 13, replaced: 0 });
    expect(readdirSync(folder)).toEqual([WEATHER_FILE]);
  });
});

describe('versions', () => {
  it('refuses a file of a newer program, for reading and for writing', async () => {
    const folder = tempFolder();
    await importInto(folder, full);
    await runIn(folder, 'UPDATE schema_version SET version = 99');
    for (const mode of ['read', 'write'] as const) {
      const { code, message } = await refusalOf(openWeatherStore(folder, { mode }));
      expect(code).toBe('STORE_NEWER');
      expect(message).toMatch(/has version 99; this program knows versions up to \d+\.$/);
    }
  });

  it('builds a file that was begun but not finished', async () => {
    const folder = tempFolder();
    await runIn(folder, 'CREATE TABLE schema_version (version INTEGER NOT NULL)');
    expect(await (await openWeatherStore(folder, { mode: 'read' })).stations()).toEqual([]);
    expect(await importInto(folder, full)).toEqual([{ inserted: 13, replaced: 0 }]);
  });

  it('refuses a file that is no store', async () => {
    const folder = tempFolder();
    writeFileSync(join(folder, WEATHER_FILE), 'not a database '.repeat(500));
    const { code, message } = await refusalOf(openWeatherStore(folder, { mode: 'read' }));
    expect(code).toBe('STORE_UNREADABLE');
    expect(message).toMatch(/is no store that can be opened\.$/);
  });
});
