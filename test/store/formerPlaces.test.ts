import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { createFileReader } from '../../src/source/fileReader.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { tempFolder } from '../tempFolder.ts';

const HEADER = 'STATION,NAME,LATITUDE,LONGITUDE,ELEVATION,DATE,PRCP\n';
const row = (place: string, day: string) => `TST00000001,NOWHERE,${place},${day},1.5\n`;

it('positions that differ from row to row and from file to file are kept, through the store too', async () => {
  const folder = tempFolder();
  const [first, second, third] = ['45.5,-110.25,1320.0', '45.52,-110.25,1331.0', '45.52,-110.25,1340.0'];
  writeFileSync(join(folder, 'a.csv'), HEADER + row(first, '2001-01-01') + row(second, '2001-01-02'));
  writeFileSync(join(folder, 'b.csv'), HEADER + row(third, '2001-01-03') + row(third, '2001-01-04'));
  const record = await createFileReader([folder], { units: 'metric' }).record('TST00000001');
  expect(record.station).toMatchObject({ latitudeDeg: 45.52, elevationM: 1340 });
  expect(record.formerPlaces).toEqual([
    { latitudeDeg: 45.5, longitudeDeg: -110.25, elevationM: 1320, replacedBy: 'a.csv' },
    { latitudeDeg: 45.52, longitudeDeg: -110.25, elevationM: 1331, replacedBy: 'b.csv' },
  ]);
  const store = await openWeatherStore(tempFolder(), { mode: 'write' });
  onTestFinished(() => store.close());
  await store.importRecord(record);
  await store.importRecord(record);
  expect(await store.record('TST00000001')).toEqual(record);
});
