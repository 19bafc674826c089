import { expect, it, onTestFinished } from 'vitest';
import { ABSENT } from '../../src/schema/codes.ts';
import { openWeatherStore, type WeatherStore } from '../../src/store/weatherStore.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';

const ID = 'TST00000001';

async function newStore(...files: string[]): Promise<WeatherStore> {
  const store = await openWeatherStore(tempFolder(), { mode: 'write', files });
  onTestFinished(() => store.close());
  return store;
}

const line = (day: string, value: string, time: string, quality = '') =>
  `${ID},${day},PRCP,${value},,${quality},7,${time}\n`;

const timesOf = async (store: WeatherStore) => [...((await store.record(ID)).rainTimeHhmm ?? [])];

it('hours of reading come in over values that are the same already, and none is lost to a file without them', async () => {
  const path = tempFile('hours.csv', line('19970519', '12', '0700') + line('19970520', '0', '1700'));
  const store = await newStore(path);
  await store.importRecord(smallRecord({ rain: [12, 0] }));
  expect((await store.record(ID)).rainTimeHhmm).toBeUndefined();
  const { outcome } = await store.importFile(path);
  expect(outcome).toBe('imported');
  expect(await timesOf(store)).toEqual([700, 1700]);
  expect(await store.importRecord(smallRecord({ rain: [12, 5] }, { source: 'later.dly' }))).toMatchObject({
    inserted: 0,
    replaced: 1,
  });
  expect(await timesOf(store)).toEqual([700, 1700]);
  await store.compact();
  expect(await timesOf(store)).toEqual([700, 1700]);
});

it('an hour goes with an accepted rain value alone, and the latest of a day counts', async () => {
  const path = tempFile(
    'odd.csv',
    line('19970519', '1', '0700') +
      line('19970519', '2', '0600') +
      line('19970520', '3', '0800', 'X') +
      line('19970521', '4', '9999') +
      line('19970522', '5', '0900'),
  );
  const store = await newStore(path);
  await store.importFile(path);
  expect(await timesOf(store)).toEqual([700, ABSENT, ABSENT, 900]);
});

it('a position that another source gives otherwise is kept beside the new one', async () => {
  const store = await newStore();
  const first = smallRecord({ rain: [1] });
  await store.importRecord(first);
  await store.importRecord(smallRecord({ rain: [2] }, { firstDay: 10_001, source: 'same.dly' }));
  expect((await store.record(ID)).formerPlaces).toBeUndefined();
  const moved = smallRecord({ rain: [3] }, { firstDay: 10_002, source: 'moved.csv' });
  await store.importRecord({ ...moved, station: { ...moved.station, elevationM: 1335 } });
  const { latitudeDeg, longitudeDeg, elevationM } = first.station;
  const { station, formerPlaces } = await store.record(ID);
  expect(station.elevationM).toBe(1335);
  expect(formerPlaces).toEqual([{ latitudeDeg, longitudeDeg, elevationM, replacedBy: 'moved.csv' }]);
});
