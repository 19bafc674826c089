import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, it } from 'vitest';
import { FIELDS_FILE, openFieldsStore } from '../../src/store/fieldsStore.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { fieldsOfVersionOne } from './fieldsVersionOne.ts';
import { holdInOtherProcess } from './holdWeather.ts';
import { openFields, tickingClock } from './openFields.ts';

const now = tickingClock();

async function write(folder: string, statements: readonly (readonly [string, ...string[]])[]): Promise<void> {
  const instance = await DuckDBInstance.create(join(folder, FIELDS_FILE));
  const connection = await instance.connect();
  for (const [statement, ...values] of statements) await connection.run(statement, values);
  connection.closeSync();
  instance.closeSync();
}

describe('a store of fields of version 1', () => {
  it('is brought up to date, holds what it held, and stays as a copy', async () => {
    const folder = tempFolder();
    await write(folder, fieldsOfVersionOne(JSON.stringify(fieldOf()), JSON.stringify(labelOf())));
    const before = readFileSync(join(folder, FIELDS_FILE));
    const store = await openFields(folder);
    expect(await store.fields.get('home-quarter')).toMatchObject({ version: 2, record: fieldOf() });
    expect(await store.labels.get('shed-one')).toMatchObject({ version: 1, record: labelOf() });
    expect(await store.lastAnswers()).toEqual([]);
    expect((await store.fields.undo('home-quarter', 2)).record.note).toBe('first');
    expect(readFileSync(join(folder, 'fields.version-1.duckdb')).equals(before)).toBe(true);
  });
});

describe('a file that cannot be used', () => {
  it('is refused where a newer program wrote it, and left as it is', async () => {
    const folder = tempFolder();
    await (await openFieldsStore(folder, { now })).close();
    await write(folder, [['UPDATE schema_version SET version = 99']]);
    const before = readFileSync(join(folder, FIELDS_FILE));
    const { code, message } = await refusalOf(openFieldsStore(folder, { now }));
    expect(code).toBe('STORE_NEWER');
    expect(message).toMatch(/has version 99; this program knows versions up to \d+\.$/);
    expect(readFileSync(join(folder, FIELDS_FILE)).equals(before)).toBe(true);
    expect(existsSync(join(folder, 'fields.version-99.duckdb'))).toBe(false);
  });

  it('is refused where it is none, saying what to do', async () => {
    const folder = tempFolder();
    writeFileSync(join(folder, FIELDS_FILE), 'no database at all, but long enough to be looked at as one');
    const { code, hint } = await refusalOf(openFieldsStore(folder, { now }));
    expect(code).toBe('STORE_UNREADABLE');
    expect(hint).toContain('the last backup restored');
  });

  it('is refused where another process or another part of this one holds it', async () => {
    const folder = tempFolder();
    await openFields(folder);
    expect((await refusalOf(openFieldsStore(folder, { now }))).message).toContain(
      'already open in this program',
    );
    const other = tempFolder();
    const { pid } = await holdInOtherProcess(join(other, FIELDS_FILE));
    const { code, details } = await refusalOf(openFieldsStore(other, { now }));
    expect([code, details.process]).toEqual(['STORE_BUSY', pid]);
  });

  it('tells a record that cannot be read by its name, and takes no other down with it', async () => {
    const folder = tempFolder();
    const store = await openFieldsStore(folder, { now });
    await store.fields.put(fieldOf(), null);
    await store.fields.put(fieldOf({ id: 'other' }), null);
    await store.close();
    await write(folder, [["UPDATE field SET document = '{}' WHERE id = $1", 'other']]);
    const again = await openFields(folder);
    expect((await refusalOf(again.fields.get('other'))).code).toBe('FIELD_DAMAGED');
    expect((await again.fields.get('home-quarter'))?.record).toEqual(fieldOf());
  });
});
