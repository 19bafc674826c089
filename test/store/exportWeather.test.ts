import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, it } from 'vitest';
import { ABSENT } from '../../src/schema/codes.ts';
import { exportWeather, readBackQuery } from '../../src/store/exportWeather.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { writeParquet } from '../../src/store/writeParquet.ts';
import { generatedRecord } from '../bench/generatedRecord.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';

async function rowsOf(sql: string): Promise<unknown[][]> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  const result = await connection.runAndReadAll(sql);
  const rows = result.getRowsJS();
  connection.closeSync();
  instance.closeSync();
  return rows;
}

async function storeOf(numbers: readonly number[]): Promise<string> {
  const folder = tempFolder();
  const store = await openWeatherStore(folder, { mode: 'write' });
  await store.importRecords(numbers.map((number) => generatedRecord(number, 3)));
  await store.close();
  return folder;
}

describe('stored days as Parquet', () => {
  it('give the same series by the query over all partitions', async () => {
    const home = await storeOf([1, 2, 3]);
    const folder = join(tempFolder(), 'parquet');
    const { stations, days, files } = await exportWeather(home, folder);
    expect(stations).toBe(3);
    const store = await openWeatherStore(home, { mode: 'read' });
    let held = 0;
    for (const id of ['GEN00000001', 'GEN00000002', 'GEN00000003']) {
      const record = await store.record(id);
      const rows = await rowsOf(readBackQuery(files, id));
      held += rows.length;
      const columns = [record.rainTenthsMm, record.maxTempTenthsC, record.minTempTenthsC];
      const dense = columns.map((column) => new Int32Array(column.length).fill(ABSENT));
      for (const [day, ...values] of rows) {
        const index = (day as Date).getTime() / 86_400_000 - record.firstDay;
        dense.forEach((column, place) => {
          if (values[place] !== null) column[index] = values[place] as number;
        });
      }
      expect(dense).toEqual(columns);
    }
    expect(held).toBe(days);
    await store.close();
  });

  it('are those of some stations only where asked, with a list of them', async () => {
    const home = await storeOf([1, 2]);
    const folder = join(tempFolder(), 'parquet');
    const { stations, files } = await exportWeather(home, folder, ['GEN00000002']);
    expect(stations).toBe(1);
    expect(await rowsOf(readBackQuery(files, 'GEN00000001'))).toEqual([]);
    const listed = await rowsOf(`SELECT station, name FROM '${folder}/stations.parquet'`);
    expect(listed).toEqual([['GEN00000002', 'Generated 2']]);
  });

  it.each(['días', 'é', 'ends in blanks  ', '日本'])('go into a folder of any name: %j', async (name) => {
    const home = await storeOf([1]);
    const { files, days } = await exportWeather(home, join(tempFolder(), name));
    expect(days).toBeGreaterThan(0);
    expect(await rowsOf(readBackQuery(files, 'GEN00000001'))).toHaveLength(days);
  });

  it('are never written over anything, nor out of an empty store', async () => {
    const home = await storeOf([1]);
    const folder = tempFolder();
    writeFileSync(join(folder, 'mine.txt'), 'mine');
    expect((await refusalOf(exportWeather(home, folder))).code).toBe('FOLDER_NOT_EMPTY');
    for (const name of ['', ' ']) {
      expect((await refusalOf(exportWeather(home, name))).code).toBe('FOLDER_NAME');
    }
    const nothing = await refusalOf(exportWeather(tempFolder(), join(folder, 'new')));
    expect(nothing.code).toBe('STORE_EMPTY');
    const unknown = await refusalOf(exportWeather(home, join(folder, 'new'), ['nowhere']));
    expect(unknown.code).toBe('STORE_EMPTY');
  });
});

describe('a table as Parquet', () => {
  const columns = [
    { name: 'a "name"', type: 'text' },
    { name: 'odds', type: 'number' },
    { name: 'years', type: 'whole' },
    { name: 'within', type: 'truth' },
    { name: 'clear', type: 'date' },
  ] as const;

  it('reads back as it was', async () => {
    const path = join(tempFolder(), "it's.parquet");
    const rows = [
      ['=1+1', 0.1 + 0.2, 37, true, '2027-05-10'],
      [null, null, null, null, null],
    ];
    await writeParquet(path, columns, rows);
    const got = await rowsOf(
      `SELECT "a ""name""", odds, years::INTEGER, within, clear::VARCHAR FROM '${path.replaceAll("'", "''")}'`,
    );
    expect(got).toEqual(rows);
  });

  it('says where it cannot be written', async () => {
    const problem = await refusalOf(writeParquet('/nowhere/at/all.parquet', columns, []));
    expect(problem.code).toBe('FILE_NOT_WRITTEN');
  });
});
