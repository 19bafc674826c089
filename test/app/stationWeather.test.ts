import { describe, expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { sayIn } from '../../src/app/say.ts';
import { stationWeather } from '../../src/app/stationWeather.ts';
import { weatherCautions } from '../../src/app/weatherCautions.ts';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import { dayNumberOf, isoDateOf } from '../../src/calendar.ts';
import { ABSENT, RAIN_GAUGE, RAIN_NEIGHBOUR } from '../../src/schema/codes.ts';
import { type QuestionInput, questionSchema } from '../../src/schema/question.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { stationExtent } from '../../src/source/stationExtent.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { refusalOf } from '../refusal.ts';
import { describeWithRecords } from '../sharedWeather.ts';

const FIRST_DAY = dayNumberOf(1995, 1, 1);
const DAYS = dayNumberOf(2020, 1, 1) - FIRST_DAY;
const dry = (from: number, days: number) => (day: number) => day >= from && day < from + days;

/** Twenty-five years: rain on every fourth day, temperatures where wanted, no rain values on some days. */
function recordAt(
  id: string,
  latitudeDeg: number,
  {
    temperatures = true,
    missing = (_: number): boolean => false,
    elevationM = 1000 as number | null,
    longitudeDeg = -110 as number | null,
    rainTenths = 80,
  } = {},
): StationRecord {
  const each = <T>(of: (day: number) => T) => Array.from({ length: DAYS }, (_, day) => of(day));
  const record = smallRecord(
    {
      rain: each((day) => (missing(day) ? null : day % 4 === 0 ? rainTenths : 0)),
      ...(temperatures ? { maxTemp: each((day) => 150 + (day % 7)), minTemp: each(() => 50) } : {}),
    },
    { firstDay: FIRST_DAY },
  );
  return { ...record, station: { ...record.station, id, name: id, latitudeDeg, longitudeDeg, elevationM } };
}

/** A reader over records in memory. */
function readerOf(...records: StationRecord[]): WeatherReader {
  return {
    stations: async () => records.map(stationExtent),
    async record(id) {
      const found = records.find(({ station }) => station.id === id);
      if (!found) throw new Error(`no record ${id}`);
      return found;
    },
  };
}

const question = (over: Partial<QuestionInput> = {}) =>
  questionSchema.parse({
    station: 'OWN',
    appliedOn: '2015-08-10',
    residual: 'any',
    crop: 'any',
    plantOn: '2016-05-10',
    ...over,
  });
const codesOf = (asked: ReturnType<typeof question>, weather: Awaited<ReturnType<typeof stationWeather>>) =>
  weatherCautions(asked, weather, null, sayIn()).map(({ code }) => code);

describe('a station without temperatures', () => {
  const own = recordAt('OWN', 45, { temperatures: false });
  const high = recordAt('HIGH', 45.3, { elevationM: 1600 });
  const low = recordAt('LOW', 45.6);

  it('borrows those of the nearest fit station, with the height made up for, and says so', async () => {
    const weather = await stationWeather(readerOf(own, low, high), question());
    expect(weather.help.temperatureStation).toMatchObject({
      id: 'HIGH',
      elevationDifferenceM: 600,
      addedC: 3.9,
    });
    expect(weather.help.temperatureStation?.distanceKm).toBeCloseTo(33.4, 1);
    expect(weather.climate.series.maxTempC[0]).toBeCloseTo(15 + 3.9, 9);
    expect(weather.climate.series.station.id).toBe('OWN');
    const [caution] = weatherCautions(question(), weather, null, sayIn());
    expect(caution).toEqual({
      code: 'temperatures-borrowed',
      text: 'OWN has no temperatures of its own. Those of HIGH (HIGH) (21 miles away) are used, with 7.0 °F added for 1969 ft of height.',
    });
  });

  it('takes the station that the user names', async () => {
    const weather = await stationWeather(readerOf(own, low, high), question({ temperatureStation: 'LOW' }));
    expect(weather.help.temperatureStation).toMatchObject({ id: 'LOW', addedC: 0 });
  });

  it('is refused where none is near, or where it is not known where it lies', async () => {
    const far = await refusalOf(stationWeather(readerOf(own, recordAt('FAR', 47)), question()));
    expect(far.code).toBe('TEMPERATURES_MISSING');
    expect(far.message).toContain('no station within 100 km');
    const lost = recordAt('OWN', 45, { temperatures: false, longitudeDeg: null });
    expect((await refusalOf(stationWeather(readerOf(lost, high), question()))).message).toContain('position');
  });

  it('is the only one that borrows', async () => {
    const weather = await stationWeather(
      readerOf(recordAt('OWN', 45), high),
      question({ temperatureStation: 'HIGH' }),
    );
    expect(weather.help.temperatureStation).toBeNull();
    expect(codesOf(question({ temperatureStation: 'HIGH' }), weather)).toEqual(['temperatures-own']);
  });
});

describe('rain gaps', () => {
  const own = recordAt('OWN', 45, { missing: dry(400, 30) });
  const near = recordAt('NEAR', 45.2, { rainTenths: 40 });

  it('are filled from neighbours only where that is asked for, and stay missing days', async () => {
    const plain = await stationWeather(readerOf(own, near), question());
    const filled = await stationWeather(readerOf(own, near), question({ fillFromNeighbours: true }));
    expect(plain.help).toMatchObject({ rainNeighbours: [], neighbourRainDays: 0 });
    expect(filled.help).toMatchObject({ rainNeighbours: [{ id: 'NEAR', days: 30 }], neighbourRainDays: 30 });
    const { rainMm, rainOrigin } = filled.climate.series;
    expect(rainOrigin[400]).toBe(RAIN_NEIGHBOUR);
    expect(rainMm[400]).toBeCloseTo(8, 1);
    expect(rainMm[401]).toBe(0);
    expect(filled.climate.windows.usable(390, 365)).toBe(false);
    expect(codesOf(question({ fillFromNeighbours: true }), filled)).toEqual(['rain-from-neighbours']);
  });

  it('stay where no neighbour is near enough, and that is said', async () => {
    const asked = question({ fillFromNeighbours: true });
    const weather = await stationWeather(readerOf(own, recordAt('FAR', 46)), asked);
    expect(weather.help.neighbourRainDays).toBe(0);
    expect(codesOf(asked, weather)).toEqual(['no-rain-from-neighbours']);
  });
});

describe('the own gauge', () => {
  it('wins over the station on its days; entries that cannot count are said', async () => {
    const asked = question({
      gauge: [
        { date: isoDateOf(FIRST_DAY + 4), rainMm: 1.5 },
        { date: '2015-09-01', rainMm: 0 },
        { date: '2031-01-01', rainMm: 9 },
      ],
    });
    const weather = await stationWeather(readerOf(recordAt('OWN', 45)), asked);
    expect(weather.help).toMatchObject({ gaugeDays: 2, gaugeDaysOutside: 1 });
    expect(weather.climate.series.rainMm[4]).toBe(1.5);
    expect(weather.climate.series.rainOrigin[4]).toBe(RAIN_GAUGE);
    expect(codesOf(asked, weather)).toEqual(['gauge-outside', 'gauge-planning']);
    expect(codesOf({ ...asked, asOf: '2015-10-01' }, weather)).toEqual(['gauge-outside']);
  });
});

describe('the cache of climates', () => {
  it('keeps one for each gauge, height and way of filling, and loads none twice', async () => {
    const reader = readerOf(recordAt('OWN', 45));
    let loads = 0;
    const cache = createClimateCache({
      ...reader,
      record: (id) => {
        loads++;
        return reader.record(id);
      },
    });
    const asked = [
      {},
      { gauge: [{ date: '2015-09-01', rainMm: 1 }] },
      { gauge: [{ date: '2015-09-01', rainMm: 2 }] },
      { elevationM: 500 },
      { fillFromNeighbours: true },
      { irrigation: [{ date: '2015-09-01', mm: 20 }] }, // of the season, not of the climate
    ].map((over) => question(over));
    const found = await Promise.all([...asked, ...asked].map((one) => cache.of(one)));
    expect(new Set(found).size).toBe(5);
    expect(loads).toBe(5);
    expect(found[1].climate.series.rainMm).not.toEqual(found[2].climate.series.rainMm);
  });
});

describeWithRecords('two gauges of one research farm', (folder) => {
  const files = ['CA006105976.dly.gz', 'CA006105978.dly.gz', 'ghcnd-stations.txt.gz'];
  const reader = createFileReader(files.map((name) => `${folder}/ghcnd/${name}`));
  const asked = (over: Partial<QuestionInput> = {}) => question({ station: 'CA006105978', ...over });

  it('fill each other’s gaps, marked, without being counted as observed', async () => {
    const plain = await stationWeather(reader, asked());
    const filled = await stationWeather(reader, asked({ fillFromNeighbours: true }));
    expect(filled.help.rainNeighbours.map(({ id }) => id)).toEqual(['CA006105976']);
    expect(filled.help.neighbourRainDays).toBeGreaterThan(100);
    const missing = ({ climate }: typeof plain) =>
      climate.series.rainOrigin.filter((origin) => origin === 2 || origin === RAIN_NEIGHBOUR).length;
    expect(missing(filled)).toBe(missing(plain));
  });

  it('lend each other temperatures', async () => {
    const without: WeatherReader = {
      stations: () => reader.stations(),
      async record(id) {
        const record = await reader.record(id);
        if (id !== 'CA006105978') return record;
        const none = new Int32Array(record.rainTenthsMm.length).fill(ABSENT);
        return { ...record, maxTempTenthsC: none, minTempTenthsC: none };
      },
    };
    const { help, climate } = await stationWeather(without, asked());
    expect(help.temperatureStation).toMatchObject({ id: 'CA006105976' });
    const lender = await reader.record('CA006105976');
    const day = dayNumberOf(2012, 7, 1);
    expect(climate.series.maxTempC[day - climate.series.firstDay]).toBeCloseTo(
      lender.maxTempTenthsC[day - lender.firstDay] / 10 + (help.temperatureStation?.addedC ?? 0),
      9,
    );
  });
});
