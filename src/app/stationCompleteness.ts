import { civilDateOf, dayNumberOf, daysInMonth } from '../calendar.ts';
import { monthlyMeanStands, monthlyTotalStands } from '../model/weather/completeness.ts';
import type { OpenRain } from '../model/weather/rainOfRecord.ts';
import { ABSENT, RAIN_SPREAD } from '../schema/codes.ts';
import type { MonthCompleteness, YearCompleteness } from '../schema/completeness.ts';
import type { StationRecord } from '../schema/weather.ts';

/** Each calendar year of a record, month by month: how many days there are, and whether total and mean stand. Pure. */
export function stationCompleteness(record: StationRecord, rain: OpenRain): YearCompleteness[] {
  const days = record.rainTenthsMm.length;
  const firstYear = civilDateOf(record.firstDay).year;
  const lastYear = civilDateOf(record.firstDay + days - 1).year;
  return Array.from({ length: lastYear - firstYear + 1 }, (_, index) =>
    yearOf(record, rain, firstYear + index),
  );
}

function yearOf(record: StationRecord, rain: OpenRain, year: number): YearCompleteness {
  const months = Array.from({ length: 12 }, (_, index) => monthOf(record, rain, year, index + 1));
  const sum = (of: (month: MonthCompleteness) => number) => months.reduce((all, month) => all + of(month), 0);
  const from = Math.max(0, dayNumberOf(year, 1, 1) - record.firstDay);
  const to = dayNumberOf(year + 1, 1, 1) - record.firstDay;
  return {
    year,
    rainDays: sum(({ rainDays }) => rainDays),
    spreadDays: sum(({ spreadDays }) => spreadDays),
    filledDays: rain.rainMm.subarray(from, to).filter(Number.isNaN).length,
    temperatureDays: sum(({ temperatureDays }) => temperatureDays),
    rainMonths: months.filter(({ rainMm }) => rainMm !== null).length,
    temperatureMonths: months.filter(
      ({ temperature }) => temperature === 'complete' || temperature === 'kept',
    ).length,
    rainMm: months.every(({ rainMm }) => rainMm !== null) ? sum(({ rainMm }) => rainMm ?? 0) : null,
    months,
  };
}

function monthOf(record: StationRecord, rain: OpenRain, year: number, month: number): MonthCompleteness {
  const days = daysInMonth(year, month);
  const start = dayNumberOf(year, month, 1) - record.firstDay;
  const each = <T>(of: (index: number) => T): T[] =>
    Array.from({ length: days }, (_, day) => of(start + day));
  const hasRain = each((index) => isPresent(record.rainTenthsMm, index));
  const isSpread = each((index) => rain.origin[index] === RAIN_SPREAD);
  const covered = coveredInMonth(record, rain, start, isSpread);
  const hasTemperatures = each(
    (index) => isPresent(record.maxTempTenthsC, index) && isPresent(record.minTempTenthsC, index),
  );
  const rainDays = countOf(hasRain);
  const spreadDays = countOf(isSpread);
  const temperatureDays = countOf(hasTemperatures);
  const totalStands = monthlyTotalStands(hasRain, covered);
  return {
    month,
    days,
    rainDays,
    spreadDays,
    rainMm: totalStands ? each((index) => rain.rainMm[index]).reduce((sum, mm) => sum + mm, 0) : null,
    rain: totalStands
      ? rainDays === days
        ? 'complete'
        : 'accumulated'
      : rainDays + spreadDays > 0
        ? 'incomplete'
        : 'none',
    temperatureDays,
    temperature:
      temperatureDays === days
        ? 'complete'
        : temperatureDays > 0 && monthlyMeanStands(hasTemperatures)
          ? 'kept'
          : temperatureDays > 0
            ? 'incomplete'
            : 'none',
  };
}

const countOf = (flags: readonly boolean[]): number => flags.filter(Boolean).length;

const isPresent = (column: Int32Array, index: number): boolean => (column[index] ?? ABSENT) !== ABSENT;

/** Days under totals of several days that lie wholly in the month; one that crosses its first or last day covers none. */
function coveredInMonth(
  { multiDayRainTenthsMm }: StationRecord,
  { origin }: OpenRain,
  start: number,
  isSpread: readonly boolean[],
): boolean[] {
  const covered = [...isSpread];
  const endsOn = (day: number) => isPresent(multiDayRainTenthsMm, start + day);
  const crossesIn = origin[start - 1] === RAIN_SPREAD && !endsOn(-1);
  for (let day = 0; crossesIn && isSpread[day]; day++) {
    covered[day] = false;
    if (endsOn(day)) break;
  }
  for (let day = isSpread.length - 1; isSpread[day] && !endsOn(day); day--) covered[day] = false;
  return covered;
}
