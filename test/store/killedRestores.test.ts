import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { DuckDBInstance } from '@duckdb/node-api';
import { beforeAll, expect, it } from 'vitest';
import { createRandomSource } from '../../src/demo/randomSource.ts';
import { backupSchema } from '../../src/schema/backup.ts';
import { FIELDS_FILE, openFieldsStore } from '../../src/store/fieldsStore.ts';
import { openWeatherStore, WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { bundled } from '../bundled.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { tempFolder } from '../tempFolder.ts';
import { fieldsOfVersionOne } from './fieldsVersionOne.ts';
import { tickingClock } from './openFields.ts';
import { VERSION_ONE } from './versionOne.ts';

// With ten rounds each of killedFields and killedImport, fifty in all.
const RESTORES = 15;
const MIGRATIONS = 15;
const LONGEST_DELAY_MS = 250;

let program = '';
beforeAll(async () => {
  program = await bundled('test/store/killedChild.ts');
});

/** Lets the other program work for a while, kills it, and gives the last piece that it said was done; -1 for none. */
async function killed(delayMs: number, ...argv: string[]): Promise<number> {
  const child = spawn(process.execPath, [program, ...argv], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(child, 'close');
  let said = '';
  child.stdout.on('data', (text) => {
    said += text;
  });
  await Promise.race([once(child.stdout, 'data'), ended]);
  await pause(delayMs);
  child.kill('SIGKILL');
  await ended;
  expect(said).toMatch(/^open\n/);
  const words = said.split('\n').slice(1, -1);
  return words.length === 0 ? -1 : Number(words[words.length - 1]);
}

/** A backup of some fields, each in several versions. */
function backupOf(note: string): string {
  const fields = Array.from({ length: 12 }, (_, field) =>
    [1, 2, 3].map((version) => ({
      ...{ id: `field-${field}`, version, removed: false, changedAt: '2026-11-25T12:00:00.000Z' },
      document: fieldOf({ id: `field-${field}`, note: `${note} ${version}` }),
    })),
  ).flat();
  const whole = { format: 'drywake-backup', formatVersion: 1, madeAt: '2026-11-25T12:00:00.000Z' };
  return JSON.stringify({ ...whole, program: '0.1.0', fields, labels: [], lastAnswers: [] });
}

it('a program killed while it restores has restored a backup whole, or kept what was there', async () => {
  const folder = tempFolder();
  const given = tempFolder();
  const paths = ['first', 'second'].map((note) => {
    writeFileSync(join(given, note), backupOf(note));
    return join(given, note);
  });
  const random = createRandomSource(20_261_126);
  let notes = '';
  for (let round = 0; round < RESTORES; round++) {
    const last = await killed(random.uniform() * LONGEST_DELAY_MS, 'restore', folder, ...paths);
    const store = await openFieldsStore(folder, { now: tickingClock() });
    const { fields } = await store.everything();
    const present = (await store.fields.list()).kept;
    await store.close();
    const found = [...new Set(fields.map(({ document }) => document.note.split(' ')[0]))];
    // What was acknowledged is there, or what came after it; before the first, what the round before left.
    const allowed =
      last < 0 ? [notes, 'first'] : [['first', 'second'][last % 2], ['first', 'second'][(last + 1) % 2]];
    expect(allowed).toContain(found.join());
    notes = found.join();
    expect(fields).toHaveLength(notes === '' ? 0 : 36);
    expect(present.map(({ version, record }) => [version, record.note])).toEqual(
      Array.from({ length: notes === '' ? 0 : 12 }, () => [3, `${notes} 3`]),
    );
  }
  const kept = readdirSync(folder).filter((name) => name.startsWith('fields-before-restore-'));
  expect(kept.length).toBeGreaterThan(0);
  for (const name of kept) backupSchema.parse(JSON.parse(readFileSync(join(folder, name), 'utf8')));
}, 120_000);

async function build(path: string, statements: readonly (readonly [string, ...string[]])[]): Promise<void> {
  const instance = await DuckDBInstance.create(path);
  const connection = await instance.connect();
  for (const [statement, ...values] of statements) await connection.run(statement, values);
  connection.closeSync();
  instance.closeSync();
}

it('a program killed while it brings stores up to date has done so, or left what the next one does', async () => {
  const template = tempFolder();
  await build(
    join(template, FIELDS_FILE),
    fieldsOfVersionOne(JSON.stringify(fieldOf()), JSON.stringify(labelOf())),
  );
  await build(
    join(template, WEATHER_FILE),
    VERSION_ONE.map((statement) => [statement] as const),
  );
  const random = createRandomSource(20_261_127);
  let unfinished = 0;
  for (let round = 0; round < MIGRATIONS; round++) {
    const folder = tempFolder();
    mkdirSync(folder, { recursive: true });
    const last = await killed(random.uniform() * LONGEST_DELAY_MS, 'migrate', folder, template);
    if (existsSync(join(folder, `${last + 1}`))) unfinished++;
    for (const turn of [last, last + 1].filter((one) => existsSync(join(folder, `${one}`)))) {
      const copy = join(folder, `${turn}`);
      const fields = await openFieldsStore(copy, { now: tickingClock() });
      expect(await fields.fields.get('home-quarter')).toMatchObject({ version: 2, record: fieldOf() });
      expect(await fields.labels.get('shed-one')).toMatchObject({ version: 1, record: labelOf() });
      expect((await fields.everything()).fields).toHaveLength(2);
      await fields.close();
      const weather = await openWeatherStore(copy, { mode: 'read' });
      expect((await weather.record('TST00000001')).rainTenthsMm.slice(0, 2)).toEqual(Int32Array.of(12, 0));
      await weather.close();
      for (const file of [FIELDS_FILE, WEATHER_FILE]) {
        const older = join(copy, file.replace('.duckdb', '.version-1.duckdb'));
        expect(readFileSync(older).equals(readFileSync(join(template, file)))).toBe(true);
      }
    }
  }
  expect(unfinished).toBeGreaterThan(MIGRATIONS / 3);
}, 120_000);
