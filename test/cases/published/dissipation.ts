import {
  type BreakdownResponse,
  breakdownRecord,
  civilDateOf,
  dayNumberOf,
  median,
  type StationClimate,
  type TextureClass,
  type TopsoilLayer,
  topsoilLayer,
} from '../../../src/index.ts';
import { assumptions } from '../seasonOf.ts';

/** A soil with the tool's default cover, and its default organic matter unless the source gives one. */
export const soilOf = (textureClass: TextureClass = 'loam', organicMatterPercent = 2): TopsoilLayer =>
  topsoilLayer({ textureClass }, organicMatterPercent, 0.6);

/** A stretch of the season that is watched in every year of a record. */
export interface Stretch {
  readonly layer: TopsoilLayer;
  readonly response: BreakdownResponse;
  readonly month: number;
  readonly day: number;
  /** Length that must be usable [d]. */
  readonly days: number;
  /** Keeps only years whose rain over the first `overDays` lies in the range [mm]. */
  readonly rain?: { readonly overDays: number; readonly fromMm: number; readonly toMm: number };
}

/** A year's breakdown days up to an offset from its start. [breakdown days] */
export type BreakdownTo = (offset: number) => number;

/** Every usable year's course of breakdown days from a calendar date on. */
export function yearsOf(climate: StationClimate, stretch: Stretch): BreakdownTo[] {
  const { series, windows } = climate;
  const { sums } = breakdownRecord(climate, stretch.layer, stretch.response, assumptions);
  const { year: firstYear } = civilDateOf(series.firstDay);
  const { year: lastYear } = civilDateOf(series.firstDay + series.days - 1);
  const courses: BreakdownTo[] = [];
  for (let year = firstYear; year <= lastYear; year++) {
    const start = dayNumberOf(year, stretch.month, stretch.day) - series.firstDay;
    if (!windows.usable(start, stretch.days + 1)) continue;
    if (stretch.rain && !rainFits(series.rainMm, start, stretch.rain)) continue;
    courses.push((offset) => sums[start + offset] - sums[start]);
  }
  return courses;
}

function rainFits(
  rainMm: Float64Array,
  start: number,
  { overDays, fromMm, toMm }: NonNullable<Stretch['rain']>,
): boolean {
  let sum = 0;
  for (let day = start; day < start + overDays; day++) sum += rainMm[day];
  return sum >= fromMm && sum <= toMm;
}

/** Half-life between two offsets in the middle year, median soil. [d] */
export function middleHalfLife(
  years: readonly BreakdownTo[],
  halfLife: number,
  from: number,
  to: number,
): number {
  return median(years.map((course) => ((to - from) * halfLife) / (course(to) - course(from))));
}

/** Share of the dose left at an offset in the middle year, median soil. [0-1] */
export const middleShareLeft = (years: readonly BreakdownTo[], halfLife: number, offset: number): number =>
  0.5 ** (median(years.map((course) => course(offset))) / halfLife);

/** Half-life that a loss to `shareLeft` over `days` stands for. [d] */
export const impliedHalfLife = (days: number, shareLeft: number): number =>
  (days * Math.LN2) / Math.log(1 / shareLeft);
