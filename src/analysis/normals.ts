import { civilDateOf, dayNumberOf, daysInMonth } from '../calendar.ts';
import { climateQuantile, plottingPosition } from '../model/weather/climateQuantile.ts';
import { NORMAL_YEARS, normalStands, standardNormalPeriod } from '../model/weather/completeness.ts';
import type { DailyRain } from '../model/weather/filledRain.ts';
import { windowCheckOf } from '../model/weather/usableWindow.ts';
import { isRainMissing } from '../schema/codes.ts';

/** A calendar date without a year. */
export interface MonthDay {
  readonly month: number;
  readonly day: number;
}

/** A stretch of the calendar; one that ends before it begins runs into the next year. */
export interface CalendarWindow {
  readonly from: MonthDay;
  readonly to: MonthDay;
}

/** Rain of one year's window. */
export interface WindowYear {
  /** Year in which the window begins. */
  readonly year: number;
  /** Rain [mm], missing days at the mean of their time of year. */
  readonly rainMm: number;
  /** Days without a value of the station's own [d]. */
  readonly missingDays: number;
}

/** Rain normals of a window over the usable years of a base period. */
export interface WindowNormals {
  readonly base: { readonly from: number; readonly to: number; readonly kind: 'given' | 'standard' | 'all' };
  /** Whether at least 80 % of the base period's years are usable. */
  readonly stands: boolean;
  readonly years: readonly WindowYear[];
  readonly meanMm: number;
  readonly medianMm: number;
  /** Limit of the dry third and of the wet third [mm]. */
  readonly lowerTercileMm: number;
  readonly upperTercileMm: number;
}

/** The season so far against the same stretch of the base years. */
export interface SeasonSoFar {
  readonly firstDay: number;
  /** Last day that counts: the as-of day, or the window's end. */
  readonly lastDay: number;
  readonly complete: boolean;
  /** Rain on the days that have it [mm]. */
  readonly rainMm: number;
  readonly missingDays: number;
  /** Whether at most 5 % of the days are missing and no run over 10. */
  readonly usable: boolean;
  /** Mean of the base years over the same days [mm]. */
  readonly normalMm: number;
  readonly percentOfNormal: number | null;
  /** 1 = driest, of `outOf`: the base years and this one. */
  readonly rank: number;
  readonly outOf: number;
  /** Chance that a year stays at or under this rain, by rank [0-1]. */
  readonly nonExceedance: number;
  readonly third: 'dry' | 'middle' | 'wet';
}

/**
 * Rain normals of a window of the calendar. [mm]
 *
 * A year counts if its window is usable as for odds (at most 5 % of its rain days missing, no run over 10 days).
 * Windows go by calendar date: 29 February belongs to a window around it in leap years only, and a window that
 * begins or ends on it does so on 28 February in other years. Without a base period the latest standard 30 years
 * are taken where 80 % of them are usable, else every usable year. Terciles lie half-way between ranks.
 *
 * @returns null where no year of the base period is usable
 */
export function windowNormals(
  rain: DailyRain,
  window: CalendarWindow,
  base?: { readonly from: number; readonly to: number },
): WindowNormals | null {
  const all = usableYears(rain, window);
  const normals = (from: number, to: number, kind: WindowNormals['base']['kind'], span: number) => {
    const years = all.filter(({ year }) => year >= from && year <= to);
    const amounts = years.map(({ rainMm }) => rainMm);
    return years.length === 0
      ? null
      : {
          base: { from, to, kind },
          stands: normalStands(years.length, span),
          years,
          meanMm: mean(amounts),
          medianMm: climateQuantile(amounts, 1 / 2),
          lowerTercileMm: climateQuantile(amounts, 1 / 3),
          upperTercileMm: climateQuantile(amounts, 2 / 3),
        };
  };
  if (base) return normals(base.from, base.to, 'given', base.to - base.from + 1);
  if (all.length === 0) return null;
  const first = all[0].year;
  const last = all[all.length - 1].year;
  const standard = standardNormalPeriod(last);
  const usual = normals(standard.from, standard.to, 'standard', NORMAL_YEARS);
  return usual?.stands ? usual : normals(first, last, 'all', last - first + 1);
}

