import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { createBriefReader } from '../../src/store/briefReader.ts';
import { openWeatherStore, WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { runDrywake } from '../cli/runDrywake.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { holdInOtherProcess } from './holdWeather.ts';
import { importInOtherProcess } from './importInOtherProcess.ts';
import { writeYears, YEAR_STATIONS } from './yearFiles.ts';

const YEARS = [2001, 2002, 2003, 2004];
/** Longer than the other process holds the store, on a busy machine too. [ms] */
const WAIT_MS = 60_000;

async function storeOfYears(years: readonly number[]): Promise<string> {
  const folder = tempFolder();
  const files = writeYears(folder, years);
  const store = await openWeatherStore(folder, { mode: 'write' });
  for (const file of files) await store.importFile(file);
  await store.close();
  return folder;
}

describe('a server that reads briefly, and an import by another process', () => {
  it('both come to their end, and no read sees part of a file', async () => {
    const folder = await storeOfYears([2000]);
    const server = createBriefReader(folder, WAIT_MS);
    const other = await importInOtherProcess(folder, writeYears(tempFolder(), YEARS));
    let running = true;
    const ended = other.ended().finally(() => {
      running = false;
    });
    const lengths = new Set<string>();
    do {
      const stations = await server.stations();
      lengths.add(stations.map(({ rainDays }) => rainDays).join());
      await pause(30);
    } while (running);
    expect(await ended).toBe(0);
    lengths.add((await server.stations()).map(({ rainDays }) => rainDays).join());
    const whole = YEARS.map((_, index) => 182 + 181 * (index + 1) + (index === 3 ? 1 : 0));
    const possible = [182, ...whole].map((days) => YEAR_STATIONS.map(() => days).join());
    expect([...lengths].filter((length) => !possible.includes(length))).toEqual([]);
    expect(lengths).toContain(possible[possible.length - 1]);
  });

  it('the reader waits its time for a long import, then says what to do; what it knows stays valid meanwhile', async () => {
    const folder = await storeOfYears([2000]);
    const server = createBriefReader(folder, 400);
    expect(await server.changed()).toBe(true);
    expect(await server.changed()).toBe(false);
    const holder = await holdInOtherProcess(
      join(folder, WEATHER_FILE),
      'CREATE TABLE other (x INTEGER)',
      'CHECKPOINT',
    );
    expect(await server.changed()).toBe(false);
    const start = performance.now();
    const { code, message, hint } = await refusalOf(server.record(YEAR_STATIONS[0]));
    expect(performance.now() - start).toBeGreaterThan(100);
    expect(code).toBe('STORE_BUSY');
    expect(message).toContain(`is held by another process (number ${holder.pid})`);
    expect(hint).toMatch(/^An import probably runs there: wait until it has ended, then try again\./);
    const waiting = createBriefReader(folder, WAIT_MS).record(YEAR_STATIONS[0]);
    await holder.kill();
    expect((await waiting).rainTenthsMm.length).toBe(182);
    expect(await server.changed()).toBe(true);
  });
});

it('a second import says in two lines that the first one holds the store', async () => {
  const folder = await storeOfYears([2000]);
  const holder = await holdInOtherProcess(join(folder, WEATHER_FILE));
  const [file] = writeYears(tempFolder(), [2001]);
  const { code, out, err } = await runDrywake(['weather', 'import', file], folder);
  expect(code).toBe(1);
  expect(out).toBe('');
  const lines = err.trimEnd().split('\n');
  expect(lines).toHaveLength(2);
  expect(lines[0]).toMatch(
    new RegExp(`^The store .* is held by another process \\(number ${holder.pid}\\)\\.$`),
  );
});
