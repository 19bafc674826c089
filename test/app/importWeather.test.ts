import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { importWeather } from '../../src/app/importWeather.ts';
import { SourceFailedError } from '../../src/errors.ts';
import { importSummarySchema } from '../../src/schema/importSummary.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { dlyLine } from '../fixtures/weather/lines.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';

const fixtures = fileURLToPath(new URL('../fixtures/weather/', import.meta.url));
const ID = 'TST00000001';

async function newStore() {
  const store = await openWeatherStore(tempFolder(), { mode: 'write' });
  onTestFinished(() => store.close());
  return store;
}

describe('importing a folder', () => {
  it('takes the good file whole and nothing of the damaged one, and says so file by file', async () => {
    const folder = tempFolder();
    copyFileSync(join(fixtures, `${ID}.dly`), join(folder, `${ID}.dly`));
    const good = dlyLine('TST00000002', 2001, 1, 'PRCP', { 1: 5 });
    writeFileSync(join(folder, 'bad.dly'), `${good}\n${good.slice(0, 50)}\n`);
    writeFileSync(join(folder, 'flagged.dly'), dlyLine('TST00000004', 2001, 1, 'PRCP', { 1: [5, ' X '] }));
    writeFileSync(join(folder, 'notes.csv'), 'day,remark\n');
    writeFileSync(join(folder, 'zz.csv'), 'TST00000003,20010101,PRCP,7,,,,\n');
    const store = await newStore();
    const told: string[] = [];
    const { files } = await findRecordFiles([folder]);
    const summary = await importWeather({ files }, store, {
      onProgress: ({ file, done, total }) => told.push(`${done}/${total} ${file.source} ${file.outcome}`),
    });
    expect(importSummarySchema.parse(summary)).toEqual(summary);
    expect(told).toEqual([
      `1/5 ${ID}.dly imported`,
      '2/5 bad.dly failed',
      '3/5 flagged.dly failed',
      '4/5 notes.csv passed-over',
      '5/5 zz.csv imported',
    ]);
    expect(summary).toMatchObject({ imported: 2, failed: 2, passedOver: 1 });
    expect(summary.files[0].stations).toEqual([
      {
        stationId: ID,
        firstDate: '1987-02-25',
        lastDate: '1987-03-04',
        values: 20,
        dropped: 4,
        duplicated: 0,
        inserted: 16,
        notes: [],
        replaced: 0,
      },
    ]);
    expect(summary.files[1].problem).toMatchObject({
      code: 'FILE_DAMAGED',
      message:
        'bad.dly, line 2, column 51: the line ends after 50 characters; a line of this layout has 269.',
    });
    expect(summary.files[2].problem?.message).toBe(
      'flagged.dly holds no accepted rain or temperature value.',
    );
    expect((await store.stations()).map(({ id }) => id)).toEqual([ID, 'TST00000003']);
    expect(await store.record(ID)).toEqual(await createFileReader([join(folder, `${ID}.dly`)]).record(ID));
    expect((await refusalOf(store.record('TST00000002'))).code).toBe('STATION_UNKNOWN');
  });

  it('reports an unknown layout as failed where the file itself was named', async () => {
    const path = join(tempFolder(), 'notes.csv');
    writeFileSync(path, 'day,remark\n');
    const { files } = await findRecordFiles([path]);
    const summary = await importWeather({ files }, await newStore());
    expect(summary).toMatchObject({ imported: 0, failed: 1 });
    expect(summary.files[0].problem?.code).toBe('FILE_LAYOUT_UNKNOWN');
  });
});

describe('importing records', () => {
  it('goes on after one that the store refuses', async () => {
    const store = await newStore();
    const place = smallRecord({}).station;
    const records = [
      smallRecord({ rain: [1] }),
      smallRecord({ rain: [2] }, { station: { ...place, invented: true }, source: 'invented' }),
      smallRecord({ rain: [3] }, { station: { ...place, id: 'TST00000002' }, source: 'b' }),
    ];
    const summary = await importWeather({ records }, store);
    expect(summary.files.map(({ source, outcome, problem }) => [source, outcome, problem?.code])).toEqual([
      ['small.dly', 'imported', undefined],
      ['invented', 'failed', 'STATION_INVENTED'],
      ['b', 'imported', undefined],
    ]);
    expect(await store.record(ID)).toEqual(records[0]);
  });
});

it('names the line at which the store gave up where the file is too large for the record readers', async () => {
  const path = join(tempFolder(), 'huge.csv');
  writeFileSync(path, 'TST00000001,20000101,PRCP,5,,,7,\nTST00000001,2000\n');
  const store = await openWeatherStore(tempFolder(), { mode: 'write', files: [path] });
  onTestFinished(() => store.close());
  const [file] = (await findRecordFiles([path])).files;
  const tooLarge = async () => {
    throw new SourceFailedError('FILE_TOO_LARGE', 'huge.csv holds more than 2 bytes unpacked.');
  };
  const { files } = await importWeather({ files: [{ ...file, records: tooLarge }] }, store);
  expect(files[0].problem).toMatchObject({
    code: 'FILE_DAMAGED',
    message: 'huge.csv, line 2: the line breaks the layout of its file.',
  });
});
