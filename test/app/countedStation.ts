import type { AnswerDeps } from '../../src/app/answerField.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import { dayNumberOf, isoDateOf } from '../../src/calendar.ts';
import { MissingDataError } from '../../src/errors.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { LabelEntry, StoredLabel } from '../../src/schema/labelEntry.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { FIRST_YEAR, LAST_YEAR, type RainRule } from '../analysis/countedYears.ts';
import { catalogue } from '../catalogue/loaded.ts';

/** One made-up station of even warmth whose rain falls by a rule. */
export function countedReader(rainOn: RainRule): WeatherReader {
  const firstDay = dayNumberOf(FIRST_YEAR, 1, 1);
  const days = dayNumberOf(LAST_YEAR + 1, 1, 1) - firstDay;
  const filled = (value: number) => new Int32Array(days).fill(value);
  const record: StationRecord = {
    station: {
      id: 'counted',
      name: 'Counted (invented)',
      latitudeDeg: 47,
      longitudeDeg: null,
      elevationM: null,
      invented: true,
    },
    firstDay,
    rainTenthsMm: Int32Array.from({ length: days }, (_, index) => {
      const iso = isoDateOf(firstDay + index);
      return Math.round(10 * rainOn(iso.slice(5), Number(iso.slice(0, 4))));
    }),
    maxTempTenthsC: filled(200),
    minTempTenthsC: filled(80),
    multiDayRainTenthsMm: filled(ABSENT),
    multiDayCount: filled(ABSENT),
    reading: {
      valuesRead: 3 * days,
      droppedByFlag: 0,
      implausible: 0,
      presumedZero: 0,
      duplicated: 0,
      ignoredElements: 0,
      notes: [],
    },
    source: 'invented',
  };
  return {
    stations: async () => [],
    record: async (id) => {
      if (id === 'counted') return record;
      throw new MissingDataError('STATION_UNKNOWN', `There is no station ${id} here.`, {
        hint: 'Ask for "counted".',
      });
    },
  };
}

/** What answers need over that station, with these label entries in the shed. */
export function countedDeps(rainOn: RainRule, entries: readonly LabelEntry[] = []): AnswerDeps {
  const kept = entries.map((entry): StoredLabel => ({ version: 3, entry }));
  return {
    catalogue,
    climates: createClimateCache(countedReader(rainOn)),
    version: 'test',
    labels: {
      labels: async () => kept,
      label: async (id) => kept.find(({ entry }) => entry.id === id) ?? null,
    },
  };
}

/** Sprayed on 1 June 2021, lentil on 10 May 2022. */
export const countedQuestion = {
  station: 'counted',
  appliedOn: '2021-06-01',
  residual: 'flumioxazin',
  crop: 'lentil',
  plantOn: '2022-05-10',
};
/** Three millimetres every third day of each month: some 360 mm a year. */
export const evenRain: RainRule = (monthDay) => (Number(monthDay.slice(3)) % 3 === 0 ? 3 : 0);
/** Nine millimetres every third day: some 1080 mm a year. */
export const wetRain: RainRule = (monthDay) => 3 * evenRain(monthDay, 0);
