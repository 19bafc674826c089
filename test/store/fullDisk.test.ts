import { execFile } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from 'vitest';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { bundled } from '../bundled.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { tempFolder } from '../tempFolder.ts';
import { tickingClock } from './openFields.ts';
import { writeYears } from './yearFiles.ts';

const run = promisify(execFile);
let program = '';
beforeAll(async () => {
  program = await bundled('test/store/fullDiskChild.ts');
});

/** Runs the program where no file may grow beyond some size, which it meets as it meets a full disk: a write fails. */
async function withLittleRoom(kilobytes: number, ...argv: string[]) {
  const limited = `ulimit -f ${kilobytes}; exec "$0" "$@"`;
  const { stdout } = await run('bash', ['-c', limited, process.execPath, program, ...argv]);
  return JSON.parse(stdout);
}

/** Runs the program as one who may read the folder and not write it. */
async function withoutRights(...argv: string[]) {
  const isRoot = process.getuid?.() === 0;
  const { stdout } = await run(
    process.execPath,
    [program, ...argv],
    isRoot ? { uid: 65_534, gid: 65_534 } : {},
  );
  return JSON.parse(stdout);
}

const everything = async (folder: string) => {
  const store = await openFieldsStore(folder, { now: tickingClock() });
  const all = await store.everything();
  await store.close();
  return all;
};

async function folderWithField(): Promise<string> {
  const folder = tempFolder();
  const store = await openFieldsStore(folder, { now: tickingClock() });
  await store.fields.put(fieldOf(), null);
  await store.close();
  return folder;
}

describe('a full disk', () => {
  // The second leaves room for the log of changes, but not for taking it into the file, at which the database gives up.
  it.each([1500, 4500])(
    'at %i kB: a change is refused in words, all before it is kept, and the program goes on',
    async (kilobytes) => {
      const folder = await folderWithField();
      const { told, version, kept, note } = await withLittleRoom(kilobytes, 'write', folder);
      expect(told.code).toBe('STORE_WRITE_FAILED');
      expect(told.message).toMatch(/could not be written; it is as it was before\.$/);
      expect(told.hint).toContain('free space');
      expect([kept, note]).toEqual([version, `note ${version}`]);
      const { fields } = await everything(folder);
      expect(fields.map((one) => one.version)).toEqual(Array.from({ length: version }, (_, at) => at + 1));
      const store = await openFieldsStore(folder, { now: tickingClock() });
      expect(await store.fields.put(fieldOf({ note: 'room again' }), version)).toMatchObject({
        version: version + 1,
      });
      await store.close();
    },
  );

  it('a restore is refused whole', async () => {
    const folder = await folderWithField();
    const before = await everything(folder);
    const versions = Array.from({ length: 600 }, (_, at) => ({
      ...{ id: `field-${at}`, version: 1, removed: false, changedAt: '2026-11-25T12:00:00.000Z' },
      document: fieldOf({ id: `field-${at}`, note: 'x'.repeat(900) }),
    }));
    const backup = join(tempFolder(), 'backup.json');
    const head = { format: 'drywake-backup', formatVersion: 1, madeAt: '2026-11-25T12:00:00.000Z' };
    writeFileSync(
      backup,
      JSON.stringify({ ...head, program: '0.1.0', fields: versions, labels: [], lastAnswers: [] }),
    );
    const { told, kept } = await withLittleRoom(400, 'restore', folder, backup);
    expect([told.code, kept]).toEqual(['STORE_WRITE_FAILED', ['home-quarter']]);
    expect(await everything(folder)).toEqual(before);
  });

  it('an import is refused file by file, and the same command brings them in when there is room', async () => {
    const folder = tempFolder();
    const stations = Array.from({ length: 120 }, (_, at) => `TST00000${100 + at}`);
    const files = writeYears(tempFolder(), [1961, 1962], stations);
    const { told, stations: held } = await withLittleRoom(100, 'import', folder, ...files);
    expect(told.map(({ code }: { code: string }) => code)).toEqual([
      'STORE_WRITE_FAILED',
      'STORE_WRITE_FAILED',
    ]);
    expect(held).toEqual([]);
    const store = await openWeatherStore(folder, { mode: 'write', files });
    for (const file of files) expect((await store.importFile(file)).outcome).toBe('imported');
    expect((await store.stations()).length).toBe(120);
    await store.close();
  });
});

describe('a folder that may not be written', () => {
  it('is refused in words, and left as it is', async () => {
    const outer = tempFolder();
    chmodSync(outer, 0o755);
    chmodSync(dirname(program), 0o755);
    const folder = join(outer, 'data');
    mkdirSync(folder);
    const store = await openFieldsStore(folder, { now: tickingClock() });
    await store.fields.put(fieldOf(), null);
    await store.close();
    const file = join(folder, readdirSync(folder)[0]);
    chmodSync(file, 0o444);
    chmodSync(folder, 0o555);
    try {
      const { told, opened } = await withoutRights('write', folder);
      expect([opened, told.code]).toEqual([false, 'STORE_UNREADABLE']);
      expect(told.hint).toContain('Check that you may read and write the data folder');
      const weather = await withoutRights('import', folder, ...writeYears(outer, [1961]));
      expect([weather.opened, weather.told.code]).toEqual([false, 'STORE_UNREADABLE']);
    } finally {
      chmodSync(folder, 0o755);
      chmodSync(file, 0o644);
    }
    expect((await everything(folder)).fields).toHaveLength(1);
  });
});
