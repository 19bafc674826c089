import { LEAST_YEARS } from '../analysis/historicalYears.ts';
import { type MonthDay, seasonSoFar, windowNormals } from '../analysis/normals.ts';
import { civilDateOf, daysInMonth, isoDateOf, parseIsoDate } from '../calendar.ts';
import { InvalidInputError, MissingDataError } from '../errors.ts';
import { filledRain } from '../model/weather/filledRain.ts';
import type { StationNormals } from '../schema/stationNormals.ts';
import type { StationRecord } from '../schema/weather.ts';

/** Which normals are asked for. */
export interface NormalsQuestion {
  /** First and last day of the window, MM-DD. */
  readonly from: string;
  readonly to: string;
  /** Base period; absent for the latest standard 30 years, or all years. */
  readonly base?: { readonly from: number; readonly to: number };
  /** Last day that counts as observed, YYYY-MM-DD; absent for the record's last. */
  readonly asOf?: string;
}

/**
 * Rain normals of a window and the season so far against them. Pure.
 * @throws {InvalidInputError} DATE_UNREADABLE, BASE_PERIOD, DATE_OUTSIDE_RECORD
 * @throws {MissingDataError} TOO_FEW_YEARS, RECORD_EMPTY
 */
export function stationNormals(record: StationRecord, question: NormalsQuestion): StationNormals {
  const window = { from: monthDayOf(question.from), to: monthDayOf(question.to) };
  const { base } = question;
  if (base && base.from > base.to) {
    throw new InvalidInputError(
      'BASE_PERIOD',
      `The base period ${base.from}-${base.to} ends before it begins.`,
      {
        hint: 'Give the earlier year first, for example 1991-2020.',
        details: { field: 'baseFrom' },
      },
    );
  }
  const rain = filledRain(record);
  const asOfDay = lastObservedDay(record, question.asOf);
  const normals = windowNormals(rain, window, base);
  if (normals === null || normals.years.length < LEAST_YEARS) {
    const years = normals?.years.length ?? 0;
    throw new MissingDataError(
      'TOO_FEW_YEARS',
      `The record of ${record.station.id} has ${years} usable ${years === 1 ? 'year' : 'years'} for this window; normals need at least ${LEAST_YEARS}.`,
      {
        hint: 'Choose a wider base period, another window, or a station with a longer record.',
        details: { usableYears: years, leastYears: LEAST_YEARS },
      },
    );
  }
  const season = seasonSoFar(rain, window, normals, asOfDay);
  const { base: used, stands, years, ...figures } = normals;
  return {
    station: record.station,
    source: record.source,
    from: question.from,
    to: question.to,
    base: { ...used, usableYears: years.length, stands },
    ...figures,
    years: years.map((year) => ({ ...year })),
    season: season && seasonOf(season),
  };
}

function seasonOf({
  firstDay,
  lastDay,
  ...season
}: NonNullable<ReturnType<typeof seasonSoFar>>): StationNormals['season'] {
  return { firstDate: isoDateOf(firstDay), lastDate: isoDateOf(lastDay), ...season };
}

function monthDayOf(text: string): MonthDay {
  const match = /^(\d{2})-(\d{2})$/.exec(text);
  const [month, day] = match ? match.slice(1).map(Number) : [0, 0];
  if (!match || month < 1 || month > 12 || day < 1 || day > daysInMonth(2000, month)) {
    throw new InvalidInputError('DATE_UNREADABLE', `"${text}" is no day of the year.`, {
      hint: 'Write month and day as MM-DD, for example 05-01.',
      details: { field: 'from' },
    });
  }
  return { month, day };
}

function lastObservedDay(
  { station, firstDay, rainTenthsMm }: StationRecord,
  asOf: string | undefined,
): number {
  const lastDay = firstDay + rainTenthsMm.length - 1;
  if (asOf === undefined) return lastDay;
  const day = parseIsoDate(asOf);
  if (day < firstDay || day > lastDay) {
    throw new InvalidInputError(
      'DATE_OUTSIDE_RECORD',
      `The record of ${station.id} runs from ${isoDateOf(firstDay)} to ${isoDateOf(lastDay)}; nothing is observed on ${asOf}.`,
      {
        hint: `Give an as-of date from ${civilDateOf(firstDay).year} up to ${isoDateOf(lastDay)}, or leave it out.`,
        details: { field: 'asOf' },
      },
    );
  }
  return day;
}
