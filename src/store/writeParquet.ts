import { once } from 'node:events';
import { createWriteStream, rmSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { SourceFailedError } from '../errors.ts';
import { lockTo } from './lockDown.ts';
import { quoted } from './quoted.ts';

/** What a Parquet file takes of a column. */
export interface ParquetColumn {
  readonly name: string;
  readonly type: 'text' | 'number' | 'whole' | 'truth' | 'date';
}

const TYPES = { text: 'VARCHAR', number: 'DOUBLE', whole: 'BIGINT', truth: 'BOOLEAN', date: 'DATE' } as const;

/**
 * Writes rows into one Parquet file, by way of a JSON file beside it that is taken away again.
 * @throws {SourceFailedError} FILE_NOT_WRITTEN; what stood at the path is then left as it was
 */
export async function writeParquet(
  path: string,
  columns: readonly ParquetColumn[],
  rows: AsyncIterable<readonly unknown[]> | Iterable<readonly unknown[]>,
): Promise<void> {
  const json = join(dirname(resolve(path)), `.${process.pid}-${Date.now()}.json`);
  try {
    const lines = createWriteStream(json, { flags: 'wx' });
    await once(lines, 'open');
    for await (const row of rows) {
      const named = Object.fromEntries(columns.map((_, index) => [`c${index}`, row[index]]));
      if (!lines.write(`${JSON.stringify(named)}\n`)) await once(lines, 'drain');
    }
    lines.end();
    await once(lines, 'finish');
    const types = columns.map(({ type }, index) => `c${index}: ${quoted(TYPES[type])}`).join(', ');
    const names = columns.map(({ name }, index) => `c${index} AS "${name.replaceAll('"', '""')}"`).join(', ');
    const instance = await DuckDBInstance.create(':memory:');
    const connection = await instance.connect();
    try {
      await lockTo(connection, dirname(resolve(path)));
      await connection.run(
        `COPY (SELECT ${names} FROM read_json(${quoted(json)}, format = 'newline_delimited', columns = {${types}}))
         TO ${quoted(resolve(path))} (FORMAT parquet)`,
      );
    } finally {
      connection.closeSync();
      instance.closeSync();
    }
  } catch (cause) {
    throw new SourceFailedError('FILE_NOT_WRITTEN', `The file ${path} cannot be written.`, {
      hint: 'Check that its folder is there and that you may write to it.',
      details: { path },
      cause,
    });
  } finally {
    rmSync(json, { force: true });
  }
}
