import { civilDateOf } from '../calendar.ts';
import { MissingDataError } from '../errors.ts';
import { dateInYear } from '../model/calendar/interval.ts';
import type { StationClimate } from './stationClimate.ts';

/** Fewer usable years than this give no odds. */
export const LEAST_YEARS = 10;
/** Fewer usable years than this give odds with a warning. */
export const WANTED_YEARS = 20;

/** Lists of years remembered for each record, some 3 kB each. */
const MOST_LISTS = 32;

/** A past year whose weather stands for what the season may bring. */
export interface HistoricalYear {
  readonly year: number;
  /** Index of its application date in the record. */
  readonly start: number;
}

/**
 * The years of the base period whose window, from the application's calendar date on, is usable.
 * The year of the application itself is left out: its weather is what is asked for.
 *
 * @param windowDays length of the window [d]
 * @throws {MissingDataError} TOO_FEW_YEARS with fewer than {@link LEAST_YEARS}
 */
export function historicalYears(
  climate: StationClimate,
  appliedDay: number,
  windowDays: number,
  base: { readonly from?: number; readonly to?: number },
): readonly HistoricalYear[] {
  const applicationYear = civilDateOf(appliedDay).year;
  const years = usableYears(climate, appliedDay, windowDays, base).filter(
    ({ year }) => year !== applicationYear,
  );
  if (years.length < LEAST_YEARS) {
    throw new MissingDataError(
      'TOO_FEW_YEARS',
      `The record of ${climate.series.station.name} has ${years.length} usable ${years.length === 1 ? 'year' : 'years'} for this question; odds need at least ${LEAST_YEARS}.`,
      {
        hint: 'Choose a station with a longer record, a wider base period, or a shorter interval.',
        details: { usableYears: years.length, leastYears: LEAST_YEARS, windowDays },
      },
    );
  }
  return years;
}

const known = new WeakMap<StationClimate, Map<string, readonly HistoricalYear[]>>();

/**
 * All years of the base period whose window is usable, that of the application included. Some lists of a record are
 * remembered: conditions of labels ask for the same ones again and again.
 */
export function usableYears(
  climate: StationClimate,
  appliedDay: number,
  windowDays: number,
  base: { readonly from?: number; readonly to?: number },
): readonly HistoricalYear[] {
  const lists = known.get(climate) ?? new Map<string, readonly HistoricalYear[]>();
  known.set(climate, lists);
  const key = `${appliedDay} ${windowDays} ${base.from} ${base.to}`;
  const found = lists.get(key);
  if (found) return found;
  const years = lookThrough(climate, appliedDay, windowDays, base);
  if (lists.size >= MOST_LISTS) lists.clear();
  lists.set(key, years);
  return years;
}

function lookThrough(
  { series, windows }: StationClimate,
  appliedDay: number,
  windowDays: number,
  base: { readonly from?: number; readonly to?: number },
): HistoricalYear[] {
  const firstYear = civilDateOf(series.firstDay).year;
  const lastYear = civilDateOf(series.firstDay + series.days - 1).year;
  const date = civilDateOf(appliedDay);
  const years: HistoricalYear[] = [];
  const last = Math.min(lastYear, base.to ?? lastYear);
  for (let year = Math.max(firstYear, base.from ?? firstYear); year <= last; year++) {
    const start = dateInYear(date, year) - series.firstDay;
    if (windows.usable(start, windowDays)) years.push({ year, start });
  }
  return years;
}
