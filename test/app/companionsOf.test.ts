import { expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { companionStation } from '../../src/app/companionStation.ts';
import { companionsOf } from '../../src/app/companionsOf.ts';
import { regionRows } from '../../src/app/region.ts';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import { isoDateOf } from '../../src/calendar.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { RegionRow } from '../../src/schema/region.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { generatedRecord } from '../bench/generatedRecord.ts';
import { catalogue } from '../catalogue/loaded.ts';
import fc from '../fastCheck.ts';

const YEARS = 22;
const base = [1, 2, 3].map((number) => generatedRecord(number, YEARS));

/** A record moved to a place and called real; without temperatures where it measures rain alone. */
function placed(
  number: number,
  latitudeDeg: number,
  longitudeDeg: number,
  rainAlone: boolean,
): StationRecord {
  const record = base[number % base.length];
  const none = () => new Int32Array(record.rainTenthsMm.length).fill(ABSENT);
  return {
    ...record,
    station: {
      ...record.station,
      id: `S${number}`,
      latitudeDeg,
      longitudeDeg,
      elevationM: 100 * number,
      invented: false,
    },
    ...(rainAlone && { maxTempTenthsC: none(), minTempTenthsC: none() }),
  };
}

function readerOf(records: readonly StationRecord[]): WeatherReader {
  return {
    stations: async () =>
      records.map(({ station, firstDay, rainTenthsMm, maxTempTenthsC, source }) => ({
        ...station,
        firstDate: isoDateOf(firstDay),
        lastDate: isoDateOf(firstDay + rainTenthsMm.length - 1),
        rainDays: rainTenthsMm.length,
        temperatureDays: maxTempTenthsC.filter((value) => value !== ABSENT).length,
        source,
      })),
    async record(id) {
      const found = records.find(({ station }) => station.id === id);
      if (!found) throw new Error(`no ${id}`);
      return found;
    },
  };
}

it('gives a region’s rain-only station the temperatures that its own answer borrows, and says whose', async () => {
  const weather = readerOf([
    placed(1, 45, -110, true),
    placed(2, 45.6, -110, false),
    placed(3, 44.7, -110, false),
    placed(4, 60, -110, true),
  ]);
  const question = {
    ...{ residual: 'imazethapyr', crop: 'lentil', interval: '9 months' },
    ...{ appliedOn: '2025-08-10', plantOn: '2026-05-10', asOf: '2025-12-15' },
  };
  const rows: RegionRow[] = [];
  for await (const event of regionRows(question, { version: '1', catalogue, weather })) {
    if (event.step === 'rows') rows.push(...event.rows);
  }
  const [bare, own, , alone] = rows;
  const climates = createClimateCache(weather);
  const whole = await answerField({ ...question, station: 'S1' }, { catalogue, climates, version: '1' });
  expect(bare.temperatureStation).toEqual(whole.weather.help.temperatureStation);
  expect(bare.temperatureStation?.id).toBe('S3');
  expect(bare.figures?.oddsNow).toBeCloseTo(whole.oddsAtPlanting ?? -1, 10);
  expect(own.temperatureStation).toBeNull();
  expect([alone.code, alone.temperatureStation]).toEqual(['TEMPERATURES_MISSING', null]);
});

it('chooses as a single question does, though it looks at near latitudes alone', async () => {
  const spot = fc.tuple(
    fc.double({ min: 40, max: 46, noNaN: true }),
    fc.double({ min: -110, max: -104, noNaN: true }),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(spot, { minLength: 2, maxLength: 30 }), async (spots) => {
      const weather = readerOf(spots.map(([lat, lon], index) => placed(index, lat, lon, index % 3 === 0)));
      const stations = await weather.stations();
      const records = await Promise.all(stations.map(({ id }) => weather.record(id)));
      const lent = await companionsOf(stations, weather).lend(records);
      lent.forEach(({ temperatureStation }, index) => {
        const { station, firstDay, rainTenthsMm } = records[index];
        const span = { firstDay, lastDay: firstDay + rainTenthsMm.length - 1 };
        const found = index % 3 === 0 ? companionStation(station, span, stations) : null;
        expect(temperatureStation?.id ?? null).toBe(found?.station.id ?? null);
      });
    }),
    { numRuns: 20 },
  );
});
