import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DuckDBConnection } from '@duckdb/node-api';
import { expect, it, vi } from 'vitest';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { tickingClock } from './openFields.ts';

const MARK = "zq'; DROP TABLE daily; --";

it('nothing that a user gives stands in the text of a statement, but for the quoted name of a file', async () => {
  const said: string[] = [];
  for (const method of ['run', 'runAndReadAll'] as const) {
    const real = DuckDBConnection.prototype[method] as (...given: unknown[]) => unknown;
    vi.spyOn(DuckDBConnection.prototype, method).mockImplementation(function (
      this: DuckDBConnection,
      ...given: unknown[]
    ) {
      said.push(String(given[0]));
      return real.apply(this, given) as never;
    });
  }
  const folder = tempFolder();
  const fields = await openFieldsStore(folder, { now: tickingClock() });
  await fields.fields.put(fieldOf({ farm: MARK, name: MARK, note: MARK, station: MARK }), null);
  await fields.labels.put(labelOf({ name: MARK, note: MARK }), null);
  await fields.fields.remove('home-quarter', 1);
  await fields.fields.undo('home-quarter', 2);
  await fields.fields.get(MARK);
  await fields.replaceEverything(await fields.everything());
  await fields.keepAnswers(await fields.lastAnswers());
  await fields.close();
  const file = tempFile(`${MARK}.csv`, `TST00000001,20000101,PRCP,5,,,7,\n${MARK},20000102,PRCP,5,,,7,\n`);
  const plain = tempFile(`plain ${MARK}.csv`, 'TST00000001,20000101,PRCP,5,,,7,\n');
  const store = await openWeatherStore(folder, { mode: 'write', files: [file, plain] });
  await store.importFile(file);
  await store.importFile(plain);
  const record = smallRecord({ rain: [1, 2] }, { source: MARK });
  await store.importRecord({ ...record, station: { ...record.station, id: MARK, name: MARK } });
  await store.record(MARK);
  await store.records([MARK]);
  await store.record('nowhere zq').catch(() => undefined);
  await store.close();
  vi.restoreAllMocks();
  const quotedMark = MARK.replaceAll("'", "''");
  expect(said.length).toBeGreaterThan(50);
  expect(said.filter((sql) => sql.replaceAll(quotedMark, '').includes('zq'))).toEqual([]);
  // And a name that is quoted stands inside a text, as the path of a file.
  for (const sql of said.filter((one) => one.includes(quotedMark))) {
    expect(sql).toMatch(/read_csv\('|allowed_paths = \['/);
  }
});

it('only the store speaks to the database', () => {
  const source = fileURLToPath(new URL('../../src/', import.meta.url));
  const speaking = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.ts') && readFileSync(join(source, file), 'utf8').includes('@duckdb/'),
  );
  expect(speaking.filter((file) => !file.startsWith('store'))).toEqual([]);
});
