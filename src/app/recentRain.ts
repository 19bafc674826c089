import { civilDateOf, dayNumberOf } from '../calendar.ts';
import { NORMAL_YEARS, normalStands, standardNormalPeriod } from '../model/weather/completeness.ts';
import type { MonthNormals, RecentRain, YearCompleteness } from '../schema/completeness.ts';

const MONTHS = Array.from({ length: 12 }, (_, index) => index + 1);

/** Rain normals of the months: of the latest standard 30 years where every one of them stands, else of all years. */
export function monthNormals(years: readonly YearCompleteness[]): MonthNormals {
  const standard = standardNormalPeriod(years.at(-1)?.year ?? 0);
  const normals = normalsOver(years, standard.from, standard.to, true);
  if (normals.months.every(({ stands }) => stands)) return normals;
  return normalsOver(years, years[0]?.year ?? 0, years.at(-1)?.year ?? 0, false);
}

function normalsOver(
  years: readonly YearCompleteness[],
  baseFrom: number,
  baseTo: number,
  standard: boolean,
): MonthNormals {
  const length = standard ? NORMAL_YEARS : baseTo - baseFrom + 1;
  const inBase = years.filter(({ year }) => year >= baseFrom && year <= baseTo);
  const months = MONTHS.map((month) => {
    const totals = inBase.map((year) => year.months[month - 1].rainMm).filter((mm) => mm !== null);
    return {
      month,
      validYears: totals.length,
      stands: normalStands(totals.length, length),
      meanMm: totals.length === 0 ? null : totals.reduce((sum, mm) => sum + mm, 0) / totals.length,
    };
  });
  return { baseFrom, baseTo, standard, months };
}

/** The last twelve whole calendar months of a record against their normals; null where it is shorter. */
export function recentRain(
  years: readonly YearCompleteness[],
  firstDay: number,
  lastDay: number,
  normals: MonthNormals,
): RecentRain | null {
  const next = civilDateOf(lastDay + 1);
  // The last whole month is the one before the month of the day after the record.
  const end = next.year * 12 + next.month - 2;
  const first = { year: Math.floor((end - 11) / 12), month: ((end - 11) % 12) + 1 };
  if (dayNumberOf(first.year, first.month, 1) < firstDay) return null;
  const months = MONTHS.map((_, index) => {
    const at = end - 11 + index;
    const year = Math.floor(at / 12);
    const month = (at % 12) + 1;
    const own = years[year - years[0].year].months[month - 1];
    const normalMm = normals.months[month - 1].meanMm;
    return {
      month: `${year}-${String(month).padStart(2, '0')}`,
      missingDays: own.days - own.rainDays - own.spreadDays,
      rainMm: own.rainMm,
      normalMm,
      percentOfNormal: own.rainMm === null ? null : percent(own.rainMm, normalMm),
    };
  });
  const counted = months.filter(({ rainMm: mm, normalMm }) => mm !== null && normalMm !== null);
  const rainMm = counted.reduce((sum, month) => sum + (month.rainMm ?? 0), 0);
  const normalMm = counted.reduce((sum, month) => sum + (month.normalMm ?? 0), 0);
  return {
    months,
    monthsCounted: counted.length,
    rainMm,
    normalMm,
    percentOfNormal: percent(rainMm, normalMm),
  };
}

const percent = (rainMm: number, normalMm: number | null): number | null =>
  normalMm === null || normalMm === 0 ? null : (rainMm / normalMm) * 100;
