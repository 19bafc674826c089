import { appendFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { importWeather } from '../../src/app/importWeather.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { writeYears, YEAR_STATIONS } from '../store/yearFiles.ts';
import { tempFolder } from '../tempFolder.ts';

async function inputAndStore(paths: readonly string[]) {
  const store = await openWeatherStore(tempFolder(), { mode: 'write', files: paths });
  onTestFinished(() => store.close());
  return { input: await findRecordFiles(paths), store };
}

describe('an import that is told to stop', () => {
  it('after a file keeps that file and takes nothing of the next', async () => {
    const { input, store } = await inputAndStore(writeYears(tempFolder(), [2001, 2002, 2003]));
    const stop = new AbortController();
    const summary = await importWeather(input, store, {
      signal: stop.signal,
      onProgress: () => stop.abort(),
    });
    expect(summary).toMatchObject({ stopped: true, imported: 1, failed: 0 });
    expect((await store.stations()).map(({ rainDays }) => rainDays)).toEqual(YEAR_STATIONS.map(() => 181));
  });

  it('inside a file undoes that file, and the same import goes on from there', async () => {
    const folder = tempFolder();
    const paths = writeYears(folder, [2001]);
    // A file large enough that a stop falls into it.
    const stations = Array.from({ length: 700 }, (_, index) => `TST10${100_000 + index}`);
    paths.push(...writeYears(folder, [2002], stations));
    const { input, store } = await inputAndStore(paths);
    const stop = new AbortController();
    const onProgress = () => void setTimeout(() => stop.abort(), 60);
    const summary = await importWeather(input, store, { signal: stop.signal, onProgress });
    expect(summary).toMatchObject({ stopped: true, imported: 1 });
    expect((await store.stations()).length).toBe(YEAR_STATIONS.length);
    const rest = await importWeather(input, store, { passOverUnchanged: true });
    expect(rest).toMatchObject({ stopped: false, imported: 1, unchanged: 1, failed: 0 });
    expect((await store.stations()).length).toBe(YEAR_STATIONS.length + stations.length);
  });
});

describe('files imported before', () => {
  it('are passed over only where that is asked, and not once they have changed', async () => {
    const [path] = writeYears(tempFolder(), [2001]);
    const { input, store } = await inputAndStore([path]);
    const outcome = async (passOverUnchanged: boolean) =>
      (await importWeather(input, store, { passOverUnchanged })).files[0].outcome;
    expect(await outcome(true)).toBe('imported');
    expect(await outcome(true)).toBe('unchanged');
    expect(await outcome(false)).toBe('imported');
    appendFileSync(path, `${YEAR_STATIONS[0]},20010701,PRCP,5,,,7,\n`);
    expect(await outcome(true)).toBe('imported');
    expect((await store.stations())[0].rainDays).toBe(182);
  });

  it('are passed over too where the record readers took them', async () => {
    const folder = tempFolder();
    const path = join(folder, 'blank.csv');
    writeFileSync(path, 'TST00000001,20000101,PRCP,5, , ,7,\n');
    const { input, store } = await inputAndStore([path]);
    expect((await importWeather(input, store, { passOverUnchanged: true })).imported).toBe(1);
    expect((await importWeather(input, store, { passOverUnchanged: true })).unchanged).toBe(1);
  });
});

it('tells the progress of a file that takes a while', async () => {
  const stations = Array.from({ length: 1500 }, (_, index) => `TST10${100_000 + index}`);
  const { input, store } = await inputAndStore(writeYears(tempFolder(), [2002], stations));
  const told: number[] = [];
  await importWeather(input, store, { onPart: ({ fractionDone }) => told.push(fractionDone) });
  expect(told.length).toBeGreaterThan(0);
  expect(told.every((share) => share > 0 && share <= 1)).toBe(true);
});
