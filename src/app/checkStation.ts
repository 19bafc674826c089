import { civilDateOf, dayNumberOf, isLeapYear, isoDateOf } from '../calendar.ts';
import { DrywakeError } from '../errors.ts';
import { prepareSeries } from '../model/weather/prepareSeries.ts';
import { spreadMultiDayRain } from '../model/weather/spreadMultiDayRain.ts';
import { ABSENT, RAIN_SPREAD } from '../schema/codes.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import type { StationRecord } from '../schema/weather.ts';

/** Share of a calendar year's days that must have a daily rain value of their own for the year to count. */
const FULL_YEAR_FRACTION = 0.98;
const GAPS_SHOWN = 5;

/** What a station's record is worth before any question is asked of it. Pure. */
export function checkStation(record: StationRecord): StationCheck {
  const { station, source, firstDay, rainTenthsMm, maxTempTenthsC, minTempTenthsC, reading } = record;
  const days = rainTenthsMm.length;
  const isRainDay = (day: number) => rainTenthsMm[day] !== ABSENT;
  const rainDays = countDays(days, isRainDay);
  const temperatureDays = countDays(
    days,
    (day) => maxTempTenthsC[day] !== ABSENT && minTempTenthsC[day] !== ABSENT,
  );
  const rainOrigin = new Uint8Array(days);
  const rainMm = Float64Array.from(rainTenthsMm, (tenths) => (tenths === ABSENT ? Number.NaN : tenths / 10));
  spreadMultiDayRain(rainMm, record.multiDayRainTenthsMm, record.multiDayCount, rainOrigin);
  const years = fullYears(rainMm, isRainDay, firstDay);
  const byRain = [...years].sort((a, b) => a.rainMm - b.rainMm);
  return {
    station,
    source,
    firstDate: isoDateOf(firstDay),
    lastDate: isoDateOf(firstDay + days - 1),
    days,
    rainDays,
    rainMissingFraction: 1 - rainDays / days,
    spreadDays: countDays(days, (day) => rainOrigin[day] === RAIN_SPREAD),
    filledDays: countDays(days, (day) => Number.isNaN(rainMm[day])),
    longestGaps: longestGaps(rainMm, firstDay),
    temperatureDays,
    temperatureMissingFraction: 1 - temperatureDays / days,
    fullYears: years.length,
    meanAnnualRainMm:
      years.length === 0 ? null : years.reduce((sum, { rainMm: rain }) => sum + rain, 0) / years.length,
    driestYear: byRain[0] ?? null,
    wettestYear: byRain.at(-1) ?? null,
    reading,
    problem: problemOf(record),
  };
}

function countDays(days: number, counts: (day: number) => boolean): number {
  let count = 0;
  for (let day = 0; day < days; day++) if (counts(day)) count++;
  return count;
}

/** Rain of each calendar year observed on enough days, shares of totals of several days included, nothing filled. [mm] */
function fullYears(
  rainMm: Float64Array,
  isRainDay: (day: number) => boolean,
  firstDay: number,
): { year: number; rainMm: number }[] {
  const years: { year: number; rainMm: number }[] = [];
  const lastDay = firstDay + rainMm.length - 1;
  for (let { year } = civilDateOf(firstDay); year <= civilDateOf(lastDay).year; year++) {
    const from = Math.max(dayNumberOf(year, 1, 1), firstDay) - firstDay;
    const to = Math.min(dayNumberOf(year, 12, 31), lastDay) - firstDay;
    const observed = countDays(to - from + 1, (day) => isRainDay(from + day));
    if (observed < FULL_YEAR_FRACTION * (isLeapYear(year) ? 366 : 365)) continue;
    let sumMm = 0;
    for (let day = from; day <= to; day++) if (!Number.isNaN(rainMm[day])) sumMm += rainMm[day];
    years.push({ year, rainMm: sumMm });
  }
  return years;
}

function longestGaps(rainMm: Float64Array, firstDay: number): StationCheck['longestGaps'] {
  const gaps: { from: number; days: number }[] = [];
  for (let day = 0; day < rainMm.length; day++) {
    if (!Number.isNaN(rainMm[day])) continue;
    const last = gaps.at(-1);
    if (last !== undefined && last.from + last.days === day) last.days++;
    else gaps.push({ from: day, days: 1 });
  }
  return gaps
    .sort((a, b) => b.days - a.days || a.from - b.from)
    .slice(0, GAPS_SHOWN)
    .map(({ from, days }) => ({
      firstDate: isoDateOf(firstDay + from),
      lastDate: isoDateOf(firstDay + from + days - 1),
      days,
    }));
}

function problemOf(record: StationRecord): StationCheck['problem'] {
  try {
    prepareSeries(record);
    return null;
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    const { code, message, hint } = error;
    return { code, message, hint };
  }
}
