import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { expect, it } from 'vitest';
import type { StationRecord } from '../../src/schema/weather.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFolder } from '../tempFolder.ts';

describeWithRecords('real records through the store', (shared) => {
  it('come back as they were read from their files', async () => {
    const files = createFileReader([join(shared, 'derived'), join(shared, 'ghcnd')]);
    const extents = await files.stations();
    const records: StationRecord[] = [];
    for (const { id } of extents) records.push(await files.record(id));
    expect(records.length).toBeGreaterThanOrEqual(8);

    const folder = tempFolder();
    const writing = await openWeatherStore(folder, { mode: 'write' });
    await writing.importRecords(records);
    await writing.close();

    const reading = await openWeatherStore(folder, { mode: 'read' });
    expect(await reading.stations()).toEqual(extents);
    for (const record of records) {
      const stored = await reading.record(record.station.id);
      expect([record.station.id, isDeepStrictEqual(stored, record)]).toEqual([record.station.id, true]);
    }
    await reading.close();
  });
});