/**
 * The season that runs, or ran last, on a day, against the same stretch of the base years; days without rain in it
 * are left out of every year. The season's own year is left out of the base.
 *
 * Equation   rank = 1 + base years with less rain; non-exceedance = rank/(n + 1) with n = base years + 1
 * Source     Weibull plotting position
 * @returns null where the record holds no such stretch or no other base year
 */
export function seasonSoFar(
  rain: DailyRain,
  window: CalendarWindow,
  normals: WindowNormals,
  asOfDay: number,
): SeasonSoFar | null {
  const { year: asOfYear } = civilDateOf(asOfDay);
  const year = dayIn(window.from, asOfYear) <= asOfDay ? asOfYear : asOfYear - 1;
  const { start: firstDay, end } = windowIn(window, year);
  const lastDay = Math.min(asOfDay, end);
  const from = firstDay - rain.firstDay;
  const to = lastDay - rain.firstDay;
  if (from < 0 || to >= rain.rainMm.length) return null;
  const skipped = new Set<string>();
  let rainMm = 0;
  for (let day = from; day <= to; day++) {
    if (isRainMissing(rain.origin[day])) skipped.add(dateKey(rain.firstDay + day));
    else rainMm += rain.rainMm[day];
  }
  const { month, day } = civilDateOf(lastDay);
  const stretch = { from: window.from, to: { month, day } };
  const others = normals.years.filter((one) => one.year !== year);
  if (others.length === 0) return null;
  const amounts = others.map((one) => {
    const { start, end: last } = windowIn(stretch, one.year);
    let sum = 0;
    for (let at = start; at <= last; at++) {
      if (!skipped.has(dateKey(at))) sum += rain.rainMm[at - rain.firstDay];
    }
    return sum;
  });
  const normalMm = mean(amounts);
  const rank = 1 + amounts.filter((amount) => amount < rainMm).length;
  const outOf = amounts.length + 1;
  return {
    firstDay,
    lastDay,
    complete: lastDay === end,
    rainMm,
    missingDays: skipped.size,
    usable: windowCheckOf(rain.origin).usable(from, to - from + 1),
    normalMm,
    percentOfNormal: normalMm > 0 ? (rainMm / normalMm) * 100 : null,
    rank,
    outOf,
    nonExceedance: plottingPosition(rank, outOf),
    third:
      rainMm < climateQuantile(amounts, 1 / 3)
        ? 'dry'
        : rainMm > climateQuantile(amounts, 2 / 3)
          ? 'wet'
          : 'middle',
  };
}

function usableYears(rain: DailyRain, window: CalendarWindow): WindowYear[] {
  const windows = windowCheckOf(rain.origin);
  const firstYear = civilDateOf(rain.firstDay).year;
  const lastYear = civilDateOf(rain.firstDay + rain.rainMm.length - 1).year;
  const years: WindowYear[] = [];
  for (let year = firstYear; year <= lastYear; year++) {
    const { start, end } = windowIn(window, year);
    const from = start - rain.firstDay;
    const length = end - start + 1;
    if (!windows.usable(from, length)) continue;
    years.push({
      year,
      rainMm: rain.rainMm.subarray(from, from + length).reduce((sum, mm) => sum + mm, 0),
      missingDays: rain.origin.subarray(from, from + length).filter(isRainMissing).length,
    });
  }
  return years;
}

/** First and last day of the window that begins in a year. */
function windowIn({ from, to }: CalendarWindow, year: number): { start: number; end: number } {
  const wraps = to.month < from.month || (to.month === from.month && to.day < from.day);
  return { start: dayIn(from, year), end: dayIn(to, wraps ? year + 1 : year) };
}

const dayIn = ({ month, day }: MonthDay, year: number): number =>
  dayNumberOf(year, month, Math.min(day, daysInMonth(year, month)));

function dateKey(dayNumber: number): string {
  const { month, day } = civilDateOf(dayNumber);
  return `${month}-${day}`;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
