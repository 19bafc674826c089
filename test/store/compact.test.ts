import { expect, it, onTestFinished } from 'vitest';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { daysOfYear, writeYears, YEAR_STATIONS } from './yearFiles.ts';

const YEARS = [2001, 2002, 2003];

async function storeOfYears() {
  const folder = tempFolder();
  const files = writeYears(folder, YEARS);
  const store = await openWeatherStore(folder, { mode: 'write' });
  onTestFinished(() => store.close());
  for (const file of files) expect((await store.importFile(file)).outcome).toBe('imported');
  return store;
}

it('a compaction changes no record and settles what by-year files had scattered', async () => {
  const store = await storeOfYears();
  expect(await store.scatteredFiles()).toBe(2);
  const before = await Promise.all(YEAR_STATIONS.map((id) => store.record(id)));
  expect(before[0].rainTenthsMm.length).toBeGreaterThan(900);
  const rows = YEAR_STATIONS.length * YEARS.reduce((days, year) => days + daysOfYear(year), 0);
  expect(await store.compact()).toEqual({ rows, scatteredFiles: 2 });
  expect(await store.scatteredFiles()).toBe(0);
  expect(await Promise.all(YEAR_STATIONS.map((id) => store.record(id)))).toEqual(before);
  expect(await store.compact()).toEqual({ rows, scatteredFiles: 0 });
});

it('a compaction that is stopped leaves the store as it was', async () => {
  const store = await storeOfYears();
  const before = await store.record(YEAR_STATIONS[0]);
  const { code } = await refusalOf(store.compact({ signal: AbortSignal.abort() }));
  expect(code).toBe('IMPORT_STOPPED');
  expect(await store.scatteredFiles()).toBe(2);
  expect(await store.record(YEAR_STATIONS[0])).toEqual(before);
});
