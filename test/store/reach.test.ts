import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { expect, it, onTestFinished } from 'vitest';
import { clearSpill, lockDown } from '../../src/store/lockDown.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';

/** A connection locked down to a data folder and one file, as the store's own are. */
async function lockedConnection(folder: string, files: readonly string[]) {
  const instance = await DuckDBInstance.create(join(folder, 'any.duckdb'));
  const connection = await instance.connect();
  onTestFinished(() => {
    connection.closeSync();
    instance.closeSync();
  });
  await lockDown(connection, folder, files);
  return connection;
}

it('the database reads the file to be imported and the data folder, and no other file', async () => {
  const folder = tempFolder();
  const named = tempFile("it's.csv", 'a\n');
  const other = tempFile('other.csv', 'b\n');
  writeFileSync(join(folder, 'inside.csv'), 'c\n');
  const connection = await lockedConnection(folder, [named]);
  const firstOf = async (path: string) => {
    const text = path.replaceAll("'", "''");
    return (await connection.runAndReadAll(`SELECT * FROM read_csv('${text}', header = false)`)).getRows();
  };
  expect(await firstOf(named)).toEqual([['a']]);
  expect(await firstOf(join(folder, 'inside.csv'))).toEqual([['c']]);
  await expect(firstOf(other)).rejects.toThrow(/Permission Error/);
  await expect(firstOf('/etc/hosts')).rejects.toThrow(/Permission Error/);
  await expect(firstOf(join(folder, '..', 'x.csv'))).rejects.toThrow(/Permission Error/);
});

it('the database writes, attaches and loads nothing outside, and the lock holds', async () => {
  const folder = tempFolder();
  const outside = tempFolder();
  const connection = await lockedConnection(folder, []);
  for (const statement of [
    `COPY (SELECT 1) TO '${join(outside, 'out.csv')}'`,
    `ATTACH '${join(outside, 'other.duckdb')}'`,
    'INSTALL httpfs',
    "SET allowed_paths = ['/etc/hosts']",
    'SET enable_external_access = true',
    'SET lock_configuration = false',
  ]) {
    await expect(connection.run(statement), statement).rejects.toThrow();
  }
  expect(existsSync(join(outside, 'out.csv'))).toBe(false);
});

it('a file that was not named on opening is left to the readers', async () => {
  const path = tempFile('a.csv', 'TST00000001,20000101,PRCP,5,,,7,\n');
  const store = await openWeatherStore(tempFolder(), { mode: 'write' });
  onTestFinished(() => store.close());
  expect(await store.importFile(path)).toEqual({ outcome: 'left-to-readers', line: 0 });
});

it('what a killed import had spilled is taken away when the next one opens the store', async () => {
  const folder = tempFolder();
  const spill = join(folder, 'weather.spill');
  mkdirSync(spill);
  writeFileSync(join(spill, 'duckdb_temp_storage-0.tmp'), 'x');
  await (await openWeatherStore(folder, { mode: 'write' })).close();
  expect(existsSync(join(spill, 'duckdb_temp_storage-0.tmp'))).toBe(false);
  clearSpill(folder);
});
