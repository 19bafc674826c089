import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { expect, it, onTestFinished } from 'vitest';
import { lockFields } from '../../src/store/lockFields.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';

it('the database of fields reaches no file beside its own, and the lock holds', async () => {
  const folder = tempFolder();
  const instance = await DuckDBInstance.create(join(folder, 'any.duckdb'));
  const connection = await instance.connect();
  onTestFinished(() => {
    connection.closeSync();
    instance.closeSync();
  });
  await lockFields(connection);
  await connection.run('CREATE TABLE t AS SELECT 1 AS a');
  await connection.run('CHECKPOINT');
  for (const statement of [
    `SELECT * FROM read_csv('${tempFile('other.csv', 'a\n1\n')}')`,
    `COPY t TO '${join(folder, 'out.csv')}'`,
    `ATTACH '${join(folder, 'other.duckdb')}'`,
    'INSTALL httpfs',
    'SET enable_external_access = true',
    'SET lock_configuration = false',
  ]) {
    await expect(connection.run(statement), statement).rejects.toThrow();
  }
});
