import { LEAST_YEARS } from '../analysis/historicalYears.ts';
import { civilDateOf, dayNumberOf, isLeapYear, isoDateOf } from '../calendar.ts';
import { DrywakeError } from '../errors.ts';
import { IMPLAUSIBLE_RULES, implausibleDays } from '../model/weather/implausibleDays.ts';
import { prepareSeries } from '../model/weather/prepareSeries.ts';
import { rainOfRecord, valuesFromTenths } from '../model/weather/rainOfRecord.ts';
import { ABSENT, RAIN_SPREAD } from '../schema/codes.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import type { StationRecord } from '../schema/weather.ts';
import { readingHours } from './readingHours.ts';
import { monthNormals, recentRain } from './recentRain.ts';
import { stationCompleteness } from './stationCompleteness.ts';
import { stationMoves } from './stationMoves.ts';

/** Share of a calendar year's days that must have a daily rain value of their own for the year to count. */
const FULL_YEAR_FRACTION = 0.98;
const GAPS_SHOWN = 5;
const IMPLAUSIBLE_SHOWN = 5;

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
  const rain = rainOfRecord(record);
  const { rainMm } = rain;
  const completeness = stationCompleteness(record, rain);
  const normals = monthNormals(completeness);
  const gaps = gapsOf(rainMm, firstDay);
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
    spreadDays: countDays(days, (day) => rain.origin[day] === RAIN_SPREAD),
    filledDays: countDays(days, (day) => Number.isNaN(rainMm[day])),
    longestGaps: gaps.slice(0, GAPS_SHOWN),
    gapCount: gaps.length,
    temperatureDays,
    temperatureMissingFraction: 1 - temperatureDays / days,
    fullYears: years.length,
    meanAnnualRainMm:
      years.length === 0 ? null : years.reduce((sum, { rainMm: rain }) => sum + rain, 0) / years.length,
    driestYear: byRain[0] ?? null,
    wettestYear: byRain.at(-1) ?? null,
    completeness,
    normals,
    recent: recentRain(completeness, firstDay, firstDay + days - 1, normals),
    implausible: implausibleOf(record),
    changes: { observationTime: readingHours(record), formerPositions: stationMoves(record) },
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

/** Runs of days with neither a value nor a share of one, longest first. */
function gapsOf(rainMm: Float64Array, firstDay: number): StationCheck['longestGaps'] {
  const gaps: { from: number; days: number }[] = [];
  for (let day = 0; day < rainMm.length; day++) {
    if (!Number.isNaN(rainMm[day])) continue;
    const last = gaps.at(-1);
    if (last !== undefined && last.from + last.days === day) last.days++;
    else gaps.push({ from: day, days: 1 });
  }
  return gaps
    .sort((a, b) => b.days - a.days || a.from - b.from)
    .map(({ from, days }) => ({
      firstDate: isoDateOf(firstDay + from),
      lastDate: isoDateOf(firstDay + from + days - 1),
      days,
    }));
}

/** Values that look wrong, by rule; rules that nothing breaks are left out. */
function implausibleOf(record: StationRecord): StationCheck['implausible'] {
  const found = implausibleDays(
    valuesFromTenths(record.rainTenthsMm),
    valuesFromTenths(record.maxTempTenthsC),
    valuesFromTenths(record.minTempTenthsC),
  );
  return IMPLAUSIBLE_RULES.map((rule) => {
    const days = found.filter((one) => one.rule === rule).reverse();
    return {
      rule,
      count: days.length,
      shown: days
        .slice(0, IMPLAUSIBLE_SHOWN)
        .map(({ day, value, against }) => ({ date: isoDateOf(record.firstDay + day), value, against })),
    };
  }).filter(({ count }) => count > 0);
}

/** Fewer calendar years than odds need past years: whatever the question, there cannot be enough. */
function tooFewYears({ station, firstDay, rainTenthsMm }: StationRecord): StationCheck['problem'] {
  const lastYear = civilDateOf(firstDay + rainTenthsMm.length - 1).year;
  const years = lastYear - civilDateOf(firstDay).year + 1;
  if (years >= LEAST_YEARS) return null;
  return {
    code: 'TOO_FEW_YEARS',
    message: `The record of ${station.name} touches ${years} calendar ${years === 1 ? 'year' : 'years'}, too few for odds; they need at least ${LEAST_YEARS} usable years.`,
    hint: 'Choose a station with a longer record, or import its earlier years.',
  };
}

function problemOf(record: StationRecord): StationCheck['problem'] {
  try {
    prepareSeries(record);
    return tooFewYears(record);
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    const { code, message, hint } = error;
    return { code, message, hint };
  }
}
