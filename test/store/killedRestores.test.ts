import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { DuckDBInstance } from '@duckdb/node-api';
import { beforeAll, expect, it, onTestFinished } from 'vitest';
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
/** Pieces of work that are done before a kill, at most. */
const MOST_PIECES = 3;

let program = '';
beforeAll(async () => {
  program = await bundled('test/store/killedChild.ts');
});

/**
 * Lets the other program do some pieces of its work, kills it within the next one, wherever a quick machine and a slow one
 * are with it, and gives the last piece that it said was done; -1 for none.
 */
function killer(seed: number): (...argv: string[]) => Promise<number> {
  const random = createRandomSource(seed);
  /** What a piece took last. [ms] */
  let pieceMs = 0;
  return async (...argv) => {
    const child = spawn(process.execPath, [program, ...argv], { stdio: ['ignore', 'pipe', 'inherit'] });
    const ended = once(child, 'close');
    onTestFinished(() => void child.kill('SIGKILL'));
    let said = '';
    child.stdout.on('data', (text) => {
      said += text;
    });
    const hasSaid = async (words: string) => {
      while (!said.includes(`${words}\n`) && child.exitCode === null)
        await Promise.race([once(child.stdout, 'data'), ended]);
      return performance.now();
    };
    const pieces = Math.floor(random.uniform() * MOST_PIECES);
    for (let piece = 0; piece < pieces; piece++) {
      const begun = await hasSaid(`begun ${piece}`);
      pieceMs = (await hasSaid(`done ${piece}`)) - begun;
    }
    await hasSaid(`begun ${pieces}`);
    await pause(random.uniform() * pieceMs);
    child.kill('SIGKILL');
    await ended;
    expect(said).toContain(`begun ${pieces}\n`);
    return Number(/done (\d+)\n(?:begun \d+\n)?$/.exec(said)?.[1] ?? -1);
  };
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
  const killed = killer(20_261_126);
  let notes = '';
  for (let round = 0; round < RESTORES; round++) {
    const last = await killed('restore', folder, ...paths);
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
});

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
  const killed = killer(20_261_127);
  let unfinished = 0;
  for (let round = 0; round < MIGRATIONS; round++) {
    const folder = tempFolder();
    mkdirSync(folder, { recursive: true });
    const last = await killed('migrate', folder, template);
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
});
