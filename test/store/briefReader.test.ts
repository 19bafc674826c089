import { describe, expect, it, vi } from 'vitest';
import { createBriefReader } from '../../src/store/briefReader.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { writeYears, YEAR_STATIONS } from './yearFiles.ts';

vi.mock(import('../../src/store/weatherStore.ts'), async (original) => {
  const real = await original();
  return { ...real, openWeatherStore: vi.fn(real.openWeatherStore) };
});

async function storeOfOneYear(): Promise<string> {
  const folder = tempFolder();
  const files = writeYears(tempFolder(), [2000]);
  const store = await openWeatherStore(folder, { mode: 'write', files });
  for (const file of files) await store.importFile(file);
  await store.close();
  return folder;
}

describe('reads that are asked for together', () => {
  it('each come to their own end, in order, and leave the file to nobody', async () => {
    const folder = await storeOfOneYear();
    const reader = createBriefReader(folder);
    const ended: string[] = [];
    const noted = <T>(name: string, read: Promise<T>): Promise<T> => read.finally(() => ended.push(name));
    const stations = noted('stations', reader.stations());
    const unknown = refusalOf(noted('unknown', reader.record('NOWHERE')));
    const several = noted('several', reader.records(YEAR_STATIONS));
    const one = noted('one', reader.record(YEAR_STATIONS[0]));
    expect((await unknown).code).toBe('STATION_UNKNOWN');
    expect((await stations).map(({ id }) => id)).toEqual([...YEAR_STATIONS].sort());
    expect((await several).map(({ station }) => station.id)).toEqual(YEAR_STATIONS);
    expect((await one).station.id).toBe(YEAR_STATIONS[0]);
    expect(ended).toEqual(['stations', 'unknown', 'several', 'one']);
    const writer = await openWeatherStore(folder, { mode: 'write' });
    await writer.close();
  });

  it('share an opening, where those that come one after the other have one each', async () => {
    const folder = await storeOfOneYear();
    const reader = createBriefReader(folder);
    const reads = Array.from({ length: 12 }, () => YEAR_STATIONS[0]);
    vi.mocked(openWeatherStore).mockClear();
    for (const id of reads) await reader.record(id);
    expect(openWeatherStore).toHaveBeenCalledTimes(reads.length);
    vi.mocked(openWeatherStore).mockClear();
    await Promise.all(reads.map((id) => reader.record(id)));
    expect(vi.mocked(openWeatherStore).mock.calls.length).toBeLessThan(reads.length);
  });
});
