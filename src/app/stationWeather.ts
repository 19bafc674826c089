import { type StationClimate, stationClimate } from '../analysis/stationClimate.ts';
import { parseIsoDate } from '../calendar.ts';
import { MissingDataError } from '../errors.ts';
import type { NeighbourRain } from '../model/weather/neighbourRain.ts';
import { prepareSeries } from '../model/weather/prepareSeries.ts';
import { valuesFromTenths } from '../model/weather/rainOfRecord.ts';
import { ABSENT, RAIN_GAUGE, RAIN_NEIGHBOUR } from '../schema/codes.ts';
import type { Question } from '../schema/question.ts';
import type { Station, StationRecord } from '../schema/weather.ts';
import type { WeatherHelp } from '../schema/weatherHelp.ts';
import { companionStation, rainNeighbours } from './companionStation.ts';
import { type LentRecord, lentTemperatures } from './lentTemperatures.ts';
import type { WeatherReader } from './weatherReader.ts';

/** A station's record with its climate, and what other stations and the grower's gauge added. */
export interface StationWeather {
  readonly record: StationRecord;
  readonly climate: StationClimate;
  readonly help: WeatherHelp;
}

/**
 * Works out the weather behind a question: the station's record, temperatures of a companion where it has none,
 * rain gaps filled from neighbours where asked for, the own gauge over it.
 *
 * @throws {MissingDataError} STATION_UNKNOWN, LATITUDE_MISSING, TEMPERATURES_MISSING, RECORD_EMPTY
 */
export async function stationWeather(weather: WeatherReader, question: Question): Promise<StationWeather> {
  const own = await weather.record(question.station);
  const latitudeDeg = question.latitudeDeg ?? own.station.latitudeDeg;
  if (latitudeDeg === null) {
    throw new MissingDataError(
      'LATITUDE_MISSING',
      `The record of ${question.station} does not say where it lies, and no latitude was given.`,
      {
        hint: 'Give the latitude in degrees (--lat 45.66), or import the station list with the record.',
        details: { field: 'latitudeDeg' },
      },
    );
  }
  const elevationM = question.elevationM ?? own.station.elevationM;
  const placed = { ...own, station: { ...own.station, latitudeDeg, elevationM } };
  const { record, temperatureStation } = await withTemperatures(placed, weather, question);
  const neighbours = question.fillFromNeighbours ? await neighboursOf(record, weather) : [];
  const gauge = question.gauge.map(({ date, rainMm }) => ({ day: parseIsoDate(date), mm: rainMm }));
  const series = prepareSeries(record, { neighbours: neighbours.map(({ rain }) => rain), gauge });
  const gaugeDays = countOf(series.rainOrigin, RAIN_GAUGE);
  return {
    record,
    climate: stationClimate(series, latitudeDeg, question.assume),
    help: {
      temperatureStation,
      rainNeighbours: neighbours
        .map(({ lender }, index) => ({ ...lender, days: series.neighbourDays[index] }))
        .filter(({ days }) => days > 0),
      neighbourRainDays: countOf(series.rainOrigin, RAIN_NEIGHBOUR),
      gaugeDays,
      gaugeDaysOutside: new Set(gauge.map(({ day }) => day)).size - gaugeDays,
    },
  };
}

const countOf = (codes: Uint8Array, wanted: number): number => codes.filter((code) => code === wanted).length;

const lenderOf = ({ id, name }: Station, distanceKm: number | null) => ({ id, name, distanceKm });

/** The record as it is where it has temperatures of its own, else with those of a companion station. */
async function withTemperatures(
  record: StationRecord,
  weather: WeatherReader,
  { temperatureStation }: Question,
): Promise<LentRecord> {
  if (hasTemperatures(record)) return { record, temperatureStation: null };
  const span = { firstDay: record.firstDay, lastDay: record.firstDay + record.rainTenthsMm.length - 1 };
  const id =
    temperatureStation ??
    companionStation(record.station, span, await weather.stations())?.station.id ??
    noCompanion(record.station);
  return lentTemperatures(record, await weather.record(id));
}

/** Whether any day has both temperatures; a record with a few of them is judged like any other. */
const hasTemperatures = ({ maxTempTenthsC, minTempTenthsC }: StationRecord): boolean =>
  maxTempTenthsC.some((value, day) => value !== ABSENT && minTempTenthsC[day] !== ABSENT);

function noCompanion(station: Station): never {
  throw new MissingDataError(
    'TEMPERATURES_MISSING',
    station.longitudeDeg === null
      ? `The record of ${station.id} holds no daily temperatures, and its position is not known, so no station near it can be found to borrow them from.`
      : `The record of ${station.id} holds no daily temperatures, and no station within 100 km has twenty years of them beside its rain.`,
    {
      hint: 'Name a station to borrow temperatures from (--temperatures-from), import one near it with the station list, or choose a station that measures both.',
      details: { field: 'temperatureStation', station: station.id },
    },
  );
}

async function neighboursOf(
  record: StationRecord,
  weather: WeatherReader,
): Promise<{ rain: NeighbourRain; lender: ReturnType<typeof lenderOf> }[]> {
  const span = { firstDay: record.firstDay, lastDay: record.firstDay + record.rainTenthsMm.length - 1 };
  const near = rainNeighbours(record.station, span, await weather.stations());
  const found = [];
  for (const { station, distanceKm } of near) {
    const { firstDay, rainTenthsMm } = await weather.record(station.id);
    const rain = { stationId: station.id, firstDay, rainMm: valuesFromTenths(rainTenthsMm) };
    found.push({ rain, lender: lenderOf(station, distanceKm) });
  }
  return found;
}
