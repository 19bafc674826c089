import { setTimeout as pause } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { expect, it } from 'vitest';
import { dayNumberOf } from '../../src/calendar.ts';
import { createRandomSource } from '../../src/demo/randomSource.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { tempFolder } from '../tempFolder.ts';
import { importInOtherProcess } from './importInOtherProcess.ts';
import { daysOfYear, writeYears } from './yearFiles.ts';

const YEARS = Array.from({ length: 60 }, (_, index) => 1961 + index);
const STATIONS = Array.from({ length: 15 }, (_, index) => `TST000000${10 + index}`);
const KILLS = 10;
/** A kill comes after so many new files at most, within the time that the next one takes. */
const MOST_FILES = 3;

async function allRecords(folder: string): Promise<StationRecord[]> {
  const store = await openWeatherStore(folder, { mode: 'read' });
  const records: StationRecord[] = [];
  for (const { id } of await store.stations()) records.push(await store.record(id));
  await store.close();
  return records;
}

/** Days with all three values that the records hold of a year, station by station. */
function daysHeld(records: readonly StationRecord[], year: number): number[] {
  const days = daysOfYear(year);
  return records.map(({ firstDay, rainTenthsMm, maxTempTenthsC, minTempTenthsC }) => {
    const from = dayNumberOf(year, 1, 1) - firstDay;
    return Array.from({ length: days }, (_, day) => from + day).filter((day) =>
      [rainTenthsMm, maxTempTenthsC, minTempTenthsC].every((column) => (column[day] ?? ABSENT) !== ABSENT),
    ).length;
  });
}

it('an import killed ten times holds every finished file whole, no other in part, and goes on to its end', async () => {
  const folder = tempFolder();
  const files = writeYears(tempFolder(), YEARS, STATIONS);
  const random = createRandomSource(20_261_125);
  let cutShort = 0;
  let finished = 0;
  let fileMs = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    const other = await importInOtherProcess(folder, files);
    // A quick machine and a slow one are as far when the kill comes.
    const newFiles = Math.floor(random.uniform() * (MOST_FILES + 1));
    await other.said(finished);
    const begun = performance.now();
    await other.said(finished + newFiles);
    if (newFiles > 0) fileMs = (performance.now() - begun) / newFiles;
    await pause(random.uniform() * fileMs);
    await other.kill();
    const outcomes = other.outcomes();
    expect(outcomes.slice(0, finished)).toEqual(
      YEARS.slice(0, finished)
        .map((year) => `${year}.csv unchanged`)
        .slice(0, outcomes.length),
    );
    const records = await allRecords(folder);
    const held = YEARS.filter((year) => {
      const days = new Set(daysHeld(records, year));
      expect(
        [...days].filter((count) => count !== 0 && count !== daysOfYear(year)),
        `${year}`,
      ).toEqual([]);
      expect(days.size, `${year}: some stations only`).toBeLessThanOrEqual(1);
      return days.has(daysOfYear(year));
    });
    // Every file that was said to be in is in; one more may have been finished and not yet said.
    expect(held).toEqual(YEARS.slice(0, held.length));
    expect(held.length).toBeGreaterThanOrEqual(Math.max(outcomes.length, finished));
    expect(held.length).toBeLessThanOrEqual(Math.max(outcomes.length, finished) + 1);
    finished = held.length;
    if (finished < YEARS.length) cutShort++;
  }
  expect(cutShort).toBeGreaterThanOrEqual(KILLS - 3);
  const last = await importInOtherProcess(folder, files);
  expect(await last.ended()).toBe(0);
  expect(last.outcomes()).toEqual(
    YEARS.map((year, index) => `${year}.csv ${index < finished ? 'unchanged' : 'imported'}`),
  );

  const unkilled = tempFolder();
  const store = await openWeatherStore(unkilled, { mode: 'write', files });
  for (const file of files) await store.importFile(file);
  await store.close();
  expect(isDeepStrictEqual(await allRecords(folder), await allRecords(unkilled))).toBe(true);
});
